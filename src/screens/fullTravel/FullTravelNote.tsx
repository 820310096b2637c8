import { useMemo } from "preact/hooks";
import type { Fitment } from "../../physics/fitment.ts";
import {
  compareFullTravel,
  fullTravelLine,
  hardContacts,
  likeliestSentence,
} from "../../physics/fullTravel/index.ts";
import type { PartialCheckRecord } from "../../records/check/checkRecord.ts";
import { contactsFound, fullTravelCheckOf } from "../../records/check/fullTravel.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/fullTravel.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Notice } from "../parts/Notice.tsx";

export interface FullTravelNoteProps {
  readonly record: Pick<PartialCheckRecord, "fullTravel">;
  readonly fitment: Fitment;
  readonly unit: LengthUnit;
}

export interface PlacedNoteProps extends FullTravelNoteProps {
  /** Over the advice stands what speaks against the answer alone; the rest comes after it. */
  readonly place: "overAdvice" | "afterAdvice";
}

function useCompared(record: FullTravelNoteProps["record"], fitment: Fitment) {
  return useMemo(() => {
    const found = record.fullTravel;
    if (found === undefined || contactsFound(found) === 0) return null;
    return compareFullTravel(fitment, fullTravelCheckOf(found));
  }, [record, fitment]);
}

/** What the check by hand says to an answer. Nothing where there was none. */
export function FullTravelNote({ record, fitment, unit, place }: PlacedNoteProps) {
  const compared = useCompared(record, fitment);
  if (compared === null) return null;
  if (!compared.ok) {
    return place === "afterAdvice" ? null : (
      <Notice tone="unsure">
        <p>
          {messages.fullTravelCheckCant({ sentence: sentenceText(compared.fault.sentence, unit) })}
        </p>
      </Notice>
    );
  }
  const corners = compared.value;
  const hard = corners.flatMap(hardContacts);
  const likely = corners.flatMap((corner) => likeliestSentence(fitment, corner) ?? []);
  const apart = corners.some(({ agrees }) => agrees === false);
  const forbids = hard.some(({ state }) => state === "no");
  if ((forbids || apart) !== (place === "overAdvice")) return null;
  // What is likeliest wrong is told once, with what it would have to be.
  const line = fullTravelLine(likely.length > 0 ? null : fitment, corners);
  const found = hard.map(({ sentence }) => {
    const text = sentenceText(sentence, unit);
    return <p key={text}>{text}</p>;
  });
  return (
    <Notice tone={forbids ? "no" : apart || hard.length > 0 ? "unsure" : "info"}>
      <p>
        <strong>{messages.fullTravelCheck}</strong> {sentenceText(line, unit)}
        {apart && messages.untilThatIsSettled}
      </p>
      {forbids || apart
        ? found
        : hard.length > 0 && <Disclosure summary={messages.whatWasFound}>{found}</Disclosure>}
      {likely.length > 0 && <p>{sentenceText(likely, unit)}</p>}
    </Notice>
  );
}

/** One line at the desk. Nothing where there was no check by hand. */
export function FullTravelLine({ record, fitment, unit }: FullTravelNoteProps) {
  const compared = useCompared(record, fitment);
  if (compared === null) return null;
  return (
    <p data-full-travel={compared.ok ? "compared" : "fault"}>
      <strong>{messages.fullTravelCheck}</strong>{" "}
      {sentenceText(
        compared.ok ? fullTravelLine(fitment, compared.value) : compared.fault.sentence,
        unit,
      )}
    </p>
  );
}
