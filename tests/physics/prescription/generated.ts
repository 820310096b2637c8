import type { Corner, Fitment, Layout, Reading, Stop } from "../../../src/physics/fitment.ts";
import { randomFrom } from "../../support/generateRecords.ts";

export interface GeneratedOptions {
  /** Share of fitments without ride data. */
  readonly bare?: number;
}

/** A fitment as a workshop may meet it, some of it fitting, some of it not; the same for the same seed. */
export function generatedFitment(seed: number, { bare = 0.1 }: GeneratedOptions = {}): Fitment {
  const random = randomFrom(seed);
  const between = (least: number, greatest: number) => least + random() * (greatest - least);
  const one = <Item>(items: readonly Item[]): Item => {
    const item = items[Math.floor(random() * items.length)];
    if (item === undefined) throw new Error("nothing to choose from");
    return item;
  };
  const reading = (value: number, tol: number): Reading => ({
    values: [Math.round(value * 2) / 2],
    tol,
  });
  const kind = one(["arm", "arm", "damper", "strut", "axle"] as const);
  const layout = layoutOf(kind, between, reading);
  const perWheel = kind === "arm" ? 0.42 : kind === "damper" ? 0.6 : 0.97;
  const height = between(40, 110);
  const stop = stopOf(height, between, one);
  const travel = between(60, 130);
  const gap = Math.max(4, travel * perWheel * between(0.15, 0.75));
  const mass = between(320, 760);
  const corner = (side: Corner["side"]): Corner => ({
    side,
    gap: reading(gap + between(-2, 2), one([1, 2, 3])),
    cornerMassKg: reading(mass, 10),
    limits: [
      { kind: "tyre", at: "wheel", perWheel: 1, reading: reading(travel + between(-4, 4), 3) },
      ...(random() < 0.4
        ? [
            {
              kind: "metal" as const,
              at: "stop" as const,
              reading: reading(perWheel * travel * between(0.95, 1.2), 2),
            },
          ]
        : []),
    ],
  });
  const wheelRate = between(18, 45);
  return {
    use: one(["daily", "daily", "towing", "offroad"]),
    layout,
    corners: random() < 0.85 ? [corner("left"), corner("right")] : [corner("left")],
    stop,
    ...(random() < bare
      ? {}
      : {
          ride: {
            unsprungMassKg: between(38, 80),
            wheelRateNPerMm: wheelRate,
            tyreRateNPerMm: between(190, 320),
            damperBumpNsPerMm: between(1.2, 3),
            damperReboundNsPerMm: between(2, 5),
            payloadPerCornerKg: one([0, 50, 100, 150, 250]),
          },
        }),
  };
}

function layoutOf(
  kind: "arm" | "damper" | "strut" | "axle",
  between: (least: number, greatest: number) => number,
  reading: (value: number, tol: number) => Reading,
): Layout {
  const long = between(330, 460);
  switch (kind) {
    case "arm":
      return {
        kind,
        armRole: "carriesWheel",
        readings: {
          pivotToStop: reading(long * between(0.34, 0.5), 2),
          pivotToOuter: reading(long, 2),
          armAngle: reading(between(-4, 16), 0.5),
          stopLean: reading(between(-6, 10), 0.5),
        },
      };
    case "damper":
      return {
        kind,
        armRole: "carriesWheel",
        readings: {
          pivotToMount: reading(long * between(0.5, 0.75), 2),
          pivotToOuter: reading(long, 2),
          armAngle: reading(between(0, 12), 0.5),
          stopLean: reading(between(0, 15), 0.5),
          damperLength: reading(between(380, 540), 2),
        },
      };
    case "strut":
      return { kind, readings: { stopLean: reading(between(3, 14), 0.5) } };
    case "axle":
      return {
        kind,
        readings: {
          track: reading(between(1450, 1700), 5),
          stopSpacing: reading(between(850, 1150), 5),
        },
      };
  }
}

/** A progressive stop of this height: 55 % usable, force rising with the third power. */
function stopOf(
  height: number,
  between: (least: number, greatest: number) => number,
  one: <Item>(items: readonly Item[]) => Item,
): Stop {
  return madeStop(
    "Generated stop",
    height,
    one([25, 40, 63, 100, 160, 250, 400]) * between(0.85, 1.15),
  );
}

/** A stop for impacts of this height and secant rate (N/mm). */
function madeStop(name: string, height: number, rate: number): Stop {
  const freeHeight = Math.round(height * 2) / 2;
  const usable = 0.55 * freeHeight;
  const force = (share: number) => rate * usable * (0.6 * share + 1.6 * share ** 3);
  return {
    name,
    duty: "impact",
    freeHeight: { values: [freeHeight], tol: 1 },
    usableCompressionMm: usable,
    curve: [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1].map(
      (share) => [share * usable, force(share)] as const,
    ),
    damping: null,
    testedAtSpeed: false,
  };
}

/** Stops of a small shelf: four heights, three stiffnesses each. */
export const shelf = [45, 60, 80, 105].flatMap((height) =>
  [40, 100, 250].map((rate) => ({
    id: `${height} high, ${rate}`,
    stop: madeStop(`Shelf ${height}, ${rate}`, height, rate),
  })),
);
