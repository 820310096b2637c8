import { useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
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
  const taken = Object.values(draft.entries).filter(({ texts }) =>
    texts.some((text) => text.trim() !== ""),
  ).length;
  return (
    <Screen
      top={<span class="screen-name brand">Stopfit</span>}
      actions={
        <>
          <Button onClick={onLeave}>{waiting > 0 ? "Next" : "Don't save"}</Button>
          <Button look="main" onClick={keep} disabled={busy}>
            Save on this phone
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        A check that is not complete was sent to you
      </h1>
      <p class="soft">It is only shown so far. Nothing is saved until you say so.</p>
      {fault && <FaultNotice fault={fault} />}
      <Card heading="What was sent">
        <dl class="facts">
          <dt>Name</dt>
          <dd>
            <bdi>{checkName(draft)}</bdi>
          </dd>
          <dt>Started</dt>
          <dd>{dateText(draft.createdAt)}</dd>
          <dt>Typed so far</dt>
          <dd>{taken === 1 ? "1 entry" : `${taken} entries`}</dd>
        </dl>
        <p>
          Once it is saved you go on where it was left. Cautions and setting up the vehicle come
          once more.
        </p>
      </Card>
      {waiting > 0 && (
        <p class="soft">{waiting === 1 ? "One more came" : `${waiting} more came`} with it.</p>
      )}
    </Screen>
  );
}
