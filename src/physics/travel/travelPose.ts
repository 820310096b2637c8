import type { CornerAtMeans } from "../budget/cornerAtMeans.ts";
import type { Layout, Linkage } from "../fitment.ts";
import { type GeometryReadingName, layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { Posed, TravelPose } from "../layouts/pose.ts";
import type { Standing } from "../motion/layoutMotion.ts";

const ridden: Standing = { arm: 0, armPerMm: 0, carrier: 0, otherArm: 0 };

/**
 * Where the parts of a layout stand, from the lengths and angles of its own motion and the turns that this
 * motion gives. Nothing is found anew: the stop's closing and the turns come in from outside.
 */
export class TravelPoses {
  readonly #layout: Layout;
  readonly #posed: Posed<GeometryReadingName, Linkage>;

  /** @param seatToPad from the stop's seat to its pad at ride, mm */
  constructor(layout: Layout, { quantities, means, linkage }: CornerAtMeans, seatToPad: number) {
    const lengths = new Map<string, number>();
    const angles = new Map<string, number>();
    for (const { name, quantity } of quantities) {
      // A motion sets only those that it needs itself.
      quantity.set(means, 0);
      if ("sin" in quantity) angles.set(name, Math.atan2(quantity.sin, quantity.cos));
      else lengths.set(name, quantity.value);
    }
    this.#layout = layout;
    this.#posed = {
      said: layout,
      linkage,
      seatToPad,
      standOff: lengths.get("gap") ?? 0,
      length: (name) => lengths.get(name) ?? null,
      angle: (name, standIn = 0) => angles.get(name) ?? standIn,
    };
  }

  /** @param z wheel travel, mm @param s closing of the stop, mm @param standing turns; null without an arm */
  at(z: number, s: number, standing: Standing | null): TravelPose {
    const turns = standing ?? ridden;
    return layoutRegistry[this.#layout.kind].pose(this.#posed, { z, s, turns });
  }
}
