import "fake-indexeddb/auto";
import { cleanup, fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { changeRecord } from "../../../src/records/check/storedCheck.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { QuickCheckAnswer } from "../../../src/records/quickCheck/quickCheckAnswer.ts";
import { quickCheckRecord } from "../../../src/records/quickCheck/quickCheckRecord.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { QuickCheckAnswerView } from "../../../src/screens/quickCheck/QuickCheckAnswerView.tsx";
import QuickCheckPlace from "../../../src/screens/quickCheck/QuickCheckPlace.tsx";
import {
  keepQuickCheckDraft,
  newDraft,
  openOf,
  type QuickCheckDraft,
  questionOf,
  readQuickCheckDraft,
} from "../../../src/screens/quickCheck/quickCheckDraft.ts";
import { readQuickCheckRoute } from "../../../src/screens/quickCheck/quickCheckRoutes.ts";
import { saveQuickCheck } from "../../../src/screens/quickCheck/saveQuickCheck.ts";
import { forgetPackInMemory } from "../../../src/screens/referencePack.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";
import { freshPhone, openStore } from "../startApp.tsx";

beforeEach(() => {
  freshPhone();
  forgetPackInMemory();
});
afterEach(cleanup);

const mm = (text: string) => ({ texts: [text], unit: "mm" as const, tol: "" });

function filled(): QuickCheckDraft {
  return {
    ...newDraft(),
    platformId: "marlow-utility-front",
    payload: "tools",
    entries: {
      rideHeight: mm("575"),
      gap: { texts: ["1 3/4"], unit: "in", tol: "" },
      stopHeight: mm("42"),
      clearance: mm("150"),
    },
  };
}

describe("what is typed", () => {
  it("is a question once vehicle and payload are said and every reading can be read", () => {
    expect(openOf(newDraft())).toEqual(["platform", "payload"]);
    expect(openOf(filled())).toEqual([]);
    const wrong = { ...filled(), entries: { gap: mm("4o") } };
    expect(openOf(wrong)).toEqual(["gap"]);
    expect(questionOf(wrong)?.ok).toBe(false);
    const question = questionOf(filled());
    // 1 3/4 in × 25.4 mm/in (NIST SP 811)
    expect(question?.ok && question.value.readings.gap?.values[0]).toBeCloseTo(44.45, 9);
  });

  it("asks five things at most", () => {
    const question = questionOf(filled());
    if (!question?.ok) throw new Error("no question");
    expect(Object.keys(question.value.readings)).toHaveLength(5);
  });

  it("is there again after a reload", () => {
    keepQuickCheckDraft(filled());
    expect(readQuickCheckDraft().entries).toEqual(filled().entries);
    localStorage.setItem("stopfit.taller", "{");
    expect(openOf(readQuickCheckDraft())).toEqual(["platform", "payload"]);
  });
});

describe("while the questions are being fetched", () => {
  it("the caution stands there to be read, and stays as they come", async () => {
    const { QuickCheckPlace: Place } = await import(
      "../../../src/screens/quickCheck/quickCheckScreen.tsx"
    );
    const opened = { store: await openStore(), fault: null, tryAgain: () => undefined };
    render(<Place opened={opened} stage="questions" unit="mm" />);
    const caution = /Never reach under a vehicle held by a jack alone/;
    expect(screen.getByRole("heading", { name: "Do I need a taller stop?" })).toBeTruthy();
    expect(screen.getByText(caution)).toBeTruthy();
    expect(screen.queryByText("Which vehicle and axle?")).toBeNull();
    await screen.findByText("Which vehicle and axle?");
    expect(screen.getAllByText(caution)).toHaveLength(1);
  });
});

describe("the check that is made", () => {
  const made = () => {
    const question = questionOf(filled());
    const outcome = question?.ok ? quickCheckRecord(demoPack, question.value, inModelUnits) : null;
    if (!outcome?.ok) throw new Error("no record");
    return outcome.value.record;
  };

  it("is complete, and can be assessed", async () => {
    const record = made();
    const { stored } = await saveQuickCheck(await openStore(), record, undefined, "mm");
    const completion = completeRecord(stored);
    expect(completion.ok && assessStatic(fitmentOf(completion.value)).ok).toBe(true);
  });

  it("is one for one set of readings, and its own once it was carried on", async () => {
    const store = await openStore();
    const record = made();
    const first = await saveQuickCheck(store, record, undefined, "mm");
    const again = await saveQuickCheck(store, record, first.stored.updatedAt, "mm");
    expect(again.stored.id).toBe(first.stored.id);
    const wider = { ...record, vehicle: { ...record.vehicle, liftMm: 40 } };
    const changed = await saveQuickCheck(store, wider, first.stored.updatedAt, "mm");
    expect(changed.stored.id).toBe(first.stored.id);
    const carriedOn = await store.put(
      changeRecord(changed.stored, (before) => ({ ...before, notes: "measured again" })),
    );
    expect(carriedOn.ok).toBe(true);
    const beside = await saveQuickCheck(store, record, changed.stored.updatedAt, "mm");
    expect(beside.stored.id).not.toBe(first.stored.id);
    const kept = await store.get(first.stored.id);
    expect(kept.ok && kept.value?.record.notes).toBe("measured again");
  });
});

describe("the answer's words", () => {
  const answer: QuickCheckAnswer = {
    answer: "yes",
    tallerMm: 31.4,
    rangeMm: [27.6, 35.3],
    spacerMm: null,
    spacerRangeMm: null,
    heightFits: true,
    why: [["Because."]],
    settle: null,
    cautionsFor: "level",
    assumed: [],
    measured: ["rideHeight", "gap"],
  };
  const show = (part: Partial<QuickCheckAnswer>) => {
    cleanup();
    render(
      <QuickCheckAnswerView
        answer={{ ...answer, ...part }}
        unit="mm"
        onReading={() => undefined}
      />,
    );
    return document.querySelector(".verdict")?.className;
  };

  it("tell yes, no and can't tell by word and shape, and never soften a height that does not fit", () => {
    expect(show({})).toContain("verdict-care");
    screen.getByText("Yes, a taller stop");
    screen.getByText("95 %: 28 mm to 35 mm");
    expect(show({ heightFits: false })).toContain("verdict-no");
    screen.getByText("Taller alone won't do");
    // What does not fit is nothing to add.
    expect(screen.queryByText(/Height to add/)).toBeNull();
    expect(show({ answer: "no", tallerMm: -4, rangeMm: [-6, -2] })).toContain("verdict-ok");
    screen.getByText("Height to spare, with a stop of the same shape");
    screen.getByText("95 %: 2 mm to 6 mm");
    const settle = { reading: "left.gap", sentence: ["Re-measure the gap."] };
    expect(show({ answer: "cantTell", settle })).toContain("verdict-unsure");
    screen.getByText("Re-measure the gap.");
  });

  it("always come with cautions and with what the result is not", () => {
    for (const each of ["yes", "no", "cantTell"] as const) {
      show({ answer: each });
      screen.getByText("Before you go under the vehicle");
      screen.getByText("This is a screening check, not a certification.");
    }
  });
});

it("five readings give an answer on the screen, and the check behind it is kept", async () => {
  keepQuickCheckDraft(filled());
  const store = await openStore();
  render(
    <QuickCheckPlace
      opened={{ store, fault: null, tryAgain: () => undefined }}
      stage="answer"
      unit="mm"
      startAssessor={startDeskAssessor}
    />,
  );
  await screen.findByText("Yes, a taller stop", {}, { timeout: 30_000 });
  await screen.findByRole("link", { name: "Carry on as a full check" });
  await waitFor(async () => {
    const list = await store.list();
    expect(list.ok && list.value).toHaveLength(1);
  });
}, 60_000);

it("a reading that is not believed: can't tell, with what was measured told under the heading", async () => {
  const typed = filled();
  keepQuickCheckDraft({ ...typed, entries: { ...typed.entries, rideHeight: mm("890") } });
  render(
    <QuickCheckPlace
      opened={{ store: await openStore(), fault: null, tryAgain: () => undefined }}
      stage="answer"
      unit="mm"
      startAssessor={startDeskAssessor}
    />,
  );
  await screen.findByText("Can't tell yet");
  screen.getByText(/^Measured by you: 5 of 5; from the library: geometry and weights\./);
  screen.getByText(/ground to fender/);
  expect(document.body.textContent).not.toMatch(/370|890/);
});

it("a question with something open is asked on, not answered", async () => {
  const store = await openStore();
  render(
    <QuickCheckPlace
      opened={{ store, fault: null, tryAgain: () => undefined }}
      stage="answer"
      unit="in"
      startAssessor={startDeskAssessor}
    />,
  );
  await screen.findByRole("heading", { name: "Do I need a taller stop?" });
  expect((screen.getByRole("button", { name: "Answer" }) as HTMLButtonElement).disabled).toBe(true);
  fireEvent.change(screen.getByLabelText("Which vehicle and axle?"), {
    target: { value: "tern-hatch-front" },
  });
  await screen.findByLabelText("Gap between stop and pad");
});

it("addresses", () => {
  expect(readQuickCheckRoute(["taller"])).toEqual({ screen: "quickCheck", stage: "questions" });
  expect(readQuickCheckRoute(["taller", "answer"])).toEqual({
    screen: "quickCheck",
    stage: "answer",
  });
  expect(readQuickCheckRoute(["taller", "else"])).toBeNull();
});
