import type { LayoutKind } from "../../physics/fitment.ts";
import { arm } from "./arm.tsx";
import { axle } from "./axle.tsx";
import { damper } from "./damper.tsx";
import type { LayoutOnScreen } from "./layoutOnScreen.ts";
import { strut } from "./strut.tsx";

/** Every layout of physics, as it is told and drawn. */
export const layoutsOnScreen: { readonly [Kind in LayoutKind]: LayoutOnScreen<Kind> } = {
  arm,
  damper,
  strut,
  axle,
};
