import * as messages from "../../../words/compiled/physics/motion/path.ts";
import type { MeasuredAngle } from "../measuredQuantity.ts";
import type { Turn } from "../turn.ts";
import { FourBarPath, fourBarFormulas } from "./fourBarPath.ts";

export const upperDrivenFormulas = {
  across: {
    text: messages.qAcrossOtherArmsPivot,
    by: "b·cos θ0 + k − c·cos θo",
  },
  up: { text: messages.qUp, by: "−b·sin θ0 − h + c·sin θo" },
  slope: messages.dzDBCos01,
  jointRise: {
    text: messages.uUpHowFar,
    by: fourBarFormulas.jointRise,
  },
  distance: { text: "D = |Q − U|", by: fourBarFormulas.distance },
  lowerRise: "L up = U up + k·sin δ − h·(cos δ − 1)",
} as const;

/** The stop is on the upper arm, or on a damper that stands on it. */
export class UpperDrivenPath extends FourBarPath {
  readonly direction = -1;

  protected drivingLine(): MeasuredAngle {
    return this.upper.line;
  }

  protected drivingSquare(): number {
    return this.upperSquare;
  }

  protected drivenSquare(): number {
    return this.lowerSquare;
  }

  protected drivenCross(): number {
    return this.carrierY * this.lowerZ - this.carrierZ * this.lowerY;
  }

  protected takeRideSpeeds(): void {
    const perCross = 1 / this.drivenCross();
    const lowerTurn = (this.carrierY * this.upperZ - this.carrierZ * this.upperY) * perCross;
    const carrierTurn = (this.upperY * this.lowerZ - this.upperZ * this.lowerY) * perCross;
    this.takeSpeeds(lowerTurn * this.lowerY, carrierTurn);
  }

  protected drivenTurn({ cos, sin }: Turn, carrierY: number, carrierZ: number): number {
    const y = this.baseY + this.upperY * cos - this.upperZ * sin - carrierY;
    const z = this.baseZ + this.upperZ * cos + this.upperY * sin - carrierZ;
    return Math.atan2(this.lowerY * z - this.lowerZ * y, this.lowerY * y + this.lowerZ * z);
  }

  protected move({ cos, sin }: Turn, withCurve: boolean): boolean {
    const upperY = this.upperY * cos - this.upperZ * sin;
    const upperZ = this.upperZ * cos + this.upperY * sin;
    // From the lower pivot to the upper joint.
    const toY = this.baseY + upperY;
    const toZ = this.baseZ + upperZ;
    this.toY = -toY;
    this.toZ = -toZ;
    this.jointRise = upperZ - this.upperZ;
    const square = toY * toY + toZ * toZ;
    const along = (square + this.carrierSquare - this.lowerSquare) / 2;
    const beside = this.side * Math.sqrt(this.carrierSquare * square - along * along);
    const perSquare = 1 / square;
    const carrierY = (along * toY + beside * toZ) * perSquare;
    const carrierZ = (along * toZ - beside * toY) * perSquare;
    const lowerY = toY - carrierY;
    const lowerZ = toZ - carrierZ;
    this.place(lowerZ, carrierY, carrierZ);
    // ω_l·l + ω_c·c = u, crossed with c and with l; then its derivative, crossed with each.
    const cross = carrierY * lowerZ - carrierZ * lowerY;
    const perCross = 1 / cross;
    const lowerTurn = (carrierY * upperZ - carrierZ * upperY) * perCross;
    const carrierTurn = (upperY * lowerZ - upperZ * lowerY) * perCross;
    const rises = this.takeSpeeds(lowerTurn * lowerY, carrierTurn);
    if (withCurve) {
      const dot = carrierY * lowerY + carrierZ * lowerZ;
      const lowerTurnSquare = lowerTurn * lowerTurn;
      const carrierTurnSquare = carrierTurn * carrierTurn;
      const carrierTurnRate =
        (lowerTurnSquare * this.lowerSquare +
          carrierTurnSquare * dot -
          upperY * lowerY -
          upperZ * lowerZ) *
        perCross;
      const lowerTurnRate =
        (upperY * carrierY +
          upperZ * carrierZ -
          lowerTurnSquare * dot -
          carrierTurnSquare * this.carrierSquare) *
        perCross;
      const rise = lowerTurnRate * lowerY - lowerTurnSquare * lowerZ;
      this.takeRates(rise, carrierTurn, carrierTurnRate);
    }
    return rises && Math.abs(cross) >= this.leastCross;
  }
}
