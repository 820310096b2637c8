import * as messages from "../../../words/compiled/physics/motion/path.ts";
import type { MeasuredAngle } from "../measuredQuantity.ts";
import type { Turn } from "../turn.ts";
import { FourBarPath, fourBarFormulas } from "./fourBarPath.ts";

export const lowerDrivenFormulas = {
  across: {
    text: messages.qAcrossOtherArms,
    by: "b·cos θ0 − k − c·cos θo",
  },
  up: { text: messages.qUp, by: "−b·sin θ0 + h + c·sin θo" },
  slope: messages.dzDBCos,
  jointRise: {
    text: messages.lUpHowFar,
    by: fourBarFormulas.jointRise,
  },
  distance: { text: "D = |Q − L|", by: fourBarFormulas.distance },
} as const;

/** The stop is on the lower arm, or on a damper that stands on it. */
export class LowerDrivenPath extends FourBarPath {
  readonly direction = 1;

  protected drivingLine(): MeasuredAngle {
    return this.lower.line;
  }

  protected drivingSquare(): number {
    return this.lowerSquare;
  }

  protected drivenSquare(): number {
    return this.upperSquare;
  }

  protected drivenCross(): number {
    return this.carrierY * this.upperZ - this.carrierZ * this.upperY;
  }

  protected takeRideSpeeds(): void {
    const carrierTurn =
      (this.lowerZ * this.upperY - this.lowerY * this.upperZ) / this.drivenCross();
    this.takeSpeeds(this.lowerY, carrierTurn);
  }

  protected drivenTurn({ cos, sin }: Turn, carrierY: number, carrierZ: number): number {
    const y = this.lowerY * cos - this.lowerZ * sin + carrierY - this.baseY;
    const z = this.lowerZ * cos + this.lowerY * sin + carrierZ - this.baseZ;
    return Math.atan2(this.upperY * z - this.upperZ * y, this.upperY * y + this.upperZ * z);
  }

  protected move({ cos, sin }: Turn, withCurve: boolean): boolean {
    const lowerY = this.lowerY * cos - this.lowerZ * sin;
    const lowerZ = this.lowerZ * cos + this.lowerY * sin;
    // From the lower joint to the upper pivot.
    const toY = this.baseY - lowerY;
    const toZ = this.baseZ - lowerZ;
    this.toY = toY;
    this.toZ = toZ;
    this.jointRise = lowerZ - this.lowerZ;
    const square = toY * toY + toZ * toZ;
    const along = (square + this.carrierSquare - this.upperSquare) / 2;
    const beside = this.side * Math.sqrt(this.carrierSquare * square - along * along);
    const perSquare = 1 / square;
    const carrierY = (along * toY - beside * toZ) * perSquare;
    const carrierZ = (along * toZ + beside * toY) * perSquare;
    const upperY = carrierY - toY;
    const upperZ = carrierZ - toZ;
    this.place(lowerZ, carrierY, carrierZ);
    // l + ω_c·c = ω_u·u, crossed with u and with c; then its derivative, crossed with u.
    const cross = carrierY * upperZ - carrierZ * upperY;
    const perCross = 1 / cross;
    const carrierTurn = (lowerZ * upperY - lowerY * upperZ) * perCross;
    const rises = this.takeSpeeds(lowerY, carrierTurn);
    if (withCurve) {
      const upperTurn = (lowerZ * carrierY - lowerY * carrierZ) * perCross;
      const carrierTurnRate =
        (lowerY * upperY +
          lowerZ * upperZ +
          carrierTurn * carrierTurn * (carrierY * upperY + carrierZ * upperZ) -
          upperTurn * upperTurn * this.upperSquare) *
        perCross;
      this.takeRates(-lowerZ, carrierTurn, carrierTurnRate);
    }
    return rises && Math.abs(cross) >= this.leastCross;
  }
}
