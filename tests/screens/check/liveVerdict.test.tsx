import { cleanup, render, screen, waitFor } from "@testing-library/preact";
import { afterEach, describe, expect, it } from "vitest";
import type { StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { LiveVerdict } from "../../../src/screens/check/liveVerdict/LiveVerdict.tsx";
import { demoRecord } from "../answer/demoChecks.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";

afterEach(cleanup);

const patience = { timeout: 20_000 };
const testTimeout = 60_000;

function withGap(stored: StoredCheck, text: string): StoredCheck {
  const entry = stored.entries["left.gap"];
  if (!entry) throw new Error("no gap");
  return setEntry(stored, "left.gap", { ...entry, texts: [text] });
}

const strip = () => document.querySelector(".live-verdict");
const seen = () => strip()?.querySelector("[aria-hidden='true']:not(svg)")?.textContent;

describe("the verdict beside a step", () => {
  it(
    "follows a reading as it is typed, and says when it is behind",
    async () => {
      const fits = storedFromRecord(demoRecord("arm-fits"));
      const view = render(<LiveVerdict stored={fits} startAssessor={startDeskAssessor} />);
      await waitFor(() => expect(seen()).toBe("With these readings: it fits"), patience);
      expect(strip()?.getAttribute("data-state")).toBe("settled");
      // A stop that stands 75 mm off is pressed only after something harder has touched.
      view.rerender(<LiveVerdict stored={withGap(fits, "75")} startAssessor={startDeskAssessor} />);
      expect(strip()?.getAttribute("data-state")).toBe("working");
      expect(seen()).toBe("With these readings: it fits");
      await waitFor(() => expect(seen()).toBe("With these readings: it doesn't fit"), patience);
      expect(strip()?.getAttribute("data-state")).toBe("settled");
      await waitFor(
        () =>
          expect(screen.getByRole("status").textContent).toBe(
            "With these readings: it doesn't fit",
          ),
        patience,
      );
    },
    testTimeout,
  );

  it(
    "is not there for a check that was never complete, and says so where a reading went missing",
    async () => {
      const fits = storedFromRecord(demoRecord("arm-fits"));
      const view = render(
        <LiveVerdict stored={withGap(fits, "abc")} startAssessor={startDeskAssessor} />,
      );
      expect(strip()).toBeNull();
      view.rerender(<LiveVerdict stored={fits} startAssessor={startDeskAssessor} />);
      await waitFor(() => expect(seen()).toBe("With these readings: it fits"), patience);
      view.rerender(
        <LiveVerdict stored={withGap(fits, "abc")} startAssessor={startDeskAssessor} />,
      );
      expect(seen()).toBe("No verdict until every reading is in");
    },
    testTimeout,
  );
});
