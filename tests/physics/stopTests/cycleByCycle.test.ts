import { describe, expect, it } from "vitest";
import { analyseCycles } from "../../../src/physics/stopTests/analyseCycles.ts";
import type { TimeDisplacementForce } from "../../../src/physics/stopTests/benchTest.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { given } from "./outcomes.ts";

/** One turn about 15 mm and 900 N; 5 mm, a third of a second, 60 N/mm and 0.5 N·s/mm unless told. */
interface Turn {
  readonly amplitudeMm?: number;
  readonly periodS?: number;
  readonly rate?: number;
  readonly damping?: number;
  /** A third harmonic of the displacement, as a share of the amplitude. */
  readonly third?: number;
  /** What every force is multiplied by. */
  readonly scale?: number;
}

const omega = 2 * Math.PI * 3;

function shape(turn: Turn, phase: number): readonly [displacement: number, force: number] {
  const { amplitudeMm = 5, periodS = 1 / 3, rate = 60, damping = 0.5, third = 0, scale = 1 } = turn;
  const angle = 2 * Math.PI * phase;
  const x = amplitudeMm * (Math.sin(angle) + third * Math.sin(3 * angle));
  const v =
    ((2 * Math.PI) / periodS) * amplitudeMm * (Math.cos(angle) + 3 * third * Math.cos(3 * angle));
  return [15 + x, scale * (900 + rate * x + damping * v)];
}

/** The turns one after the other, with a quarter of a turn before and behind. */
function turns(list: readonly Turn[], samples = 400, startS = 0): TimeDisplacementForce {
  const rows: (readonly [number, number, number])[] = [];
  let start = startS;
  const put = (turn: Turn, from: number, to: number) => {
    const period = turn.periodS ?? 1 / 3;
    for (let at = from; at < to; at++) {
      const phase = (at + 0.5) / samples;
      rows.push([start + phase * period, ...shape(turn, phase)]);
    }
  };
  const quarter = Math.round(samples / 4);
  put(list[0] as Turn, -quarter, 0);
  for (const turn of list) {
    put(turn, 0, samples);
    start += turn.periodS ?? 1 / 3;
  }
  put(list.at(-1) as Turn, 0, quarter);
  return fromRows(rows);
}

const fromRows = (rows: readonly (readonly [number, number, number])[]): TimeDisplacementForce => ({
  kind: "cycles",
  timeS: Float64Array.from(rows, ([time]) => time),
  displacementMm: Float64Array.from(rows, ([, displacement]) => displacement),
  forceN: Float64Array.from(rows, ([, , force]) => force),
});

const rowsOf = ({ timeS, displacementMm, forceN }: TimeDisplacementForce) =>
  Array.from(timeS, (time, row): [number, number, number] => [
    time,
    displacementMm[row] as number,
    forceN[row] as number,
  ]);

const analysed = (...list: readonly Turn[]) => given(analyseCycles(turns(list)));
const told = (...list: readonly Turn[]) => analysed(...list).remarks.map(({ code }) => code);
const sentences = (test: TimeDisplacementForce) =>
  given(analyseCycles(test)).remarks.map(({ sentence }) => inModelUnits(sentence));

function refusal(test: TimeDisplacementForce): string {
  const outcome = analyseCycles(test);
  return outcome.ok ? "none" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
}

/** π·c·ω·X² of a turn, J. */
const lossJ = (damping: number) => (Math.PI * damping * omega * 25) / 1000;

describe("the figures of cycles", () => {
  it("are means, with what the file holds", () => {
    const test = turns([{}, {}, {}, {}]);
    const found = given(analyseCycles(test));
    expect(found).toMatchObject({ kind: "cycles", samples: 1800, cycles: 4, remarks: [] });
    expect(found.frequencyHz).toBeCloseTo(3, 6);
    expect(found.amplitudeMm).toBeCloseTo(5, 6);
    expect(found.meanDisplacementMm).toBeCloseTo(15, 6);
    expect(found.meanForceN).toBeCloseTo(900, 3);
    expect(found.greatestSpeedMmPerS).toBeCloseTo(5 * omega, 4);
  });

  it("have the standard error of their mean over the cycles: s/√n", () => {
    const three = analysed({ damping: 0.4 }, { damping: 0.5 }, { damping: 0.6 });
    expect(three.lossJ.value / lossJ(0.5)).toBeCloseTo(1, 3);
    expect(three.lossJ.standardError / (lossJ(0.1) / Math.sqrt(3))).toBeCloseTo(1, 2);
    // Of two, half of their difference.
    const two = analysed({ damping: 0.4 }, { damping: 0.6 });
    expect(two.lossJ.standardError / lossJ(0.1)).toBeCloseTo(1, 2);
  });

  it("say what was left out of the samples", () => {
    const rows = rowsOf(turns([{}, {}]));
    const again = [
      ...rows.slice(0, 300),
      rows[299] as [number, number, number],
      ...rows.slice(300),
    ];
    expect(sentences(fromRows(again))).toEqual([
      "1 rows whose time is not after the row before were left out.",
    ]);
  });
});

describe("a whole cycle", () => {
  it("has sixteen samples", () => {
    expect(given(analyseCycles(turns([{}, {}], 16))).cycles).toBe(2);
    expect(refusal(turns([{}, {}, {}], 15))).toBe(
      "noCycle: No whole cycle of at least 16 samples without a gap was found. Record at least two whole cycles, with more samples.",
    );
  });

  const without = (from: number, to: number, startS = 0) =>
    fromRows(
      rowsOf(turns([{}, {}, {}, {}, {}], 400, startS)).filter((_, at) => at < from || at >= to),
    );

  it("has no gap of more than three of its steps, however late", () => {
    // The second of five turns: rows 500 to 899, those of the first quarter before them.
    for (const startS of [0, 1000]) {
      expect(given(analyseCycles(without(600, 601, startS))).remarks).toEqual([]);
      expect(sentences(without(600, 620, startS))).toEqual([
        "1 of 5 cycles were left out: samples are missing in them, or their stroke or period is another.",
      ]);
    }
  });

  it("has none at its beginning or end either: a gap about a passage is of both cycles", () => {
    const found = given(analyseCycles(without(480, 520)));
    expect(found.cycles).toBe(3);
    expect(found.lossJ.value / lossJ(0.5)).toBeCloseTo(1, 3);
  });
});

describe("cycles of another stroke or period", () => {
  const kept = (...list: readonly Turn[]) => analysed(...list).cycles;

  it("are left out beyond a tenth", () => {
    expect(kept({}, {}, { amplitudeMm: 5.3 }, {}, {})).toBe(5);
    expect(kept({}, {}, { amplitudeMm: 4.7 }, {}, {})).toBe(5);
    expect(kept({}, {}, { amplitudeMm: 5.7 }, {}, {})).toBe(4);
    expect(kept({}, {}, { amplitudeMm: 4.3 }, {}, {})).toBe(4);
    expect(kept({}, {}, { periodS: 0.35 }, {}, {})).toBe(5);
    expect(kept({}, {}, { periodS: 0.4 }, {}, {})).toBe(4);
    expect(kept({}, {}, { periodS: 0.28 }, {}, {})).toBe(4);
  });

  it("are told by the middle one of three or more; of two both stay", () => {
    expect(kept({ amplitudeMm: 5 }, { amplitudeMm: 4 })).toBe(2);
    expect(kept({ amplitudeMm: 5 }, { amplitudeMm: 4 }, { amplitudeMm: 5 })).toBe(2);
    expect(sentences(turns([{}, { amplitudeMm: 4 }, {}]))).toEqual([
      "1 of 3 cycles were left out: samples are missing in them, or their stroke or period is another.",
    ]);
  });
});

describe("the sign of the force", () => {
  it("is told by the loss where nothing else tells it", () => {
    const dashpot = fromRows(
      rowsOf(turns([{ rate: 0 }, { rate: 0 }])).map(([t, x, force]) => [t, x, 900 - force]),
    );
    expect(sentences(dashpot)).toEqual([
      "The file counts a pushing force as negative; it was turned.",
    ]);
    expect(given(analyseCycles(dashpot)).lossJ.value / lossJ(0.5)).toBeCloseTo(1, 3);
  });
});

describe("a loop that gives back more than was put in", () => {
  // In: 60·(20² − 10²)/2 = 9000 mJ, and half of the loss.
  const damping = (share: number) => (9 * share) / lossJ(1);
  const gained =
    "energyGained: By this file the stop gives back more energy than was put in. Check that the columns, their signs and the order of the rows are right.";

  it("is refused beyond 2 % of it", () => {
    expect(refusal(turns([{ damping: damping(-0.015) }, { damping: damping(-0.015) }]))).toBe(
      "none",
    );
    expect(refusal(turns([{ damping: damping(-0.025) }, { damping: damping(-0.025) }]))).toBe(
      gained,
    );
  });

  it("is refused only where that is more than three standard errors", () => {
    // −0.2 N·s/mm on the whole, more than 2 %; the standard error of the mean of four is 0.29.
    const uneven = [0.3, -0.7, 0.3, -0.7].map((each) => ({ damping: each }));
    expect(refusal(turns(uneven))).toBe("none");
  });
});

describe("a motion that is no sine", () => {
  it("is one of which more than a twentieth of the amplitude is left over, root mean square", () => {
    // A third harmonic of h leaves h/√2.
    expect(told({ third: 0.06 }, { third: 0.06 })).toEqual([]);
    expect(told({ third: 0.08 }, { third: 0.08 })).toEqual(["notASine"]);
    expect(analysed({ third: 0.15 }).equivalentDampingNsPerMm).toBeNull();
  });

  it("is that of the worst cycle", () => {
    expect(told({}, { third: 0.15 })).toEqual(["notASine"]);
  });

  it("has its loss factor by half the way from end to end", () => {
    // ΔE/(2π·½·k·X²), with the spring's rate.
    const found = analysed({ third: 0.2 }, { third: 0.2 });
    expect(found.amplitudeMm).toBeCloseTo(
      Math.max(...Array.from({ length: 400 }, (_, at) => shape({ third: 0.2 }, at / 400)[0])) - 15,
      3,
    );
    const { lossJ: loss, dynamicRateNPerMm: rate, lossFactor, amplitudeMm } = found;
    expect(rate.value).toBeCloseTo(60, 1);
    expect(lossFactor?.value).toBeCloseTo(
      (1000 * loss.value) / (Math.PI * rate.value * amplitudeMm ** 2),
      9,
    );
  });
});

describe("slow cycles", () => {
  const test = turns([{}, {}]);

  it("are those up to the greatest static speed", () => {
    const own = given(analyseCycles(test)).greatestSpeedMmPerS;
    expect(own).toBeCloseTo(5 * omega, 4);
    const slow = given(analyseCycles(test, { staticSpeedMmPerS: own }));
    expect(slow.equivalentDampingNsPerMm).toBeNull();
    expect(slow.remarks.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "The stop never moved faster than 94 mm/s: the loop shows what it loses at rest. Damping shows only at speed, so none is given.",
    ]);
    const fast = given(analyseCycles(test, { staticSpeedMmPerS: own - 0.001 }));
    expect(fast.equivalentDampingNsPerMm?.value).toBeCloseTo(0.5, 3);
    expect(fast.remarks).toEqual([]);
  });

  it("are those up to 5 mm/s where no speed is given", () => {
    // X·ω of 5 mm: 2π·5/P.
    expect(told({ periodS: 2 * Math.PI * 1.01 }, { periodS: 2 * Math.PI * 1.01 })).toEqual([
      "slowCycles",
    ]);
    expect(told({ periodS: 2 * Math.PI * 0.99 }, { periodS: 2 * Math.PI * 0.99 })).toEqual([]);
  });
});

describe("the loss factor", () => {
  /** A rate whose force in phase is this share of the whole amplitude, beside 3 N·s/mm. */
  const withRate = (share: number) => ({
    damping: 3,
    rate: (share * 3 * omega) / Math.sqrt(1 - share * share),
  });

  it("is given where more than 2 % of the force are in phase with the displacement", () => {
    const { rate } = withRate(0.1);
    const found = analysed(withRate(0.1), withRate(0.1));
    expect((found.lossFactor?.value ?? 0) / ((3 * omega) / rate)).toBeCloseTo(1, 2);
    expect(analysed(withRate(0.022), withRate(0.022)).lossFactor).not.toBeNull();
    expect(analysed(withRate(0.018), withRate(0.018)).lossFactor).toBeNull();
  });

  it("is none where one cycle has no such rate", () => {
    expect(analysed(withRate(0.1), withRate(0.01), withRate(0.1)).lossFactor).toBeNull();
  });
});

describe("a force that changes from cycle to cycle", () => {
  const scaled = (...scales: readonly number[]) => scales.map((scale) => ({ scale, damping: 0 }));
  const drift = (...scales: readonly number[]) => told(...scaled(...scales));

  it("is told where the last greatest differs from the first by a twentieth of the greater", () => {
    expect(drift(1, 1, 0.951)).toEqual([]);
    expect(drift(1, 1, 0.949)).toEqual(["noticeableDrift"]);
    expect(drift(1, 1, 1.052)).toEqual([]);
    expect(drift(1, 1, 1.054)).toEqual(["noticeableDrift"]);
    expect(drift(1, 0.9, 1)).toEqual([]);
  });

  it("is told in words, of three cycles or more", () => {
    expect(sentences(turns(scaled(1, 0.95, 0.9)))).toEqual([
      "The greatest force went from 1200 N in the first cycle to 1080 N in the last: the stop was still settling.",
    ]);
    expect(drift(1, 0.9)).toEqual([]);
  });
});
