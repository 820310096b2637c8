import type { ComponentChildren } from "preact";
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Fault, Outcome } from "../../physics/outcome.ts";
import { inModelUnits } from "../../physics/sentence.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { judgedAtDesk } from "../../records/review/deskDemands.ts";
import type { SharedCheck } from "../../sharing/sharedCheck.ts";
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
  const leaveWords = waiting > 0 ? "Next" : "Don't save";
  return (
    <Screen
      top={<span class="screen-name brand">Stopfit</span>}
      actions={
        same ? (
          <>
            <Button onClick={onLeave}>{waiting > 0 ? "Next" : "Close"}</Button>
            <Button look="main" onClick={() => onOpen(same.id)}>
              Open the one here
            </Button>
          </>
        ) : (
          <>
            <Button onClick={onLeave}>{leaveWords}</Button>
            <Button look="main" onClick={keep} disabled={present === null || busy}>
              {newest ? "Save both" : "Save on this phone"}
            </Button>
          </>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        A check was sent to you
      </h1>
      <p class="soft">It is only shown so far. Nothing is saved until you say so.</p>
      {notice}
      {fault && <FaultNotice fault={fault} />}
      {opened.fault && <FaultNotice fault={opened.fault} />}
      {refused.map((each) => (
        <FaultNotice key={inModelUnits(each.sentence)} fault={each} />
      ))}
      {same && (
        <Notice tone="ok">
          <p>
            You already have this check, as “<bdi>{checkName(same)}</bdi>”.
          </p>
        </Notice>
      )}
      {!same && newest && (
        <Notice tone="care">
          <p>
            Another version of this check is on this phone: “<bdi>{checkName(newest)}</bdi>”, last
            changed {dateText(newest.updatedAt)}. Keep both, or let this one take its place.
          </p>
          <div class="row">
            <Button onClick={() => setReplacing(newest)} disabled={busy}>
              Replace the one here
            </Button>
          </div>
        </Notice>
      )}
      {photosLeftOut > 0 && (
        <Notice tone="care">
          <p>
            {photosLeftOut === 1 ? "One photo was" : `${photosLeftOut} photos were`} left out,
            because links and codes cannot hold photos. Ask for the file if you need them.
          </p>
        </Notice>
      )}
      {photosRefused > 0 && (
        <Notice tone="care">
          <p>
            {photosRefused === 1 ? "One photo was" : `${photosRefused} photos were`} left out: no
            picture that can be opened here, or one of far too many pixels.
          </p>
        </Notice>
      )}
      <PhoneVerdict
        record={judged}
        unit={unit}
        startAssessor={startAssessor}
        words="Computed here from the readings by this phone's requirements, whatever the sender's device said. This is a screening check, not a certification."
      />
      <ClaimsCard record={record} pack={pack} unit={unit} />
      <Facts shared={shared} />
      {waiting > 0 && (
        <p class="soft">
          {waiting === 1 ? "One more check came" : `${waiting} more checks came`} with it.
        </p>
      )}
      {replacing && (
        <Dialog
          heading="Replace the check here?"
          onLeave={() => setReplacing(null)}
          actions={
            <>
              <Button onClick={() => setReplacing(null)}>Cancel</Button>
              <Button
                look="danger"
                onClick={() => settle(replaceWithReceived(store, replacing, record, unit))}
              >
                Replace
              </Button>
            </>
          }
        >
          <p>
            “<bdi>{checkName(replacing)}</bdi>” on this phone gets the readings that were sent to
            you. What it holds now goes to the deleted checks, where it can be brought back.
          </p>
        </Dialog>
      )}
    </Screen>
  );
}

function Facts({ shared: { record } }: { shared: SharedCheck }) {
  const photos = record.photos?.length ?? 0;
  return (
    <Card heading="What was sent">
      <dl class="facts">
        <dt>Vehicle</dt>
        <dd>
          <bdi>{record.vehicle.label}</bdi>
        </dd>
        <dt>Axle</dt>
        <dd>{record.axle}</dd>
        {record.job && (
          <>
            <dt>Job</dt>
            <dd>
              <bdi>{jobWords(record.job)}</bdi>
              {record.job.moment && `, ${record.job.moment} the change`}
            </dd>
          </>
        )}
        <dt>Stop</dt>
        <dd>
          <bdi>{record.stop.name}</bdi>
        </dd>
        <dt>Readings</dt>
        <dd>
          {readingsCount(record)}, {sidesText(record)}
        </dd>
        <dt>From</dt>
        <dd>
          <bdi>{whoText(record)}</bdi>, by what it says itself
        </dd>
        <dt>Started</dt>
        <dd>{dateText(record.createdAt)}</dd>
        {photos > 0 && (
          <>
            <dt>Photos</dt>
            <dd>{photos}</dd>
          </>
        )}
      </dl>
      {record.notes?.trim() && (
        <Disclosure summary="Notes">
          <p class="received-notes" dir="auto">
            {record.notes}
          </p>
        </Disclosure>
      )}
    </Card>
  );
}
