import { useCallback, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { inModelUnits, spacer } from "../../physics/sentence.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { quantityText } from "../../records/entry/quantityText.ts";
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
import type { KeepState } from "../../storage/keeper.ts";
import { answerHref } from "../addresses.ts";
import { PhotoField } from "../check/photo/PhotoField.tsx";
import { NotSaved, SavedLine } from "../check/SavedLine.tsx";
import { PartEntry } from "../choosing/PartEntry.tsx";
import type { Change } from "../guide/stepProps.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
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
    change((current) => withFitted(current, fields, unit));
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
        <>
          <ButtonLink look="quiet" href={answerHref(stored.id)} icon="back" label="To the answer" />
          <span class="screen-name">{stored.name || stored.record.vehicle?.label || "Check"}</span>
          <SavedLine kept={kept} />
        </>
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
          Check again after the change
        </Button>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        What was fitted
      </h1>
      <NotSaved kept={kept} stored={stored} tryAgain={tryAgain} />
      <p>
        Scan the bag of what was really put in, or type its part number. One entry holds for both
        sides.
      </p>
      {advice && (
        <p>
          Advised: <strong>{adviceWords(advice, unit)}</strong>
        </p>
      )}
      <section class="card" aria-labelledby="fitted-part">
        <h2 id="fitted-part">Part</h2>
        <PartEntry pack={pack} onFound={take} />
        {text("partNumber") !== "" && (
          <p>
            Fitted: <strong>{inPack ? `${stopTitle(inPack)}, ` : ""}</strong>
            {partText({
              partNumber: text("partNumber"),
              revision: text("revision"),
              batch: text("batch"),
            })}
          </p>
        )}
        {otherwise && (
          <Notice tone="care">
            <p>What was fitted is {otherwise}. Check again after the change.</p>
          </Notice>
        )}
        <TextField
          label="Not in the parts library? Its number as printed"
          value={inPack ? "" : text("partNumber")}
          maxLength={200}
          onInput={(partNumber) => put({ partNumber, revision: "", batch: text("batch") })}
        />
        <TextField
          label="Batch"
          hint="As on the bag or on the part."
          value={text("batch")}
          maxLength={200}
          onInput={(batch) => put({ batch })}
        />
      </section>
      <section class="card" aria-labelledby="fitted-how">
        <h2 id="fitted-how">Spacer, date, who</h2>
        <TextField
          label="Spacer (if one was fitted)"
          keys={unit === "in" ? "text" : "decimal"}
          unit={unit}
          value={text("spacer")}
          onInput={(spacer) => put({ spacer })}
          {...wrong(spacerWrong, "A height of 0 to 300 mm, such as 10 or 3/8 in.")}
        />
        <TextField
          label="Who fitted it"
          value={text("by")}
          maxLength={200}
          capitals
          onInput={(by) => put({ by })}
        />
        <TextField
          label="Date"
          hint="Year, month, day: 2026-05-31."
          value={text("day")}
          maxLength={10}
          onInput={(day) => put({ day })}
          {...wrong(dayWrong, "A day that was, typed as 2026-05-31.")}
        />
        <TextField
          label="Odometer (if you like)"
          keys="decimal"
          unit={unit === "in" ? "mi" : "km"}
          value={text("odometer")}
          onInput={(odometer) => put({ odometer })}
          {...wrong(odometerWrong, "Whole miles or kilometers, such as 51 200 mi.")}
        />
      </section>
      {fitted ? (
        <section class="card" aria-labelledby="fitted-photos">
          <h2 id="fitted-photos">Photos</h2>
          <p class="small soft">
            A photo keeps the time, your name and a hash of its own. What the camera wrote beside it
            is taken out.
          </p>
          <PhotoField id={fittedPhotos} of="fitted part" stored={stored} change={change} />
          <div class="row">
            <Button icon="bin" look="danger" onClick={() => change(withoutFitted)}>
              Nothing was fitted
            </Button>
          </div>
        </section>
      ) : (
        <p class="small soft">
          {text("partNumber") === ""
            ? "Once the part is told, photos can be added and the vehicle checked again."
            : "Something above can't be read yet. Everything you typed stays."}
        </p>
      )}
      {fitted && fitted.spacerMm > 0 && (
        <p class="small">With a spacer of {quantityText(spacer(fitted.spacerMm), unit)}.</p>
      )}
      {fault && (
        <Notice tone="no" live>
          <p>{inModelUnits(fault.sentence)}</p>
        </Notice>
      )}
      <p class="small soft">
        "Check again" starts a new check of the same job. Geometry and clearances go along; the gap
        is re-measured.
      </p>
    </Screen>
  );
}
