import type { GeometryReadingName, Layout, Reading } from "../fitment.ts";
import { geometryRegistry, layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { Turned } from "../layouts/turned.ts";
import type { Standing } from "../motion/layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "../motion/measuredQuantity.ts";
import type { LayoutPlan } from "./layoutPlan.ts";

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
  const turned = new TurnedReadings(layout.readings, plan, doubt);
  const { linkage } = plan;
  layoutRegistry[layout.kind].turn(turned, standing, { said: layout, linkage });
  return { ...layout, ...turned.said, readings: turned.readings };
}

class TurnedReadings implements Turned<GeometryReadingName> {
  readonly readings: Readings;
  said: { readonly wheelPerOuter?: number } = {};
  readonly #doubt: HeightDoubt;
  readonly #values: ReadonlyMap<string, MeasuredLength | MeasuredAngle>;

  constructor(readings: Readings, { quantities }: LayoutPlan, doubt: HeightDoubt) {
    this.readings = { ...readings };
    this.#doubt = doubt;
    this.#values = new Map(quantities.map(({ name, quantity }) => [name, quantity]));
  }

  angleBefore(name: GeometryReadingName): number {
    const quantity = this.#values.get(name);
    if (quantity !== undefined && "sin" in quantity) return Math.atan2(quantity.sin, quantity.cos);
    const { standIn } = geometryRegistry[name];
    return standIn === undefined ? 0 : this.angleBefore(standIn);
  }

  lengthBefore(name: GeometryReadingName): number {
    const quantity = this.#values.get(name);
    return quantity !== undefined && "value" in quantity ? quantity.value : 0;
  }

  angle(name: GeometryReadingName, turn: number): void {
    const made = {
      values: [degreesPerRadian * this.angleBefore(name)],
      tol: this.#values.has(name) ? geometryRegistry[name].usualTolerance : 0,
    };
    this.#shift(name, this.readings[name] ?? made, -turn, this.#doubt.turn);
  }

  measuredAngle(name: GeometryReadingName, turn: number): void {
    if (this.#values.has(name)) this.angle(name, turn);
  }

  lean(name: GeometryReadingName, turn: number): void {
    this.#shift(name, this.readings[name] ?? { values: [0], tol: 0 }, turn, 0);
  }

  rod(names: Parameters<Turned<GeometryReadingName>["rod"]>[0], turn: number): void {
    const arm = this.lengthBefore(names.arm);
    const line = this.angleBefore(names.line);
    const long = this.lengthBefore(names.length);
    const lean = this.angleBefore(names.lean);
    const across = arm * (Math.cos(line) - Math.cos(line - turn)) - long * Math.sin(lean);
    const up = arm * (Math.sin(line - turn) - Math.sin(line)) + long * Math.cos(lean);
    const given = this.readings[names.length] ?? { values: [long], tol: 0 };
    const longer = Math.hypot(across, up) - long;
    this.readings[names.length] = {
      values: given.values.map((value) => value + longer),
      tol: Math.hypot(given.tol, this.#doubt.rod),
    };
    const start = this.readings[names.lean] ?? { values: [degreesPerRadian * lean], tol: 0 };
    this.#shift(names.lean, start, Math.atan2(-across, up) - lean, 0);
  }

  aroundJoint(
    acrossName: GeometryReadingName,
    upName: GeometryReadingName,
    turn: number,
    outward: 1 | -1,
  ): void {
    const across = outward * this.lengthBefore(acrossName);
    const up = this.lengthBefore(upName);
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    this.#move(acrossName, outward * (across * cos - up * sin));
    this.#move(upName, up * cos + across * sin);
  }

  proportion(wheelPerOuter: number, inPlaceOf: GeometryReadingName): void {
    this.said = { wheelPerOuter };
    delete this.readings[inPlaceOf];
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
