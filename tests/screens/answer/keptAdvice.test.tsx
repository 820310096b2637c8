import { act, cleanup, render, screen, waitFor } from "@testing-library/preact";
import { useState } from "preact/hooks";
import { afterEach, expect, it, vi } from "vitest";
import type { Assessor } from "../../../src/compute/assessor.ts";
import type { Advice } from "../../../src/records/check/checkRecord.ts";
import { changeRecord, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import AnswerScreen from "../../../src/screens/answer/AnswerScreen.tsx";
import { demoRecord } from "./demoChecks.ts";
import { startDeskAssessor } from "./dispatcherAssessor.ts";

afterEach(cleanup);
vi.setConfig({ testTimeout: 60_000 });
const patience = { timeout: 40_000 };

/** The answer of a check that is kept as it changes, and how often the model was asked. */
function open(first: StoredCheck) {
  const asked = { answers: 0, prescriptions: 0 };
  const spied: (() => void)[] = [];
  const count = () => {
    for (const each of spied) each();
    return asked;
  };
  let stored = first;
  let put: (next: StoredCheck) => void = () => undefined;
  const startAssessor = (): Assessor => {
    const assessor = startDeskAssessor();
    const [assess, prescribe] = [vi.spyOn(assessor, "assess"), vi.spyOn(assessor, "prescribe")];
    spied.push(() => {
      asked.answers = assess.mock.calls.length;
      asked.prescriptions = prescribe.mock.calls.length;
    });
    return assessor;
  };
  function Kept() {
    const [here, setHere] = useState(first);
    put = setHere;
    stored = here;
    return (
      <AnswerScreen
        stored={here}
        unit="mm"
        go={() => undefined}
        onChange={setHere}
        startAssessor={startAssessor}
      />
    );
  }
  render(<Kept />);
  return {
    count,
    advised: (): readonly Advice[] => stored.record.advised ?? [],
    change: (to: (now: StoredCheck) => StoredCheck) => act(() => put(to(stored))),
  };
}

it("what an answer prescribed is in the check once it is shown, as it is said, and nothing is asked anew", async () => {
  const began = Date.now();
  const check = open(storedFromRecord(demoRecord("damper-shaft")));
  await waitFor(() => expect(check.advised()).toHaveLength(1), patience);
  const [advice] = check.advised();
  const said = document.querySelector(".prescription")?.textContent ?? "";
  expect(said).toContain("Fit Damped rod stop (HL-2166) on this side");
  const stop = demoPack.stops.find(({ partNumber }) => partNumber === "HL-2166");
  expect(advice).toMatchObject({
    sides: ["left"],
    pack: demoPack.name,
    edition: demoPack.edition,
    part: {
      name: "Damped rod stop",
      partNumber: "HL-2166",
      spacerMm: 0,
      heightMm: stop?.freeHeight.values[0],
      stopRateClass: 100,
      change: "stop",
      verdict: "ok",
    },
  });
  expect(Date.parse(advice?.at ?? "")).toBeGreaterThan(began - 1);
  await new Promise((settled) => setTimeout(settled, 100));
  expect(check.count()).toEqual({ answers: 1, prescriptions: 1 });
  screen.getByText("Force, impact and stiffness");
});

it("another answer comes beside the one before; a note asks anew and adds none", async () => {
  const record = demoRecord("damper-shaft");
  const check = open(storedFromRecord(record));
  await waitFor(() => expect(check.advised()).toHaveLength(1), patience);
  const [first] = check.advised();
  // With next to no travel left, nothing is prescribed.
  const limit = { kind: "tyre", at: "wheel", reading: { values: [8], tol: 1 } } as const;
  const corners = record.corners.map((corner) => ({ ...corner, limits: [limit] }));
  check.change((now) =>
    changeRecord(storedFromRecord({ ...record, corners }), (whole) => ({
      ...whole,
      advised: now.record.advised ?? [],
    })),
  );
  await waitFor(() => expect(check.advised()).toHaveLength(2), patience);
  const [, second] = check.advised();
  expect(check.advised()[0]).toBe(first);
  expect(second).not.toHaveProperty("part");
  const { prescriptions } = check.count();
  check.change((now) => changeRecord(now, (whole) => ({ ...whole, notes: "rolled twice" })));
  await waitFor(() => expect(check.count().prescriptions).toBe(prescriptions + 1), patience);
  await waitFor(() => expect(document.querySelector(".prescription")).toBeNull(), patience);
  await waitFor(() => expect(document.querySelector(".prescription")).not.toBeNull(), patience);
  await new Promise((settled) => setTimeout(settled, 200));
  expect(check.advised()).toEqual([first, second]);
});
