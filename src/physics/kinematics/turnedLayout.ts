import type { GeometryReadingName, Layout, Reading } from "../fitment.ts";
import { geometryRegistry } from "../readings/geometryRegistry.ts";
import type { Standing } from "./layoutMotion.ts";
import type { LayoutPlan } from "./layoutPlan.ts";
import type { MeasuredAngle, MeasuredLength } from "./measuredQuantity.ts";

const degreesPerRadian = 180 / Math.PI;

type Readings = { [Name in GeometryReadingName]?: Reading };

/** What another ride height does to a layout besides turning it: ± of the arm's turn, rad, and of a rod's length, mm. */
interface HeightDoubt {
  readonly turn: number;
  readonly rod: number;
}

/**
 * The readings of a layout as they would be taken where its parts have turned to `standing`. `plan` has been
 * set to the readings' means. An angle that was made of heights becomes a direct one with the usual ±.
 */
export function turnedLayout(
  layout: Layout,
  plan: LayoutPlan,
  standing: Standing,
  doubt: HeightDoubt,
): Layout {
  if (plan.linkage === "straight") return layout;
  const turned = new TurnedReadings(layout.readings, plan, doubt);
  switch (layout.kind) {
    case "axle":
      return layout;
    case "strut":
      turned.rod("lowerArmLength", "lowerArmAngle", "jointToTop", "jointToTopLean", standing.arm);
      turned.angle("lowerArmAngle", standing.arm);
      turned.lean("stopLean", standing.carrier);
      turned.aroundJoint("tyreOffset", "wheelCentreAbove", standing.carrier, 1);
      return { ...layout, readings: turned.readings };
    case "arm":
      if (layout.stopOn === "arm") turned.lean("stopLean", standing.arm);
      turned.measuredAngle("stopLineAngle", standing.arm);
      return turnedOnArm(layout, plan, standing, turned);
    case "damper":
      turned.rod("pivotToMount", "mountLineAngle", "damperLength", "stopLean", standing.arm);
      turned.measuredAngle("mountLineAngle", standing.arm);
      return turnedOnArm(layout, plan, standing, turned);
  }
}

function turnedOnArm(
  layout: Layout & { readonly kind: "arm" | "damper" },
  plan: LayoutPlan,
  standing: Standing,
  turned: TurnedReadings,
): Layout {
  turned.angle("armAngle", standing.arm);
  if (plan.linkage === "fourBar") {
    turned.angle("otherArmAngle", standing.otherArm);
    turned.aroundJoint("jointInset", "jointHeight", standing.carrier, -1);
    turned.aroundJoint("tyreOffset", "wheelCentreAbove", standing.carrier, 1);
  }
  if (plan.linkage !== "instantCentre") return { ...layout, readings: turned.readings };
  const { otherArmAngle: _, ...readings } = turned.readings;
  return { ...layout, wheelPerOuter: turned.wheelPerOuter(), readings };
}

class TurnedReadings {
  readonly readings: Readings;
  readonly #doubt: HeightDoubt;
  readonly #values: ReadonlyMap<string, MeasuredLength | MeasuredAngle>;

  constructor(readings: Readings, { quantities }: LayoutPlan, doubt: HeightDoubt) {
    this.readings = { ...readings };
    this.#doubt = doubt;
    this.#values = new Map(quantities.map(({ name, quantity }) => [name, quantity]));
  }

  /** Radians below the horizontal, or of a lean. */
  #angleOf(name: GeometryReadingName): number {
    const quantity = this.#values.get(name);
    if (quantity !== undefined && "sin" in quantity) return Math.atan2(quantity.sin, quantity.cos);
    const { standIn } = geometryRegistry[name];
    return standIn === undefined ? 0 : this.#angleOf(standIn);
  }

  #lengthOf(name: GeometryReadingName): number {
    const quantity = this.#values.get(name);
    return quantity !== undefined && "value" in quantity ? quantity.value : 0;
  }

  /** A line that has turned with its outer end up: its angle below the horizontal is less by as much. */
  angle(name: GeometryReadingName, turn: number): void {
    const made = {
      values: [degreesPerRadian * this.#angleOf(name)],
      tol: this.#values.has(name) ? geometryRegistry[name].usualTolerance : 0,
    };
    this.#shift(name, this.readings[name] ?? made, -turn, this.#doubt.turn);
  }

  /** The same for one that has a stand-in, which turns as well. */
  measuredAngle(name: GeometryReadingName, turn: number): void {
    if (this.#values.has(name)) this.angle(name, turn);
  }

  /** A lean turns toward the pivot as the outer end goes up. */
  lean(name: GeometryReadingName, turn: number): void {
    this.#shift(name, this.readings[name] ?? { values: [0], tol: 0 }, turn, 0);
  }

  /** A rod whose lower end turns with the arm and whose upper end stays. */
  rod(
    armName: GeometryReadingName,
    lineName: GeometryReadingName,
    lengthName: GeometryReadingName,
    leanName: GeometryReadingName,
    turn: number,
  ): void {
    const arm = this.#lengthOf(armName);
    const line = this.#angleOf(lineName);
    const long = this.#lengthOf(lengthName);
    const lean = this.#angleOf(leanName);
    const across = arm * (Math.cos(line) - Math.cos(line - turn)) - long * Math.sin(lean);
    const up = arm * (Math.sin(line - turn) - Math.sin(line)) + long * Math.cos(lean);
    const given = this.readings[lengthName] ?? { values: [long], tol: 0 };
    const longer = Math.hypot(across, up) - long;
    this.readings[lengthName] = {
      values: given.values.map((value) => value + longer),
      tol: Math.hypot(given.tol, this.#doubt.rod),
    };
    const start = this.readings[leanName] ?? {
      values: [degreesPerRadian * lean],
      tol: 0,
    };
    this.#shift(leanName, start, Math.atan2(-across, up) - lean, 0);
  }

  /** Where a point of the wheel carrier stands from the lower joint, after the carrier's turn. */
  aroundJoint(
    acrossName: GeometryReadingName,
    upName: GeometryReadingName,
    turn: number,
    outward: 1 | -1,
  ): void {
    const across = outward * this.#lengthOf(acrossName);
    const up = this.#lengthOf(upName);
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    this.#move(acrossName, outward * (across * cos - up * sin));
    this.#move(upName, up * cos + across * sin);
  }

  /** κ of an arm whose other arm's length was not measured; it is one number at every height. */
  wheelPerOuter(): number {
    const lower = Math.tan(this.#angleOf("armAngle"));
    const upper = Math.tan(this.#angleOf("otherArmAngle"));
    const between = this.#lengthOf("jointHeight") - this.#lengthOf("jointInset") * upper;
    return 1 + (this.#lengthOf("tyreOffset") * (lower - upper)) / between;
  }

  #move(name: GeometryReadingName, value: number): void {
    this.readings[name] = { values: [value], tol: this.readings[name]?.tol ?? 0 };
  }

  #shift(name: GeometryReadingName, { values, tol }: Reading, turn: number, doubt: number): void {
    this.readings[name] = {
      values: values.map((value) => value + degreesPerRadian * turn),
      tol: Math.hypot(tol, degreesPerRadian * doubt),
    };
  }
}
