import { useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { type Sentence, spacer, type Words } from "../../physics/sentence.ts";
import { dateText } from "../../records/check/checkName.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { adviceWords } from "../../records/review/adviceWords.ts";
import { csvLine } from "../../records/review/csv.ts";
import {
  againstWords,
  isUntold,
  isWanted,
  type PartWanted,
  type TracedCheck,
  tracedCheck,
  traceHeader,
  traceLine,
  wantedPart,
} from "../../records/review/partTrace.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { quantityText, withPlainSpaces } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { cellTexts } from "../../saying/tableCells.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { PartEntry } from "../choosing/PartEntry.tsx";
import { Button } from "../parts/Button.tsx";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { PrintButton } from "../parts/PrintButton.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { useReferencePack } from "../referencePack.ts";
import { makerLogo } from "../shippedBuild.ts";
import { csvFile, saveCsvFile, styleHere } from "./csvFile.ts";
import { DeskTable } from "./DeskTable.tsx";
import { deskCheckHref } from "./deskRoutes.ts";
import { eachRecord } from "./eachRecord.ts";
import type { Desk } from "./useDesk.ts";
import "../styles/paper.css";
import "./letters.css";
import { countWords, fittedWords } from "./words.ts";

export interface PartsAtDeskProps {
  readonly desk: Desk;
  readonly unit: LengthUnit;
  onLeave(): void;
}

interface Found {
  readonly wanted: PartWanted;
  readonly traced: readonly TracedCheck[];
  /** Of the part, but its revision or batch was not told. */
  readonly untold: readonly { readonly key: string; readonly words: string }[];
  /** Of how many checks. */
  readonly count: number;
}

const usualReason = messages.pleaseHaveThisPart;

/** Where a part, a revision or a batch went: every check that checked, advised or fitted it. */
export function PartsAtDesk({ desk, unit, onLeave }: PartsAtDeskProps) {
  const heading = useHeadingFocus("parts");
  const pack = useReferencePack();
  const [typed, setTyped] = useState({ partNumber: "", revision: "", batch: "" });
  const [found, setFound] = useState<Found | null>(null);
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<Fault | null>(null);
  const [reason, setReason] = useState(usualReason);
  const turn = useRef(0);
  const wanted = wantedPart(pack, typed);
  const put = (part: Partial<typeof typed>) => {
    setFound(null);
    setTyped((before) => ({ ...before, ...part }));
  };
  const look = async () => {
    if (!desk.store || !wanted) return;
    turn.current += 1;
    const mine = turn.current;
    setBusy(true);
    const traced: TracedCheck[] = [];
    const untold: { key: string; words: string }[] = [];
    const outcome = await eachRecord(
      desk.store,
      (check, decisions) => {
        const one = tracedCheck(check, decisions, pack, wanted);
        const { vehicle, axle, createdAt } = check.record;
        if (one) traced.push(one);
        else if (isUntold(check.record, decisions, pack, wanted)) {
          const words = `${vehicle.label}, ${axle}, ${dateText(createdAt)}`;
          untold.push({ key: check.key, words });
        }
      },
      () => mine !== turn.current,
    );
    if (mine !== turn.current) return;
    setBusy(false);
    setFault(outcome.ok ? null : outcome.fault);
    if (outcome.ok) setFound({ wanted, traced, untold, count: outcome.value });
  };
  return (
    <Screen
      wide
      top={
        <>
          <Button look="quiet" icon="back" label={messages.toReviewDesk} onClick={onLeave} />
          <span class="screen-name">{messages.wherePartWent}</span>
        </>
      }
      actions={
        <>
          <Button
            disabled={!found?.traced.length}
            onClick={async () => found && setFault(await saveTrace(found))}
          >
            {messages.saveTableCsv}
          </Button>
          <PrintButton
            what="letters"
            disabled={!found?.traced.length}
            label={messages.printLetters}
          />
        </>
      }
    >
      <div class="stack parts-asked">
        <h1 ref={heading} tabIndex={-1}>
          {messages.wherePartWent}
        </h1>
        <p>{messages.everyCheckHereThat}</p>
        <PartEntry
          pack={pack}
          byNumber={false}
          onFound={({ stop, revision, batch }) =>
            put({
              partNumber: stop.partNumber ?? "",
              revision: revision ?? "",
              batch: batch ?? "",
            })
          }
        />
        <TextField
          label={messages.partNumber}
          value={typed.partNumber}
          maxLength={200}
          onInput={(partNumber) => put({ partNumber })}
        />
        <TextField
          label={messages.onlyThisRevision}
          hint={messages.emptyAll}
          value={typed.revision}
          maxLength={200}
          onInput={(revision) => put({ revision })}
        />
        <TextField
          label={messages.onlyThisBatch}
          hint={messages.emptyAllBatchIs}
          value={typed.batch}
          maxLength={200}
          onInput={(batch) => put({ batch })}
        />
        <div class="row">
          <Button look="main" disabled={!wanted || busy || !desk.store} onClick={look}>
            {busy ? messages.looking : messages.lookThroughAllChecks}
          </Button>
        </div>
        {fault && (
          <Notice tone="no" live>
            <p>{inModelUnits(fault.sentence)}</p>
          </Notice>
        )}
        {found && <FoundChecks found={found} unit={unit} />}
        {found && found.traced.length > 0 && (
          <label class="field">
            <span class="field-label">{messages.whatLetterSays}</span>
            <textarea
              class="paste-text"
              rows={4}
              maxLength={2000}
              value={reason}
              onInput={(event) => setReason(event.currentTarget.value)}
            />
          </label>
        )}
      </div>
      {found && <Letters found={found} pack={pack} reason={reason} unit={unit} />}
    </Screen>
  );
}

function FoundChecks({ found, unit }: { found: Found; unit: LengthUnit }) {
  const { traced, untold, wanted, count } = found;
  const fitted = traced.filter(({ isFitted }) => isFitted).length;
  const byApp = traced.filter(({ isAdvisedByApp }) => isAdvisedByApp).length;
  const byDesk = traced.filter(({ isAdvisedByDesk }) => isAdvisedByDesk).length;
  const otherwise = traced.filter(({ against }) => against && against.otherwise.length > 0).length;
  return (
    <section class="stack-close" aria-labelledby="traced-heading">
      <h2 id="traced-heading">
        {messages.ofWord2({
          part: said(partText(wanted)),
          count: countWords(traced.length, "check"),
          count2: count,
        })}
      </h2>
      <p class="small soft" role="status">
        {messages.fittedInAdvisedBy({
          fitted,
          byApp,
          byDesk,
          noOtherwise: otherwise === 0,
          otherwise,
        })}
      </p>
      {traced.length > 0 && (
        <DeskTable
          caption={messages.checksOf({ part: said(partText(wanted)) })}
          columns={[
            messages.vehicle,
            messages.from,
            messages.advised,
            messages.fitted,
            messages.asAdvised,
          ]}
          rows={traced.map((each) => ({
            key: each.key,
            cells: [
              <>
                <a href={deskCheckHref(each.key)}>{each.vehicle}</a>, {each.axle},{" "}
                {dateText(each.createdAt)}
              </>,
              <>
                <bdi>{each.who || messages.notSaid}</bdi> <bdi>{each.contact}</bdi>
              </>,
              <AdvisedCell traced={each} unit={unit} />,
              each.fitted ? fittedWords(each.fitted, unit) : messages.notTold,
              said(againstWords(each.against)),
            ],
          }))}
        />
      )}
      {untold.length > 0 && (
        <>
          <p>{messages.ofThisPartDid({ count: countWords(untold.length, "moreCheck") })}</p>
          <ul class="plain-list">
            {untold.map(({ key, words }) => (
              <li key={key}>
                <a href={deskCheckHref(key)}>{words}</a>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** What the app said on the phone, by the record, and what a person of the desk advised: told apart. */
function AdvisedCell({
  traced: { byApp, byDesk, isChecked },
  unit,
}: {
  traced: TracedCheck;
  unit: LengthUnit;
}) {
  if (byApp.length === 0 && byDesk === null) return isChecked ? messages.oneChecked : "no";
  return (
    <>
      {byDesk && (
        <span class="advised-line">
          {messages.by2} <bdi>{byDesk.by || messages.reviewDesk2}</bdi>, {dateText(byDesk.at)}:{" "}
          <bdi>{byDesk.name}</bdi>
          {byDesk.partNumber !== undefined && ` (${said(partText(byDesk))})`}
        </span>
      )}
      {byApp.map((advice, place) => (
        <span key={place} class="advised-line">
          {place === 0 ? messages.byApp : messages.beforeThatByApp}, {dateText(advice.at)}:{" "}
          <bdi>{sentenceText(adviceWords(advice), unit)}</bdi>
        </span>
      ))}
    </>
  );
}

function saveTrace({ traced }: Found): Promise<Fault | null> {
  const style = styleHere();
  const say = (words: Words | Sentence) => withPlainSpaces(sentenceText(words, "mm"));
  const lines = [traceHeader, ...traced.map(traceLine)].map((line) =>
    csvLine(cellTexts(line, say), style),
  );
  return saveCsvFile(csvFile("parts", lines));
}

/** A page each, to those whose vehicle has the part; on paper only. */
function Letters({
  found,
  pack,
  reason,
  unit,
}: {
  found: Found;
  pack: Pack;
  reason: string;
  unit: LengthUnit;
}) {
  const { maker } = pack;
  return (
    <div class="letters">
      {found.traced.map((each) => (
        <article key={each.key} class="letter">
          {makerLogo && <img src={`./${makerLogo}`} alt="" />}
          <p>
            <strong>{maker?.name ?? pack.name}</strong>
            <br />
            {maker?.address}
            <br />
            {maker?.contact}
          </p>
          <p>{dateText(new Date().toISOString())}</p>
          <p>
            {each.who || messages.toOwner}
            <br />
            {each.contact}
          </p>
          <h2>
            {messages.axleBumpStop({
              vehicle: each.vehicle,
              axle: each.axle,
              part: said(partText(found.wanted)),
            })}
          </h2>
          <p>{letterWords(each, found.wanted, unit)}</p>
          {reason.split("\n").map((line, place) => (
            <p key={place}>{line}</p>
          ))}
          <p class="small">{messages.check({ checkId: each.checkId })}</p>
        </article>
      ))}
    </div>
  );
}

/** Why the letter comes to them: what they told, else what was advised, else what was checked. */
function letterWords(
  { isFitted, fitted, isAdvisedByDesk, byDesk, isAdvisedByApp, byApp, createdAt }: TracedCheck,
  wanted: PartWanted,
  unit: LengthUnit,
): string {
  const unknown = messages.weDoNotKnow;
  if (isFitted && fitted) {
    const onSpacer =
      fitted.spacerMm > 0
        ? messages.withSpacerOf({ spacerMm: quantityText(spacer(fitted.spacerMm), unit) })
        : "";
    return messages.youToldUsThat({ at: dateText(fitted.at), onSpacer, by: fitted.by });
  }
  if (isAdvisedByDesk && byDesk) {
    return messages.weAdvisedThisPart({ at: dateText(byDesk.at), unknown });
  }
  const advice = isAdvisedByApp && byApp.find(({ part }) => part && isWanted(part, wanted));
  if (advice) {
    return messages.byWhatYouSent({ at: dateText(advice.at), unknown });
  }
  return messages.thisPartWasChecked({ createdAt: dateText(createdAt) });
}
