import type { LayoutKind } from "../../physics/fitment.ts";
import { layoutKinds } from "../../physics/readings/index.ts";
import { capital } from "../../physics/sentence.ts";
import { isThreaded, mountingWays, wayWords } from "../../records/pack/mounting.ts";
import { readThread } from "../../records/pack/thread.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { CheckLine } from "../parts/Choices.tsx";
import { SelectField, TextField } from "../parts/Field.tsx";
import { type FieldProps, PackNumber } from "./fields.tsx";
import { setText, textOf } from "./itemDraft.ts";
import { wayOf } from "./mountDraft.ts";

/** How a stop is held, or what holds one on a vehicle: chosen and measured, so that the two can be compared. */
export function MountFields({ draft, change, of }: FieldProps & { of: "stop" | "platform" }) {
  const fields = { draft, change };
  const put = (field: string) => (text: string) =>
    change((current) => setText(current, field, text));
  const way = wayOf(draft);
  const thread = textOf(draft, "mount.thread");
  const read = thread.trim() === "" ? null : readThread(thread);
  return (
    <section class="card" aria-labelledby="mount-heading">
      <h2 id="mount-heading">{messages.mounting}</h2>
      <p class="small soft">
        {of === "stop" ? messages.decidesWhereThisStop : messages.decidesWhichStopsCan}
      </p>
      <SelectField
        label={of === "stop" ? messages.howItIsHeld : messages.whatHoldsStopHere}
        value={way ?? ""}
        options={[
          { value: "", text: messages.notKnown },
          ...mountingWays.map((value) => ({ value, text: said(capital(wayWords[value])) })),
        ]}
        onChange={put("mount.way")}
      />
      {way !== null && isThreaded(way) && (
        <TextField
          label={messages.thread}
          hint={messages.m10X1}
          value={thread}
          maxLength={40}
          onInput={put("mount.thread")}
          {...(read?.ok === false && {
            tone: "no" as const,
            message: inModelUnits(read.fault.sentence),
          })}
        />
      )}
      {way !== null && !isThreaded(way) && (
        <PackNumber
          {...fields}
          field="mount.size"
          label={way === "rod" ? messages.boreOverRod : messages.diameterOfCup}
          kind="length"
        />
      )}
      {way === "twoBolts" && (
        <PackNumber
          {...fields}
          field="mount.spacing"
          label={messages.betweenBoltsCenterTo}
          kind="length"
        />
      )}
      {way !== null && (
        <PackNumber
          {...fields}
          field="mount.seat"
          label={of === "stop" ? messages.acrossItsFoot : messages.roomAcrossForFoot}
          kind="length"
        />
      )}
      {way !== null && of === "platform" && (
        <PackNumber
          {...fields}
          field="mount.room"
          label={messages.roomAcrossForStop}
          kind="length"
        />
      )}
      {way !== null && of === "stop" && (
        <fieldset class="field">
          <legend class="field-label">{messages.layoutsItIsMade}</legend>
          <div class="choices">
            {layoutKinds.map((kind) => (
              <LayoutLine key={kind} kind={kind} draft={draft} change={change} />
            ))}
          </div>
        </fieldset>
      )}
    </section>
  );
}

function LayoutLine({ kind, draft, change }: FieldProps & { kind: LayoutKind }) {
  const chosen = textOf(draft, "mount.layouts").split(" ").filter(Boolean);
  return (
    <CheckLine
      checked={chosen.includes(kind)}
      onChange={(checked) =>
        change((current) => {
          const others = chosen.filter((each) => each !== kind);
          return setText(
            current,
            "mount.layouts",
            (checked ? [...others, kind] : others).join(" "),
          );
        })
      }
    >
      {layoutsOnScreen[kind].words.short}
    </CheckLine>
  );
}
