import type { ComponentChildren } from "preact";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { answerHref, stepHref } from "../addresses.ts";
import { ButtonLink } from "../parts/Button.tsx";

/** In the top row: the way back to a check, to its answer or its last step where it has none yet, and its name. */
export function CheckHead({
  stored,
  isComplete = true,
  children,
}: {
  stored: StoredCheck;
  isComplete?: boolean;
  children?: ComponentChildren;
}) {
  const { id, name, record } = stored;
  return (
    <>
      <ButtonLink
        look="quiet"
        icon="back"
        href={isComplete ? answerHref(id) : stepHref(id, "finish")}
        label={isComplete ? messages.toAnswer : messages.toCheck}
      />
      <span class="screen-name">{name || record.vehicle?.label || messages.check}</span>
      {children}
    </>
  );
}
