import { useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import { entriesWithChoices } from "../../records/check/choicesAmongEntries.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { said } from "../../saying/texts.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { Button } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { keepBeside } from "./presentVersions.ts";

export interface OpenDraftScreenProps {
  readonly draft: StoredCheck;
  readonly store: CheckStore;
  readonly waiting: number;
  onKept(id: string): void;
  onLeave(): void;
}

/** A check that is not complete, sent to be gone on with here. */
export function OpenDraftScreen({ draft, store, waiting, onKept, onLeave }: OpenDraftScreenProps) {
  const heading = useHeadingFocus(draft.id);
  const [fault, setFault] = useState<Fault | null>(null);
  const [busy, setBusy] = useState(false);
  const keep = async () => {
    setBusy(true);
    const kept = await keepBeside(store, { ...draft, updatedAt: new Date().toISOString() });
    setBusy(false);
    if (kept.ok) onKept(kept.value.id);
    else setFault(kept.fault);
  };
  const taken = Object.values(entriesWithChoices(draft)).filter(({ texts }) =>
    texts.some((text) => text.trim() !== ""),
  ).length;
  return (
    <Screen
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={
        <>
          <Button onClick={onLeave}>{waiting > 0 ? messages.next : messages.dontSave}</Button>
          <Button look="main" onClick={keep} disabled={busy}>
            {messages.saveOnThisPhone}
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.checkThatIsNot}
      </h1>
      <p class="soft">{messages.itIsOnlyShown}</p>
      {fault && <FaultNotice fault={fault} />}
      <Card heading={messages.whatWasSent}>
        <dl class="facts">
          <dt>{messages.nameWord}</dt>
          <dd>
            <bdi>{said(checkName(draft))}</bdi>
          </dd>
          <dt>{messages.started}</dt>
          <dd>{dateText(draft.createdAt)}</dd>
          <dt>{messages.typedSoFar}</dt>
          <dd>{taken === 1 ? messages.n1Entry : messages.entries({ taken })}</dd>
        </dl>
        <p>{messages.onceItIsSaved}</p>
      </Card>
      {waiting > 0 && <p class="soft">{messages.oneMoreCame({ waiting })}</p>}
    </Screen>
  );
}
