import { cleanup, render, screen, waitFor } from "@testing-library/preact";
import { afterEach, expect, it, vi } from "vitest";
import type { Fitment } from "../../../src/physics/fitment.ts";
import { useAssessment } from "../../../src/screens/assessment/useAssessment.ts";
import { useAssessor } from "../../../src/screens/assessment/useAssessor.ts";
import { demoFitment } from "./demoChecks.ts";
import { DeskWorker } from "./dispatcherAssessor.ts";

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

function Verdict({ name, fitment }: { name: string; fitment: Fitment }) {
  const assessed = useAssessment(useAssessor(), fitment, "answer");
  return (
    <p>
      {name}: {assessed.state === "complete" ? assessed.assessment.verdict : assessed.state}
    </p>
  );
}

it("serves two screens at once from one worker, neither overtaking the other", async () => {
  let started = 0;
  vi.stubGlobal(
    "Worker",
    class extends DeskWorker {
      constructor() {
        super();
        started += 1;
      }
    },
  );
  const [fits, towing] = [demoFitment("arm-fits"), demoFitment("axle-towing-early")];
  const both = (
    <>
      <Verdict name="Marlow" fitment={fits} />
      <Verdict name="Brant" fitment={towing} />
    </>
  );
  const first = render(both);
  await waitFor(() => screen.getByText("Marlow: ok"), { timeout: 15_000 });
  await waitFor(() => screen.getByText("Brant: care"), { timeout: 15_000 });
  first.unmount();
  render(both);
  await waitFor(() => screen.getByText("Marlow: ok"), { timeout: 15_000 });
  expect(started).toBe(1);
}, 40_000);
