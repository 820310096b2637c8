import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { leaveWalk } from "../../records/remeasure/remeasureWalk.ts";
import type { RemeasureWalk } from "../../records/remeasure/underWay.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { answerHref, goTo, stepHref } from "../addresses.ts";
import type { Change } from "../guide/stepProps.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { RetakeBar } from "./RetakeBar.tsx";
import { lineName, removesWords } from "./remeasureWords.ts";

/** Over the steps while readings are taken again: which of how many, and what it would remove. */
export function RemeasureBar({
  stored,
  walk,
  here,
  change,
}: {
  stored: StoredCheck;
  walk: RemeasureWalk;
  /** The step of the reading that is being taken again, the cautions before it, or another one. */
  here: "reading" | "cautions" | "elsewhere";
  change: Change;
}) {
  const { now } = walk;
  if (!now) return null;
  const place = walk.done.length + 1;
  const total = walk.done.length + Math.max(1, walk.left);
  return (
    <RetakeBar
      label={messages.reMeasure}
      state="unsure"
      words={messages.reMeasureOf({ place, total })}
      detail={
        here === "reading"
          ? `${removesWords(now.removes)}.`
          : messages.next2({ lineName: lineName(stored, now.reading) })
      }
    >
      {here === "elsewhere" && (
        <ButtonLink href={stepHref(stored.id, now.reading)}>{messages.goOn}</ButtonLink>
      )}
      <Button
        look="quiet"
        onClick={() => {
          change(leaveWalk);
          goTo(answerHref(stored.id));
        }}
      >
        {messages.stopWord}
      </Button>
    </RetakeBar>
  );
}
