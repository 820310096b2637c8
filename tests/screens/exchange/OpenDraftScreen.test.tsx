import "fake-indexeddb/auto";
import { cleanup, render, screen } from "@testing-library/preact";
import { afterEach, expect, it, vi } from "vitest";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { OpenDraftScreen } from "../../../src/screens/exchange/OpenDraftScreen.tsx";
import { freshStore } from "./support.ts";

afterEach(cleanup);

it("a draft that was sent says how much is in it: what was typed and what was chosen", async () => {
  const gap = { texts: ["21"], unit: "mm", tol: "" } as const;
  const typed = setEntry(newStoredCheck("Tern"), "left.gap", gap);
  const emptied = setEntry(typed, "right.gap", { ...gap, texts: [" "] });
  const store = await freshStore();
  const entries = () => screen.getByText("Typed so far", { selector: "dt" }).nextElementSibling;
  const shown = (draft: typeof typed) =>
    render(
      <OpenDraftScreen
        draft={draft}
        store={store}
        waiting={0}
        onKept={vi.fn()}
        onLeave={vi.fn()}
      />,
    );
  shown(emptied);
  expect(entries()?.textContent).toBe("1 entry");
  cleanup();
  shown(withChoice(withChoice(emptied, "left.stand", "gap"), "left.moved", "no"));
  expect(entries()?.textContent).toBe("3 entries");
});
