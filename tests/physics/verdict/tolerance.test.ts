import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { CheckId, Corner, Fitment, HardLimit, State } from "../../../src/physics/fitment.ts";
import { unwrapped } from "../demoFitments.ts";
import { generatedFitment } from "../prescription/generated.ts";
import { tyreLimit, uprightStrut, within } from "../staticFitments.ts";

/** Every ± of the check multiplied; what nobody measured, such as the model's own doubt, stays. */
function withTolerances(fitment: Fitment, factor: number): Fitment {
  const widened = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(widened);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([name, own]) => [
        name,
        typeof own === "number" && ["tol", "settleMm", "usableTolMm"].includes(name)
          ? own * factor
          : name === "tolerances"
            ? Object.fromEntries(Object.entries(own).map(([of, tol]) => [of, Number(tol) * factor]))
            : widened(own),
      ]),
    );
  };
  return widened(fitment) as Fitment;
}

/** What a state may become when less is known. */
const lessSure: Readonly<Record<State, readonly State[]>> = {
  ok: ["ok", "care", "unsure"],
  care: ["care", "unsure"],
  no: ["no", "unsure"],
  unsure: ["unsure"],
};

const factors = [1, 1.6, 2.5, 4, 8] as const;

function states(fitment: Fitment): Map<string, { id: CheckId; state: State }> {
  const assessed = assessStatic(fitment, { samples: 10_000 });
  return new Map(
    assessed.ok
      ? assessed.value.corners.flatMap(({ side, checks }) =>
          checks.map(({ id, state }) => [`${side} ${id}`, { id, state }] as const),
        )
      : [],
  );
}

/** A vehicle with friction, and on some with ride data that were estimated. */
function vehicle(seed: number): Fitment {
  const fitment = generatedFitment(seed);
  const estimated = seed % 3 === 0 && fitment.ride !== undefined;
  return {
    ...fitment,
    stop: { ...fitment.stop, usableTolMm: 0.05 * fitment.stop.usableCompressionMm },
    corners: fitment.corners.map((corner) => ({ ...corner, ...(seed % 2 ? { settleMm: 3 } : {}) })),
    ...(estimated && {
      ride: {
        ...fitment.ride,
        tolerances: { wheelRateNPerMm: 4, damperBumpNsPerMm: 0.4, payloadPerCornerKg: 20 },
      },
    }),
  };
}

describe("more tolerance", () => {
  // With friction and without: every one of the 500 that `npm run prescriptions` makes was tried so once.
  const seeds = Array.from({ length: 36 }, (_, n) => n + 1);
  it.each(seeds)("never makes a check surer: vehicle %d", (seed) => {
    let before: ReturnType<typeof states> | null = null;
    for (const factor of factors) {
      const now = states(withTolerances(vehicle(seed), factor));
      for (const [key, { state }] of now) {
        const was = before?.get(key);
        if (was) expect(lessSure[was.state], `${key} × ${factor}`).toContain(state);
      }
      before = now;
    }
  });

  /*
   * The least of several limits, each in doubt, lies lower than any of them: with more doubt about five
   * limits at one place it is rightly surer that one of them touches. It never gets better by it.
   */
  it("of many limits at one place may make it surer that one touches, never that none does", () => {
    const kinds = ["tyre", "damper", "spring", "metal", "other"] as const;
    const many = (tol: number): Fitment =>
      uprightStrut({
        gap: within(40, 0),
        limits: kinds.map(
          (kind): HardLimit => ({ ...tyreLimit(within(76, tol)), kind }),
        ) as Corner["limits"],
      });
    const clearance = (tol: number) => states(many(tol)).get("left clearance")?.state;
    expect([0.5, 10, 30, 75].map(clearance)).toEqual(["care", "unsure", "unsure", "no"]);
  });

  /* Repeats that scatter by more than three times their ± are doubted; a wider ± explains them. */
  it("explains repeats that scatter, which is all that it ever settles", () => {
    const scattered = (tol: number) =>
      uprightStrut({
        gap: { values: [38, 42, 46], tol },
        limits: [tyreLimit(within(110, 2))],
      });
    const of = (tol: number) => unwrapped(assessStatic(scattered(tol), { samples: 10_000 }));
    const states = (tol: number) =>
      of(tol).corners[0]?.checks.map(({ id, state }) => [id, state]) ?? [];
    expect(states(2)).toContainEqual(["plausible", "unsure"]);
    expect(states(3)).toContainEqual(["plausible", "ok"]);
    const others = (tol: number) => states(tol).filter(([id]) => id !== "plausible");
    expect(others(3)).toEqual(others(2));
  });
});
