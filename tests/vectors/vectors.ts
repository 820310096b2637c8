import examples from "./examples.json" with { type: "json" };

/*
 * examples.json: what the seventeen records of demo-data/checks must give, from an independent
 * implementation of the same model (another language, other solvers, 12 000 draws).
 */

type Ends = readonly number[];

/** What the vectors hold of one corner. Those of a record without ride data have none of its figures. */
export interface VectorCorner {
  readonly side: string;
  readonly linkage: string;
  readonly leverRatio: number;
  readonly leverRatioAtFullStop: number;
  readonly wheelTravelToContactMm: number;
  readonly wheelTravelToFullStopMm: number;
  readonly wheelTravelToHardLimitMm: number | null;
  readonly hardLimit: string | null;
  readonly freeShare: number;
  readonly reserveMm: number | null;
  readonly spacerMm?: number | undefined;
  readonly tallerMm?: number | undefined;
  readonly secantRateNPerMm: number;
  readonly stopRateClass: number;
  readonly progressive: boolean;
  readonly intervals: {
    readonly wheelTravelToContactMm: Ends;
    readonly wheelTravelToFullStopMm: Ends;
    readonly reserveMm: Ends | null;
  };
  readonly clearanceProbability: number | null;
  readonly clearance: string;
  readonly [figure: string]: unknown;
}

/** … and what those with ride data hold besides. */
export interface RiddenVectorCorner extends VectorCorner {
  readonly roadTravelSigmaMm: number;
  readonly contactsPerKm: number;
  readonly loadedSagMm: number;
  readonly loadedTravelToContactMm: number;
  readonly loadedContactsPerKm: number;
  readonly freeTravelNeededMm: number;
  readonly freeTravelNeededUnladenMm: number;
  readonly mostExtraHeightMm: number;
  readonly events: readonly Readonly<Record<string, number | boolean>>[];
  readonly classesThatWork: Ends;
  readonly classWindow: Ends | null;
  readonly earlyContactProbability: number | null;
  readonly earlyContact: string;
  readonly stiffness: string;
  readonly stiffnessSide: string | null;
}

export interface VectorExample {
  readonly id: string;
  readonly corners: readonly VectorCorner[];
}

export const vectorExamples: readonly VectorExample[] = examples;

/** The vectors' corner of a record; that record must be among them. */
export function vectorCorner(id: string, side: string): VectorCorner {
  const example = vectorExamples.find((candidate) => candidate.id === id);
  const corner = example?.corners.find((candidate) => candidate.side === side);
  if (corner === undefined) throw new Error(`no vector for ${id} ${side}`);
  return corner;
}

function isRidden(corner: VectorCorner): corner is RiddenVectorCorner {
  return corner.events !== undefined;
}

/** The same of a record with ride data. */
export function riddenVectorCorner(id: string, side: string): RiddenVectorCorner {
  const corner = vectorCorner(id, side);
  if (!isRidden(corner)) throw new Error(`no ride in the vector for ${id} ${side}`);
  return corner;
}

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
  bodyRise: 0.005,
  /** Or 2 ms, whichever is more. */
  tyreOff: 0.02,
  interval: 0.03,
  probability: 0.02,
} as const;

/** Below this, mm or J or N, a figure of zero is met. */
const zero = 1e-6;

function relative(wanted: number, got: unknown, tolerance: number): boolean {
  return typeof got === "number" && Math.abs(got - wanted) <= tolerance * Math.abs(wanted) + zero;
}

function eventTolerance(figure: string): number {
  if (figure.startsWith("energy")) return tolerances.energy;
  if (figure === "bodyRiseMm") return tolerances.bodyRise;
  return figure === "leaveSpeedMmPerS" ? tolerances.leaveSpeed : tolerances.event;
}

function eventFigureAgrees(figure: string, wanted: unknown, own: unknown): boolean {
  if (typeof wanted !== "number") return own === wanted;
  if (figure !== "tyreOffMs") return relative(wanted, own, eventTolerance(figure));
  return (
    typeof own === "number" && Math.abs(own - wanted) <= Math.max(2, tolerances.tyreOff * wanted)
  );
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
  // Not among what the command prints; where it is there, it must agree.
  if (name === "stopItselfPasses" && got === undefined) return true;
  if (name === "stiffnessSide") {
    const side = corner.checks.find((check) => check.id === "stiffness")?.side;
    return (side ?? null) === wanted;
  }
  if (name.endsWith("Probability")) {
    if (wanted === null) return got === null;
    return typeof got === "number" && Math.abs(got - Number(wanted)) <= tolerances.probability;
  }
  if (name === "events") {
    return (wanted as RiddenVectorCorner["events"]).every((event, index) =>
      Object.entries(event).every(([figure, value]) =>
        eventFigureAgrees(figure, value, field(field(got, index), figure)),
      ),
    );
  }
  if (name === "intervals") {
    return Object.entries(wanted as Record<string, number[] | null>).every(([figure, ends]) => {
      if (ends === null) return field(got, figure) === null;
      const [low, high] = ends;
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
  const example = vectorExamples.find((candidate) => candidate.id === id);
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

export const vectorIds: readonly string[] = vectorExamples.map(({ id }) => id);
