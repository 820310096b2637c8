import { useEffect, useState } from "preact/hooks";
import { changeProgress, type StoredCheck } from "../../records/check/storedCheck.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { cautionsOf } from "../guide/cautions.ts";
import { standingSteps } from "../guide/standing.ts";
import type { Change } from "../guide/stepProps.ts";
import { cautionLevel, type Step } from "../guide/steps.ts";
import { Button } from "../parts/Button.tsx";
import { readEnd } from "./ReadThrough.tsx";

interface ActionProps {
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly step: Step;
  readonly onNext: () => void;
  readonly onPass: () => void;
}

/** The way on: one main button, and a text link beside it where the step can be left open. */
export function StepActions(props: ActionProps) {
  const { step, onNext } = props;
  if (step.state !== "done" && step.id === "cautions") return <CautionsAction {...props} />;
  if (step.state !== "done" && step.id === "standing") return <StandingAction {...props} />;
  if (step.state === "done" && !step.unreadable) {
    return (
      <Button look="main" onClick={onNext}>
        {messages.next}
      </Button>
    );
  }
  return <OpenAction key={step.id} {...props} />;
}

/** A step that is not filled in yet: the main button says what it waits for. */
function OpenAction({ step, onPass }: ActionProps) {
  const [told, setTold] = useState(false);
  return (
    <>
      {told && (
        <p class="small action-said" role="status">
          {step.unreadable ? messages.whatIsTypedCant : messages.somethingIsStillOpen}
        </p>
      )}
      <Button look="link" onClick={onPass}>
        {step.unreadable
          ? messages.continueFixLater
          : step.needed
            ? messages.skipForNow
            : messages.skip}
      </Button>
      <Button
        look="main"
        waiting
        onClick={() => {
          setTold(true);
          firstEmptyNumber()?.focus();
        }}
      >
        {messages.next}
      </Button>
    </>
  );
}

function firstEmptyNumber(): HTMLInputElement | undefined {
  return [...document.querySelectorAll<HTMLInputElement>("main input[data-number]")].find(
    (input) => input.value === "" && input.closest("details:not([open])") === null,
  );
}

function CautionsAction({ stored, change, onNext }: ActionProps) {
  const level = cautionLevel(stored);
  return (
    <AcknowledgeButton
      key={level}
      words={messages.iveReadAll({ cautionsOf: cautionsOf(level).length })}
      onAcknowledge={() => {
        change((current) => changeProgress(current, { cautionsFor: cautionLevel(current) }));
        onNext();
      }}
    />
  );
}

function StandingAction({ change, onNext, onPass }: ActionProps) {
  return (
    <>
      <Button look="link" onClick={onPass}>
        {messages.skip}
      </Button>
      <AcknowledgeButton
        words={messages.itStandsLikeThis}
        onAcknowledge={() => {
          change((current) =>
            changeProgress(current, { stood: standingSteps.map(({ id }) => id) }),
          );
          onNext();
        }}
      />
    </>
  );
}

/** A second tap on "Read on" says yes to nothing. */
const readingMs = 500;

/** Says yes to what is read above it; until its end has been in sight it leads on there. */
function AcknowledgeButton({ words, onAcknowledge }: { words: string; onAcknowledge: () => void }) {
  const [seen, setSeen] = useState(typeof IntersectionObserver === "undefined");
  useEffect(() => {
    const end = document.querySelector(`[${readEnd}]`);
    if (seen || !end) return;
    const bar = document.querySelector<HTMLElement>(".action-bar")?.offsetHeight ?? 0;
    let reading: ReturnType<typeof setTimeout> | undefined;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) {
          reading = setTimeout(() => setSeen(true), readingMs);
        }
      },
      { threshold: 0.9, rootMargin: `0px 0px -${bar}px 0px` },
    );
    observer.observe(end);
    return () => {
      observer.disconnect();
      clearTimeout(reading);
    };
  }, [seen]);
  return (
    <Button
      look="main"
      onClick={() => (seen ? onAcknowledge() : window.scrollBy({ top: 0.7 * window.innerHeight }))}
    >
      {seen ? words : messages.readOn}
    </Button>
  );
}
