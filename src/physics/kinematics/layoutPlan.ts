import type { Layout, Linkage } from "../fitment.ts";
import { type Fault, type Outcome, succeed } from "../outcome.ts";
import type { GeometryReadingName } from "../readings/geometryRegistry.ts";
import { FlatContact } from "./contact/flatContact.ts";
import { RoundContact } from "./contact/roundContact.ts";
import type { StopContact } from "./contact/stopContact.ts";
import { TriangleContact } from "./contact/triangleContact.ts";
import type { LayoutMotion } from "./layoutMotion.ts";
import { usualRatio } from "./linkageDoubt.ts";
import {
  type GeometryReading,
  MeasuredPlaces,
  type MeasuredSide,
  type NamedQuantity,
} from "./measuredPlaces.ts";
import type { MeasuredAngle } from "./measuredQuantity.ts";
import { modelDoubt } from "./modelDoubt.ts";
import type { LinkageArm } from "./path/fourBarPath.ts";
import { LowerDrivenPath } from "./path/lowerDrivenPath.ts";
import { StrutPath } from "./path/strutPath.ts";
import { SwingPath } from "./path/swingPath.ts";
import { UpperDrivenPath } from "./path/upperDrivenPath.ts";
import type { WheelPath } from "./path/wheelPath.ts";
import { type AxleMovement, StraightMotion } from "./straightMotion.ts";
import { TurningMotion } from "./turningMotion.ts";
import {
  DrawnRatio,
  InstantCentreRatio,
  isFactor,
  type WheelRatio,
  wheelOnArm,
} from "./wheelRatio.ts";

/** How one side's stop and wheel move together, and every reading that it is computed from. */
export interface LayoutPlan {
  readonly linkage: Linkage;
  /** One a reading, in the order in which `motion.set` takes their values. */
  readonly places: readonly GeometryReading[];
  /** Unset, for those who set readings draw by draw. */
  readonly motion: LayoutMotion;
  /** The lengths and angles of its formulas, which hold their values once the motion is set. */
  readonly quantities: readonly NamedQuantity[];
}

/**
 * The plan of one side's motion: which of its readings are used, and by which linkage the wheel's travel
 * follows from the stop's closing. Of those that an arm's readings allow the first holds: carriesWheel,
 * fourBar, instantCentre, typed, prior.
 *
 * @param side the corner: its own readings go before the layout's, its gap belongs to a stop on the arm
 * @param movement of a beam axle: both wheels, or one with the other on the ground
 * Errors: a missing or impossible reading, by its name; `wheelPerOuterNotPositive`.
 */
export function layoutPlan(
  layout: Layout,
  side: MeasuredSide = {},
  movement: AxleMovement = "both",
): Outcome<LayoutPlan> {
  const ratioFault = wheelPerOuterFault(layout);
  if (ratioFault !== null) return { ok: false, fault: ratioFault };
  const places = new MeasuredPlaces(layout, side);
  const { linkage, motion } = moved(layout, places, movement);
  if (places.fault !== null) return { ok: false, fault: places.fault };
  return succeed({ linkage, places: places.places, motion, quantities: places.quantities });
}

function wheelPerOuterFault({ wheelPerOuter = 1, wheelPerOuterTol = 0 }: Layout): Fault | null {
  if (isFactor(wheelPerOuter) && wheelPerOuterTol >= 0 && wheelPerOuterTol <= 1e3) return null;
  return {
    code: "wheelPerOuterNotPositive",
    sentence: [
      "The wheel's travel per travel of the outer joint must be a number above zero, its ± zero or more.",
    ],
    reading: "wheelPerOuter",
  };
}

function moved(
  layout: Layout,
  places: MeasuredPlaces,
  movement: AxleMovement,
): { readonly linkage: Linkage; readonly motion: LayoutMotion } {
  switch (layout.kind) {
    case "arm":
      return armMotion(layout, places);
    case "damper":
      return damperMotion(layout, places);
    case "strut":
      return strutMotion(places);
    case "axle":
      return axleMotion(places, movement);
  }
}

function armMotion(layout: Layout & { kind: "arm" }, places: MeasuredPlaces) {
  const length = places.neededLength("pivotToStop");
  const arm = measuredArm(places);
  const line = places.angle("stopLineAngle");
  const lean = places.angle("stopLean");
  const contact =
    layout.stopOn === undefined
      ? new RoundContact(length, line, lean)
      : new FlatContact(length, line, lean, layout.stopOn === "arm" ? places.standOff() : null);
  return turning(layout, places, arm, contact);
}

function damperMotion(layout: Layout & { kind: "damper" }, places: MeasuredPlaces) {
  const length = places.neededLength("pivotToMount");
  const arm = measuredArm(places);
  const line = places.angle("mountLineAngle");
  const lean = places.angle("stopLean");
  const damper = places.neededLength("damperLength");
  return turning(layout, places, arm, new TriangleContact(length, line, damper, lean, null));
}

function measuredArm(places: MeasuredPlaces): LinkageArm {
  return { length: places.neededLength("pivotToOuter"), line: places.angle("armAngle") };
}

function turning(
  layout: Layout & { kind: "arm" | "damper" },
  places: MeasuredPlaces,
  arm: LinkageArm,
  contact: StopContact,
) {
  const { linkage, path, ratio } = wheelPath(layout, places, arm);
  const before = [...places.quantities.map(({ quantity }) => quantity), ...ratio];
  const scale = places.doubt("linkage", 1, 0, modelDoubt[linkage]);
  return { linkage, motion: new TurningMotion(before, contact, path, arm.line, scale) };
}

interface ChosenPath {
  readonly linkage: Linkage;
  readonly path: WheelPath;
  /** κ, to be set before the path takes it. */
  readonly ratio: readonly WheelRatio[];
}

function wheelPath(
  layout: Layout & { kind: "arm" | "damper" },
  places: MeasuredPlaces,
  arm: LinkageArm,
): ChosenPath {
  const { armRole, wheelPerOuter } = layout;
  const swing = (linkage: Linkage, ratio: WheelRatio): ChosenPath => ({
    linkage,
    path: new SwingPath(arm.length, arm.line, ratio),
    ratio: [ratio],
  });
  if (armRole === "carriesWheel") return swing("carriesWheel", wheelOnArm);
  const joints: readonly GeometryReadingName[] = ["otherArmAngle", "jointHeight", "tyreOffset"];
  if ((armRole === "lower" || armRole === "upper") && joints.every((name) => places.has(name))) {
    if (places.has("otherArmLength")) return fourBar(armRole, places, arm);
    const line = places.optionalAngle("otherArmAngle");
    if (armRole === "lower" && line !== null) {
      return swing("instantCentre", new InstantCentreRatio(jointPlaces(places), arm.line, line));
    }
  }
  const [mean, halfWidth] =
    wheelPerOuter === undefined
      ? usualRatio[armRole ?? "notSaid"]
      : [wheelPerOuter, layout.wheelPerOuterTol ?? 0];
  const place = places.doubt("wheelPerOuter", mean, halfWidth, 0);
  return swing(wheelPerOuter === undefined ? "prior" : "typed", new DrawnRatio(place));
}

function fourBar(role: "lower" | "upper", places: MeasuredPlaces, arm: LinkageArm): ChosenPath {
  const other = {
    length: places.neededLength("otherArmLength"),
    line: places.angle("otherArmAngle"),
  };
  const joints = jointPlaces(places);
  const above = places.offset("wheelCentreAbove");
  const path =
    role === "lower"
      ? new LowerDrivenPath(arm, other, joints, above)
      : new UpperDrivenPath(other, arm, joints, above);
  return { linkage: "fourBar", path, ratio: [] };
}

function jointPlaces(places: MeasuredPlaces) {
  return {
    height: places.neededLength("jointHeight"),
    inset: places.offset("jointInset"),
    tyreOffset: places.neededLength("tyreOffset"),
  };
}

function strutMotion(places: MeasuredPlaces) {
  const lean = places.angle("stopLean");
  const armLength = places.optionalLength("lowerArmLength");
  const armLine = places.optionalAngle("lowerArmAngle");
  const jointToTop = places.optionalLength("jointToTop");
  const tyreOffset = places.optionalLength("tyreOffset");
  if (armLength === null || armLine === null || jointToTop === null || tyreOffset === null) {
    return straight("straight", lean, null, places);
  }
  const topLean = places.angle("jointToTopLean");
  const contact = new TriangleContact(armLength, armLine, jointToTop, topLean, lean);
  const path = new StrutPath({
    armLength,
    armLine,
    jointToTop,
    jointToTopLean: topLean,
    axisLean: lean,
    tyreOffset,
    wheelAbove: places.offset("wheelCentreAbove"),
  });
  const before = places.quantities.map(({ quantity }) => quantity);
  const scale = places.doubt("linkage", 1, 0, modelDoubt.strutArm);
  const linkage: Linkage = "strutArm";
  return { linkage, motion: new TurningMotion(before, contact, path, armLine, scale) };
}

function axleMotion(places: MeasuredPlaces, movement: AxleMovement) {
  const track = places.neededLength("track");
  const stopSpacing = places.neededLength("stopSpacing");
  const widths = movement === "one" ? { track, stopSpacing } : null;
  return straight("axle", places.angle("stopLean"), widths, places);
}

function straight(
  linkage: Linkage,
  lean: MeasuredAngle,
  widths: ConstructorParameters<typeof StraightMotion>[1],
  places: MeasuredPlaces,
) {
  const scale = places.doubt("linkage", 1, 0, modelDoubt[linkage]);
  return { linkage, motion: new StraightMotion(lean, widths, scale) };
}
