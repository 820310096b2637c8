import type { Remark } from "../../physics/stopTests/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";

/** Says what was done without a change to what the file holds: nothing to confirm. */
const informing: ReadonlySet<Remark["code"]> = new Set(["partsChosen", "notASine"]);

const everyOther = "others";

function keyOf(remark: Remark): string | null {
  if (informing.has(remark.code)) return null;
  return remark.asks ? JSON.stringify(remark.sentence) : everyOther;
}

/** How many marks are still to be set before anything may be kept. */
export function unreadRemarks(remarks: readonly Remark[], read: ReadonlySet<string>): number {
  const keys = new Set(remarks.map(keyOf).filter((key) => key !== null));
  return [...keys].filter((key) => !read.has(key)).length;
}

/** Every remark; one that asks has a mark of its own, the others share one. */
export function RemarksToRead({
  remarks,
  read,
  onRead,
  unit,
}: {
  remarks: readonly Remark[];
  read: ReadonlySet<string>;
  onRead: (read: ReadonlySet<string>) => void;
  unit: LengthUnit;
}) {
  const mark = (key: string) => (on: boolean) => {
    const next = new Set(read);
    if (on) next.add(key);
    else next.delete(key);
    onRead(next);
  };
  const asking = remarks.filter(({ asks }) => asks);
  const others = remarks.filter(({ asks, code }) => !asks && !informing.has(code));
  const told = remarks.filter(({ code }) => informing.has(code));
  return (
    <>
      {asking.map((remark) => {
        const key = JSON.stringify(remark.sentence);
        return (
          <div key={key} class="stack-close">
            <Notice tone="unsure">
              <p>{sentenceText(remark.sentence, unit)}</p>
            </Notice>
            <CheckLine checked={read.has(key)} onChange={mark(key)}>
              {messages.itIsRightAs}
            </CheckLine>
          </div>
        );
      })}
      {others.map(({ sentence }) => {
        const text = sentenceText(sentence, unit);
        return (
          <Notice key={text} tone="care">
            <p>{text}</p>
          </Notice>
        );
      })}
      {others.length > 0 && (
        <CheckLine checked={read.has(everyOther)} onChange={mark(everyOther)}>
          {others.length === 1 ? messages.iHaveReadThis : messages.iHaveReadThese}
        </CheckLine>
      )}
      {told.map(({ code, sentence }) => (
        <p key={code} class="small">
          {sentenceText(sentence, unit)}
        </p>
      ))}
    </>
  );
}
