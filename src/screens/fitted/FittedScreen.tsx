import { useCallback, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { spacer } from "../../physics/sentence.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import {
  type FittedField,
  fittedPhotos,
  fittedText,
  odometerOf,
  spacerOf,
  withFitted,
  withoutFitted,
} from "../../records/filling/fitted.ts";
import { stopOfPart } from "../../records/pack/packCandidates.ts";
import type { FoundPart } from "../../records/pack/partCode.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { stopTitle } from "../../records/pack/stopTitle.ts";
import { adviceWords } from "../../records/review/adviceWords.ts";
import { fittedAgainst, otherwiseText } from "../../records/review/partTrace.ts";
import { instantOfDay } from "../../records/text/moment.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import type { KeepState } from "../../storage/keeper.ts";
import * as messages from "../../words/compiled/screens/fitted.ts";
import { CheckHead } from "../check/CheckHead.tsx";
import { PhotoField } from "../check/photo/PhotoField.tsx";
import { NotSaved, SavedLine } from "../check/SavedLine.tsx";
import { PartEntry } from "../choosing/PartEntry.tsx";
import { filled } from "../filled.ts";
import type { Change } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { measurerNow, type Preferences } from "../preferences.ts";
import { useReferencePack } from "../referencePack.ts";

export interface FittedScreenProps {
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
  readonly kept: KeepState;
  readonly tryAgain: () => void;
  /** A new check after the change; a fault where it could not be kept. */
  readonly onAgain: () => Promise<Fault | null>;
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}

/** What was put in after the check: the very part, its spacer, by whom, when, at how many miles. */
export function FittedScreen({
  stored,
  change,
  preferences,
  kept,
  tryAgain,
  onAgain,
}: FittedScreenProps) {
  const heading = useHeadingFocus("fitted");
  const pack = useReferencePack();
  const unit = preferences.length;
  const [fault, setFault] = useState<Fault | null>(null);
  const [making, setMaking] = useState(false);
  const { fitted, stop: checked, advised } = stored.record;
  const advice = advised?.at(-1);
  const text = (field: FittedField) => fittedText(stored, field);
  const put = (fields: { readonly [Field in FittedField]?: string }) =>
    change((current) => withFitted(current, fields, unit, inModelUnits));
  const take = useCallback(
    ({ stop, revision, batch }: FoundPart) =>
      change((current) =>
        withFitted(
          current,
          {
            partNumber: stop.partNumber ?? stop.name,
            revision: revision ?? stop.revision ?? "",
            batch: batch ?? "",
            ...(fittedText(current, "by") === "" && {
              by: measurerNow() ?? current.record.author?.name ?? "",
            }),
            ...(fittedText(current, "day") === "" && { day: today() }),
          },
          unit,
          inModelUnits,
        ),
      ),
    [change, unit],
  );
  const inPack = fitted && stopOfPart(pack, fitted);
  const otherwise = otherwiseText(fittedAgainst(fitted ?? null, null, advice, checked ?? {}));
  const spacerWrong = spacerOf(text("spacer"), unit) === null;
  const odometerWrong = odometerOf(text("odometer"), unit) === null;
  const dayWrong = instantOfDay(text("day")) === null;
  const wrong = (is: boolean, message: string) =>
    is ? { tone: "no" as const, message } : undefined;
  return (
    <Screen
      top={
        <CheckHead stored={stored}>
          <SavedLine kept={kept} />
        </CheckHead>
      }
      actions={
        <Button
          look="main"
          icon="forward"
          disabled={fitted === undefined || making}
          onClick={async () => {
            setMaking(true);
            setFault(await onAgain());
            setMaking(false);
          }}
        >
          {messages.checkAgainAfterChange}
        </Button>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.whatWasFitted}
      </h1>
      <NotSaved kept={kept} stored={stored} tryAgain={tryAgain} />
      <p>{messages.scanBagOfWhat}</p>
      {advice && (
        <p>
          {filled(messages.advised, {
            advice: <strong>{sentenceText(adviceWords(advice), unit)}</strong>,
          })}
        </p>
      )}
      <section class="card" aria-labelledby="fitted-part">
        <h2 id="fitted-part">{messages.part}</h2>
        <PartEntry pack={pack} onFound={take} />
        {text("partNumber") !== "" && (
          <p>
            {filled(messages.fitted, {
              inPack: <strong>{inPack ? `${said(stopTitle(inPack))}, ` : ""}</strong>,
              part: said(
                partText({
                  partNumber: text("partNumber"),
                  revision: text("revision"),
                  batch: text("batch"),
                }),
              ),
            })}
          </p>
        )}
        {otherwise && (
          <Notice tone="care">
            <p>{messages.whatWasFittedIs({ otherwise: said(otherwise) })}</p>
          </Notice>
        )}
        <TextField
          label={messages.notInPartsLibrary}
          value={inPack ? "" : text("partNumber")}
          maxLength={200}
          onInput={(partNumber) => put({ partNumber, revision: "", batch: text("batch") })}
        />
        <TextField
          label={messages.batch}
          hint={messages.asOnBagOr}
          value={text("batch")}
          maxLength={200}
          onInput={(batch) => put({ batch })}
        />
      </section>
      <section class="card" aria-labelledby="fitted-how">
        <h2 id="fitted-how">{messages.spacerDateWho}</h2>
        <TextField
          label={messages.spacerIfOneWas}
          keys={unit === "in" ? "text" : "decimal"}
          unit={unit}
          value={text("spacer")}
          onInput={(spacer) => put({ spacer })}
          {...wrong(spacerWrong, messages.heightOf0To)}
        />
        <TextField
          label={messages.whoFittedIt}
          value={text("by")}
          maxLength={200}
          capitals
          onInput={(by) => put({ by })}
        />
        <TextField
          label={messages.date}
          hint={messages.yearMonthDay2026}
          value={text("day")}
          maxLength={10}
          onInput={(day) => put({ day })}
          {...wrong(dayWrong, messages.dayThatWasTyped)}
        />
        <TextField
          label={messages.odometerIfYouLike}
          keys="decimal"
          unit={unit === "in" ? "mi" : "km"}
          value={text("odometer")}
          onInput={(odometer) => put({ odometer })}
          {...wrong(odometerWrong, messages.wholeMilesOrKilometers)}
        />
      </section>
      {fitted ? (
        <section class="card" aria-labelledby="fitted-photos">
          <h2 id="fitted-photos">{messages.photos}</h2>
          <p class="small soft">{messages.photoKeepsTimeYour}</p>
          <PhotoField id={fittedPhotos} of={messages.fittedPart} stored={stored} change={change} />
          <div class="row">
            <Button icon="bin" look="danger" onClick={() => change(withoutFitted)}>
              {messages.nothingWasFitted}
            </Button>
          </div>
        </section>
      ) : (
        <p class="small soft">
          {text("partNumber") === "" ? messages.oncePartIsTold : messages.somethingAboveCantBe}
        </p>
      )}
      {fitted && fitted.spacerMm > 0 && (
        <p class="small">
          {messages.withSpacerOf({ spacerMm: quantityText(spacer(fitted.spacerMm), unit) })}
        </p>
      )}
      {fault && <FaultNotice fault={fault} />}
      <p class="small soft">{messages.checkAgainStartsNew}</p>
    </Screen>
  );
}
