import examples from "./examples.json";

/*
 * examples.json: what the five records of demo-data/checks must give, from an independent
 * implementation of the same model (another language, other solvers, 40 000 draws).
 */

type VectorCorner = (typeof examples)[number]["corners"][number];

/** As much of a corner's answer as the vectors hold; `assess --json` prints such corners. */
export interface ComparedCorner {
  readonly side: string;
  readonly checks: readonly {
    readonly id: string;
    readonly state: string;
    readonly side?: string | undefined;
  }[];
  readonly [figure: string]: unknown;
}

/** Relative to the vector's figure, except intervals (to their width) and probabilities (absolute). */
export const tolerances = {
  static: 1e-6,
  event: 0.002,
  energy: 0.005,
  leaveSpeed: 0.01,
  interval: 0.5,
  probability: 0.06,
} as const;

/** Below this, mm or J or N, a figure of zero is met. */
const zero = 1e-6;

function relative(wanted: number, got: unknown, tolerance: number): boolean {
  return typeof got === "number" && Math.abs(got - wanted) <= tolerance * Math.abs(wanted) + zero;
}

function eventTolerance(figure: string): number {
  if (figure.startsWith("energy")) return tolerances.energy;
  return figure === "leaveSpeedMmPerS" ? tolerances.leaveSpeed : tolerances.event;
}

const stateOf = ["clearance", "earlyContact", "stiffness"];

function field(value: unknown, name: string | number): unknown {
  return typeof value === "object" && value !== null ? Reflect.get(value, name) : undefined;
}

function figureAgrees(
  name: string,
  wanted: unknown,
  got: unknown,
  corner: ComparedCorner,
): boolean {
  if (stateOf.includes(name)) {
    return corner.checks.find((check) => check.id === name)?.state === wanted;
  }
  if (name === "stiffnessSide") {
    const side = corner.checks.find((check) => check.id === "stiffness")?.side;
    return (side ?? null) === wanted;
  }
  if (name.endsWith("Probability")) {
    if (wanted === null) return got === null;
    return typeof got === "number" && Math.abs(got - Number(wanted)) <= tolerances.probability;
  }
  if (name === "events") {
    return (wanted as VectorCorner["events"]).every((event, index) =>
      Object.entries(event).every(([figure, value]) => {
        const own = field(field(got, index), figure);
        return typeof value === "number"
          ? relative(value, own, eventTolerance(figure))
          : own === value;
      }),
    );
  }
  if (name === "intervals") {
    return Object.entries(wanted as Record<string, number[]>).every(([figure, [low, high]]) => {
      const width = Number(high) - Number(low);
      const own = field(got, figure);
      return [low, high].every((end, index) => {
        const ownEnd = field(own, index);
        return (
          typeof ownEnd === "number" &&
          Math.abs(ownEnd - Number(end)) <= tolerances.interval * width + zero
        );
      });
    });
  }
  if (name === "oneWheel") {
    return Object.entries(wanted as Record<string, number>).every(([figure, value]) =>
      relative(value, field(got, figure), tolerances.static),
    );
  }
  if (typeof wanted === "number") return relative(wanted, got, tolerances.static);
  return JSON.stringify(wanted) === JSON.stringify(got);
}

export interface Agreement {
  readonly compared: number;
  /** One line for each figure that disagrees. */
  readonly disagreements: readonly string[];
}

/** Holds the corners computed for the record with this id against the vectors. */
export function compareWithVectors(id: string, corners: readonly ComparedCorner[]): Agreement {
  const example = examples.find((candidate) => candidate.id === id);
  if (!example) return { compared: 0, disagreements: [`${id}: not among the vectors`] };
  const disagreements: string[] = [];
  let compared = 0;
  if (corners.length !== example.corners.length) {
    disagreements.push(`${corners.length} corners instead of ${example.corners.length}`);
  }
  for (const wanted of example.corners) {
    const own = corners.find((corner) => corner.side === wanted.side);
    for (const [name, value] of Object.entries(wanted)) {
      compared += 1;
      if (own && figureAgrees(name, value, own[name], own)) continue;
      const got = own === undefined ? "no such corner" : JSON.stringify(own[name] ?? own.checks);
      disagreements.push(`${wanted.side} ${name}: ${got} instead of ${JSON.stringify(value)}`);
    }
  }
  return { compared, disagreements };
}

export const vectorIds: readonly string[] = examples.map((example) => example.id);
