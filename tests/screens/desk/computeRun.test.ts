import "fake-indexeddb/auto";
import { expect, it } from "vitest";
import { poolWork } from "../../../src/compute/poolWork.ts";
import type { Assessment } from "../../../src/physics/fitment.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { runComputing } from "../../../src/screens/desk/computeRun.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { deskWith, poolHere, value } from "./support.tsx";

function sentencesOf(assessment: Assessment | null): string[] {
  const checks = assessment?.corners.flatMap((corner) => corner.checks) ?? [];
  return checks.map(({ sentence }) => inModelUnits(sentence));
}

it("an answer is kept in words, which a version with other messages can show too", async () => {
  const record = demoRecord("arm-needs-taller");
  const {
    store,
    keys: [key = ""],
  } = await deskWith(record);
  const { signal } = new AbortController();
  await runComputing({ store, pool: poolHere(), signal, onResults: () => undefined });

  const answer = poolWork({ kind: "compute", text: JSON.stringify(record) });
  if (answer.kind !== "computed") throw new Error("not computed");
  const computed = value(await store.submission(key))?.computed;
  const assessment = value(await store.assessment(key));
  expect(JSON.stringify([computed, assessment])).not.toContain('"code"');
  expect(inModelUnits(computed?.reason ?? [])).toBe(inModelUnits(answer.computed.reason));
  expect(sentencesOf(assessment)).toEqual(sentencesOf(answer.assessment));
  expect(sentencesOf(assessment).length).toBeGreaterThan(3);
});
