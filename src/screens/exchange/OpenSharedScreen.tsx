import type { ComponentChildren } from "preact";
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Fault, Outcome } from "../../physics/outcome.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { judgedAtDesk } from "../../records/review/deskDemands.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import type { SharedCheck } from "../../sharing/sharedCheck.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { jobWords } from "../job/jobWords.ts";
import { Button } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { useReferencePack } from "../referencePack.ts";
import type { OpenedStore } from "../useStore.ts";
import { ClaimsCard } from "./ClaimsCard.tsx";
import { PhoneVerdict } from "./PhoneVerdict.tsx";
import {
  keepReceived,
  type PresentVersions,
  presentVersions,
  replaceWithReceived,
} from "./presentVersions.ts";
import { readingsCount, sidesText, whoText } from "./recordFacts.ts";
import "./exchange.css";

export interface OpenSharedScreenProps {
  readonly shared: SharedCheck;
  readonly opened: OpenedStore;
  readonly unit: LengthUnit;
  /** To a check that was on this phone already, by its id there. */
  onOpen(id: string): void;
  /** Once it is kept, under which id. */
  onKept(id: string): void;
  onLeave(): void;
  /** More checks that came with this one and are shown after it. */
  readonly waiting?: number;
  /** What is said before anything of the check. */
  readonly notice?: ComponentChildren;
  /** Why others that came with it are not shown. */
  readonly refused?: readonly Fault[];
  /** Another calculator than the worker's, where there is no worker. */
  readonly startAssessor?: () => Assessor;
}

/** A check that someone sent: what it is, the verdict computed here, and whether to keep it. */
export default function OpenSharedScreen({
  shared,
  opened,
  unit,
  onOpen,
  onKept,
  onLeave,
  waiting = 0,
  notice,
  refused = [],
  startAssessor,
}: OpenSharedScreenProps) {
  const { record, photosLeftOut, photosRefused = 0 } = shared;
  const { store } = opened;
  const pack = useReferencePack();
  const judged = useMemo(() => judgedAtDesk(record, pack), [record, pack]);
  const heading = useHeadingFocus(record.id);
  const [present, setPresent] = useState<PresentVersions | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [replacing, setReplacing] = useState<StoredCheck | null>(null);
  const [busy, setBusy] = useState(false);

  useEffect(() => {
    let left = false;
    const look = async () => {
      const found = await presentVersions(store, record);
      if (left) return;
      if (found.ok) setPresent(found.value);
      else {
        setFault(found.fault);
        setPresent({ versions: [], same: null });
      }
    };
    look();
    const stop = store.subscribe(look);
    return () => {
      left = true;
      stop();
    };
  }, [store, record]);

  const settle = async (work: Promise<Outcome<StoredCheck>>) => {
    setBusy(true);
    setReplacing(null);
    const outcome = await work;
    setBusy(false);
    if (outcome.ok) onKept(outcome.value.id);
    else setFault(outcome.fault);
  };
  const keep = () => settle(keepReceived(store, record, unit));

  const same = present?.same ?? null;
  const [newest] = present?.versions ?? [];
  const leaveWords = waiting > 0 ? messages.next : messages.dontSave;
  return (
    <Screen
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={
        same ? (
          <>
            <Button onClick={onLeave}>{waiting > 0 ? messages.next : messages.closeWord}</Button>
            <Button look="main" onClick={() => onOpen(same.id)}>
              {messages.openOneHere}
            </Button>
          </>
        ) : (
          <>
            <Button onClick={onLeave}>{leaveWords}</Button>
            <Button look="main" onClick={keep} disabled={present === null || busy}>
              {newest ? messages.saveBoth : messages.saveOnThisPhone}
            </Button>
          </>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.checkWasSentTo}
      </h1>
      <p class="soft">{messages.itIsOnlyShown}</p>
      {notice}
      {fault && <FaultNotice fault={fault} />}
      {opened.fault && <FaultNotice fault={opened.fault} />}
      {refused.map((each) => (
        <FaultNotice key={inModelUnits(each.sentence)} fault={each} />
      ))}
      {same && (
        <Notice tone="ok">
          <p>
            {messages.youAlreadyHaveThis}
            <bdi>{said(checkName(same))}</bdi>”.
          </p>
        </Notice>
      )}
      {!same && newest && (
        <Notice tone="care">
          <p>
            {messages.anotherVersionOfThis}
            <bdi>{said(checkName(newest))}</bdi>
            {messages.lastChangedKeepBoth({ updatedAt: dateText(newest.updatedAt) })}
          </p>
          <div class="row">
            <Button onClick={() => setReplacing(newest)} disabled={busy}>
              {messages.replaceOneHere}
            </Button>
          </div>
        </Notice>
      )}
      {photosLeftOut > 0 && (
        <Notice tone="care">
          <p>{messages.onePhotoWas({ photosLeftOut })}</p>
        </Notice>
      )}
      {photosRefused > 0 && (
        <Notice tone="care">
          <p>{messages.onePhotoWas2({ photosRefused })}</p>
        </Notice>
      )}
      <PhoneVerdict
        record={judged}
        unit={unit}
        startAssessor={startAssessor}
        words={messages.computedHereFromReadings}
      />
      <ClaimsCard record={record} pack={pack} unit={unit} />
      <Facts shared={shared} />
      {waiting > 0 && <p class="soft">{messages.oneMoreCheckCame({ waiting })}</p>}
      {replacing && (
        <Dialog
          heading={messages.replaceCheckHere}
          onLeave={() => setReplacing(null)}
          actions={
            <>
              <Button onClick={() => setReplacing(null)}>{messages.cancel}</Button>
              <Button
                look="danger"
                onClick={() => settle(replaceWithReceived(store, replacing, record, unit))}
              >
                {messages.replace}
              </Button>
            </>
          }
        >
          <p>
            “<bdi>{said(checkName(replacing))}</bdi>
            {messages.onThisPhoneGets}
          </p>
        </Dialog>
      )}
    </Screen>
  );
}

function Facts({ shared: { record } }: { shared: SharedCheck }) {
  const photos = record.photos?.length ?? 0;
  return (
    <Card heading={messages.whatWasSent}>
      <dl class="facts">
        <dt>{messages.vehicle}</dt>
        <dd>
          <bdi>{record.vehicle.label}</bdi>
        </dd>
        <dt>{messages.axle}</dt>
        <dd>{messages.axleOf({ axle: record.axle })}</dd>
        {record.job && (
          <>
            <dt>{messages.job}</dt>
            <dd>
              <bdi>{jobWords(record.job)}</bdi>
              {record.job.moment && messages.change({ moment: record.job.moment })}
            </dd>
          </>
        )}
        <dt>{messages.stopWord}</dt>
        <dd>
          <bdi>{record.stop.name}</bdi>
        </dd>
        <dt>{messages.readings}</dt>
        <dd>
          {readingsCount(record)}, {sidesText(record)}
        </dd>
        <dt>{messages.from}</dt>
        <dd>
          <bdi>{whoText(record)}</bdi>
          {messages.byWhatItSays}
        </dd>
        <dt>{messages.started}</dt>
        <dd>{dateText(record.createdAt)}</dd>
        {photos > 0 && (
          <>
            <dt>{messages.photos}</dt>
            <dd>{photos}</dd>
          </>
        )}
      </dl>
      {record.notes?.trim() && (
        <Disclosure summary={messages.notes}>
          <p class="received-notes" dir="auto">
            {record.notes}
          </p>
        </Disclosure>
      )}
    </Card>
  );
}
