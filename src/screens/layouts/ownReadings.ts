import type { LayoutKind } from "../../physics/fitment.ts";
import type { OwnReading } from "./layoutOnScreen.ts";
import { layoutsOnScreen } from "./layoutsOnScreen.ts";

/** The readings that a layout alone takes, by any name. */
export function ownReadings(kind: LayoutKind): { readonly [name: string]: OwnReading | undefined } {
  return layoutsOnScreen[kind].readings;
}
