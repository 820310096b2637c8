import { useMemo } from "preact/hooks";
import type { Fitment, LimitKind, Side } from "../../physics/fitment.ts";
import {
  type ComparedContact,
  type ComparedCorner,
  compareFullTravel,
  hardContacts,
  likeliest,
  likeliestSentence,
  type MetPart,
  suspectName,
} from "../../physics/fullTravel/index.ts";
import type { Completion } from "../../records/check/completeRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import {
  contactsFound,
  type FullTravelRecord,
  fullTravelCheckOf,
} from "../../records/check/fullTravel.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { type LengthUnit, plainDecimal } from "../../records/entry/units.ts";
import { addLimit, setEntry } from "../../records/filling/changes.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/fullTravel.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import type { Change } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { partNames } from "./fullTravelWords.ts";

interface Props {
  readonly complete: Completion;
  readonly found: FullTravelRecord;
  readonly change: Change;
  readonly unit: LengthUnit;
  readonly go: (step: string) => void;
}

/** What was found by hand beside what was computed, contact by contact. */
export function Comparison({ complete, found, change, unit, go }: Props) {
  const fitment = useMemo(() => (complete.ok ? fitmentOf(complete.value) : null), [complete]);
  const compared = useMemo(
    () => fitment && compareFullTravel(fitment, fullTravelCheckOf(found)),
    [fitment, found],
  );
  if (contactsFound(found) === 0) {
    return <p class="soft">{messages.writeDownContactTo}</p>;
  }
  return (
    <section class="stack" aria-labelledby="full-travel-compared">
      <h2 id="full-travel-compared">{messages.byHandAndComputed}</h2>
      {!compared && <p>{messages.checkIsNotComplete}</p>}
      {compared && !compared.ok && (
        <Notice tone="unsure" live>
          <p>{sentenceText(compared.fault.sentence, unit)}</p>
        </Notice>
      )}
      {fitment && compared?.ok && (
        <div class="full-travel-sides">
          {compared.value.map((corner) => (
            <ComparedSide
              key={corner.side}
              corner={corner}
              fitment={fitment}
              unit={unit}
              go={go}
              count={(contact) =>
                change((current) => withLimit(current, corner.side, contact, unit))
              }
            />
          ))}
        </div>
      )}
      <p class="small soft">{messages.andRangesAt95}</p>
    </section>
  );
}

/** A contact that the answer does not know of yet, as a hard limit measured at the wheel. */
function withLimit(
  stored: StoredCheck,
  side: Side,
  { part, measuredMm, measuredHalfMm }: ComparedContact,
  unit: LengthUnit,
): StoredCheck {
  const corner = stored.record.corners.find((each) => each.side === side);
  const kind: LimitKind = part === "hose" || part === "stop" || part === "block" ? "other" : part;
  const added = addLimit(stored, side, { kind, at: "wheel" });
  // A rectangular ± with the same standard uncertainty: √3/1.96 of the 95 % half-width.
  const tol = (measuredHalfMm * Math.sqrt(3)) / 1.96;
  const inUnit = (mm: number) => `${plainDecimal(Number(mm.toFixed(2)))} mm`;
  return setEntry(added, `${side}.limits.${corner?.limits.length ?? 0}`, {
    texts: [inUnit(measuredMm)],
    unit,
    tol: inUnit(tol),
  });
}

/** Where a suspect is measured: a step of the check; null for the hand check's own, which is here. */
function stepOf(id: string): string | null {
  return id.startsWith("fullTravel.") ? null : id;
}

function ComparedSide({
  corner,
  fitment,
  unit,
  go,
  count,
}: {
  corner: ComparedCorner;
  fitment: Fitment;
  unit: LengthUnit;
  go: (step: string) => void;
  count: (contact: ComparedContact) => void;
}) {
  const likely = likeliestSentence(fitment, corner);
  const hard = hardContacts(corner);
  const suspects = likeliest(corner).flatMap(({ id }) => {
    const step = stepOf(id);
    return step ? [{ id, step }] : [];
  });
  return (
    <section class="card" aria-label={corner.side === "left" ? messages.left : messages.right}>
      <h3>{corner.side === "left" ? messages.left : messages.right}</h3>
      {hard.map(({ state, sentence }) => {
        const text = sentenceText(sentence, unit);
        return (
          <Notice key={text} tone={state} live>
            <p>{text}</p>
          </Notice>
        );
      })}
      <ul class="full-travel-compared">
        {corner.contacts.map((contact) => (
          <ContactLine key={contact.part} contact={contact} unit={unit} count={count} />
        ))}
      </ul>
      {likely && (
        <Notice tone="unsure" live>
          <p>{sentenceText(likely, unit)}</p>
          {suspects.length > 0 && (
            <div class="row">
              {suspects.map(({ id, step }) => (
                <Button key={id} icon="forward" onClick={() => go(step)}>
                  {messages.to({ suspectName: said(suspectName(fitment, id)) })}
                </Button>
              ))}
            </div>
          )}
        </Notice>
      )}
      {corner.agrees && (
        <Notice tone="ok">
          <p>{messages.whatWasFoundBy}</p>
        </Notice>
      )}
    </section>
  );
}

function ContactLine({
  contact,
  unit,
  count,
}: {
  contact: ComparedContact;
  unit: LengthUnit;
  count: (contact: ComparedContact) => void;
}) {
  const { part, measuredMm, measuredHalfMm, computed } = contact;
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const signed = (value: number) => `${value < 0 ? "−" : "+"}${length(Math.abs(value))}`;
  return (
    <li data-compared={part}>
      <p>
        <strong>{partNames[part]}</strong>
      </p>
      <dl class="full-travel-figures">
        <dt>{messages.byHand}</dt>
        <dd>
          {length(measuredMm)} ± {length(measuredHalfMm)}
        </dd>
        {computed && (
          <>
            <dt>{messages.computed}</dt>
            <dd>
              {messages.to2({
                travelMm: length(computed.travelMm),
                interval: length(computed.interval[0]),
                interval2: length(computed.interval[1]),
              })}
            </dd>
            <dt>{messages.difference}</dt>
            <dd>
              {messages.marginOfError({
                signed: signed(computed.differenceMm),
                doubtMm: length(computed.doubtMm),
              })}
            </dd>
          </>
        )}
      </dl>
      {computed ? (
        <p class={computed.agrees ? "tone-ok" : "tone-unsure"}>
          <StateMark state={computed.agrees ? "ok" : "unsure"} size={20} label="" />{" "}
          {computed.agrees ? messages.agrees : messages.beyondMarginOfError}
        </p>
      ) : (
        <NotInCheck part={part} count={() => count(contact)} />
      )}
    </li>
  );
}

function NotInCheck({ part, count }: { part: MetPart; count: () => void }) {
  if (part === "stop" || part === "block") return <p class="small">{messages.byReadingsItIs}</p>;
  return (
    <>
      <p class="small">{messages.notAmongClearancesOf}</p>
      <Button onClick={count}>{messages.countItInAnswer}</Button>
    </>
  );
}
