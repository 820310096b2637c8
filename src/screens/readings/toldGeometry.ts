import type { GeometryReadingName, LayoutKind } from "../../physics/fitment.ts";
import { layoutKinds, type OwnReadingOf } from "../../physics/readings/index.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { ToldReading } from "../layouts/toldReading.ts";
import { toldArm } from "./toldArm.ts";
import { toldBolts } from "./toldBolts.ts";
import { toldHeights } from "./toldHeights.ts";
import { toldLinkage } from "./toldLinkage.ts";

/** The readings that several layouts take; one without words or a drawing is a type error. */
const shared: {
  readonly [Name in Exclude<GeometryReadingName, OwnReadingOf<LayoutKind>>]: ToldReading;
} = { ...toldArm, ...toldBolts, ...toldHeights, ...toldLinkage };

const own: readonly { readonly [Name in GeometryReadingName]?: ToldReading }[] = layoutKinds.map(
  (kind) => layoutsOnScreen[kind].readings,
);

/** Every reading of the geometry, in words and drawn. */
export const toldGeometry = Object.assign({}, shared, ...own) as {
  readonly [Name in GeometryReadingName]: ToldReading;
};
