import { expect, it } from "vitest";
import { servedOf } from "../../src/compute/servedWork.ts";
import { assessFitment } from "../../src/physics/assess.ts";
import { fitmentWithStop } from "../../src/physics/prescription/fitmentWithStop.ts";
import { secantRate } from "../../src/physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../src/physics/stop/stopCurve.ts";
import { fitmentOf } from "../../src/records/check/fitmentOf.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { demoRecord } from "../support/demoRecords.ts";

it("a check whose own stop fits is served by that stop as it is", () => {
  const record = demoRecord("arm-fits");
  const { combinations, builds } = servedOf("k", record, demoPack);
  const own = demoPack.stops.find(({ name }) => name === record.stop.name);
  expect(combinations).toContainEqual({ stop: own?.id, spacerMm: 0 });
  expect(builds).toEqual([]);
});

it("where the pack has nothing, builds are named that miss no limit", () => {
  const record = demoRecord("arm-fits");
  const empty = { ...demoPack, stops: [] };
  const stop = { ...record.stop, freeHeight: { values: [40], tol: 1 } };
  const { combinations, builds } = servedOf("k", { ...record, stop }, empty);
  expect(combinations).toEqual([]);
  expect(builds.length).toBeGreaterThan(0);
  // Held against whole assessments of such stops, which draw the doubt as well.
  for (const { heightMm, stiffnessClass } of builds.slice(0, 3)) {
    expect(heightMm % 10).toBe(0);
    const curve = stopCurve(stop);
    if (!curve.ok) throw new Error("no curve");
    const scale = stiffnessClass / secantRate(curve.value);
    const made = {
      ...stop,
      freeHeight: { values: [heightMm], tol: 1 },
      curve: stop.curve.map(([mm, force]) => [mm, scale * force] as [number, number]),
    };
    const fitment = fitmentWithStop(fitmentOf({ ...record, stop }), made, 0);
    if (!fitment.ok) throw new Error(fitment.fault.code);
    const assessed = assessFitment(fitment.value);
    if (!assessed.ok) throw new Error(assessed.fault.code);
    const states = assessed.value.corners.flatMap(({ checks }) =>
      checks.filter(({ id }) => id === "stiffness").map(({ state }) => state),
    );
    expect(states).not.toContain("no");
  }
});
