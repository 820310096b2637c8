import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Reply } from "../../records/review/reply.ts";
import type { Frame } from "../../sharing/frame.ts";
import { payloadText, readPayload } from "../../sharing/payload.ts";
import { type SharedCheck, sharedOfFrame } from "../../sharing/sharedCheck.ts";
import { openPrefix } from "../../sharing/shareLink.ts";
import { takeReceived } from "../../sharing/shareTarget.ts";
import { checksHref, goTo, stepHref } from "../addresses.ts";
import { Notice } from "../parts/Notice.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { savedHref } from "../saved/savedRoute.ts";
import type { OpenedStore } from "../useStore.ts";
import { FaultNotice } from "./FaultNotice.tsx";
import { OpenDraftScreen } from "./OpenDraftScreen.tsx";
import OpenSharedScreen from "./OpenSharedScreen.tsx";
import { OpenWays } from "./OpenWays.tsx";
import { type Received, receivedOfFiles, receivedOfText } from "./received.ts";
import { replyHref } from "./reply/replyRoute.ts";
import { keepReplies } from "./reply/takeReplies.ts";
import ScanScreen from "./ScanScreen.tsx";
import { openHref, type ShareRoute } from "./shareRoutes.ts";

export interface SharePlaceProps {
  readonly route: ShareRoute;
  readonly opened: OpenedStore;
  readonly unit: LengthUnit;
  /** Files that the device opened the app with. */
  readonly launched?: readonly File[];
  readonly startAssessor?: Parameters<typeof OpenSharedScreen>[0]["startAssessor"];
}

/** What waits to be looked at, one after another. */
type Waiting =
  | { readonly kind: "check"; readonly check: SharedCheck }
  | { readonly kind: "draft"; readonly draft: StoredCheck };

/** Where checks, replies and backups from others come in, by whatever way. */
export default function SharePlace({
  route,
  opened,
  unit,
  launched,
  startAssessor,
}: SharePlaceProps) {
  const { store } = opened;
  const [queue, setQueue] = useState<readonly Waiting[]>([]);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  /** Where to once the queue is through: the backup that came, or a check that a reply is about. */
  const [after, setAfter] = useState<string | null>(null);
  const payload = route.screen === "open" ? route.payload : null;
  const linked = useMemo(() => (payload === null ? null : linkedBy(payload)), [payload]);

  const takeAll = useCallback(
    async ({ checks, drafts, replies, backups, refused }: Received) => {
      const kept = await keepReplies(store, replies);
      const [backup] = backups;
      const [storedId] = kept.storedIds;
      if (backup)
        (await import("../saved/backupHere.ts")).handBackup(backup, "opened from elsewhere");
      const then = backup ? savedHref : storedId ? replyHref(storedId) : null;
      const troubles = [...refused.map(({ fault }) => fault), ...kept.faults];
      const waiting = [
        ...checks.map((check) => ({ kind: "check" as const, check })),
        ...drafts.map((draft) => ({ kind: "draft" as const, draft })),
      ];
      if (waiting.length === 0 && then && troubles.length === 0)
        return goTo(then, { replace: true });
      setQueue(waiting);
      setFaults(troubles);
      setAfter(then);
    },
    [store],
  );

  const takeFiles = useCallback(
    async (files: readonly File[]) => takeAll(await receivedOfFiles(files)),
    [takeAll],
  );

  useEffect(() => {
    if (launched && launched.length > 0) takeFiles(launched);
  }, [launched, takeFiles]);

  useEffect(() => {
    if (route.screen !== "received") return;
    const receive = async () => {
      const files = await takeReceived(globalThis.caches);
      if (files.length > 0) await takeFiles(files);
      else if (!launched?.length) setFaults([nothingArrived]);
    };
    receive();
  }, [route.screen, launched, takeFiles]);

  useEffect(() => {
    // Another link while the answer to the one before was still open.
    if (payload !== null) {
      setQueue([]);
      setFaults([]);
      setAfter(null);
    }
  }, [payload]);

  useEffect(() => {
    if (linked?.kind === "reply") takeAll({ ...nothing, replies: [linked.reply] });
  }, [linked, takeAll]);

  // The check must not stay in the browser's history once it was dealt with.
  const next = (last: string) => {
    if (queue.length > 1) setQueue(queue.slice(1));
    else goTo(after ?? last, { replace: true });
  };
  const leave = () => next(checksHref);
  const open = (id: string) => goTo(stepHref(id), { replace: true });
  const kept = (id: string) => next(stepHref(id));
  const whole = (frame: Frame) =>
    goTo(`${openPrefix}${payloadText(frame, "letters")}`, { replace: true });

  const shown = queue[0] ?? (linked?.kind === "check" ? linked : null);
  const waiting = Math.max(0, queue.length - 1);
  if (shown?.kind === "check") {
    const { check } = shown;
    return (
      <OpenSharedScreen
        key={`${check.record.id} ${queue.length}`}
        shared={check}
        opened={opened}
        unit={unit}
        onOpen={open}
        onKept={kept}
        onLeave={leave}
        refused={faults}
        waiting={waiting}
        {...(startAssessor && { startAssessor })}
      />
    );
  }
  if (shown?.kind === "draft") {
    const { draft } = shown;
    return (
      <OpenDraftScreen
        key={draft.id}
        draft={draft}
        store={store}
        waiting={waiting}
        onKept={kept}
        onLeave={leave}
      />
    );
  }
  if (route.screen === "scan" || linked?.kind === "part") {
    const begun = linked?.kind === "part" ? linked.frame : null;
    return <ScanScreen begun={begun} onWhole={whole} onLeave={() => goTo(openHref)} />;
  }
  if (linked?.kind === "reply" && faults.length === 0) {
    return <OneMoment />;
  }
  const told = linked?.kind === "fault" ? [linked.fault, ...faults] : faults;
  return (
    <OpenWays
      notice={
        <>
          {after !== null && (
            <Notice tone="info" live>
              <p>
                {after === savedHref
                  ? "A backup came with it."
                  : "A reply came with it and is kept with its check."}{" "}
                <a href={after}>{after === savedHref ? "Restore it" : "Read it"}</a>
              </p>
            </Notice>
          )}
          {told.map((fault, index) => (
            <FaultNotice key={`${fault.code} ${index}`} fault={fault} />
          ))}
        </>
      }
      onFiles={takeFiles}
      onText={async (text) => takeAll(await receivedOfText(text, "The pasted text"))}
      onLeave={() => goTo(checksHref)}
    />
  );
}

const nothing: Received = { checks: [], drafts: [], replies: [], backups: [], refused: [] };

const nothingArrived: Fault = {
  code: "nothingArrived",
  sentence: ["Nothing arrived from the other program. Save the file there, then choose it here."],
};

type Linked =
  | { readonly kind: "check"; readonly check: SharedCheck }
  | { readonly kind: "reply"; readonly reply: Reply }
  | { readonly kind: "part"; readonly frame: Frame }
  | { readonly kind: "fault"; readonly fault: Fault };

function linkedBy(payload: string): Linked {
  const frame = readPayload(payload);
  if (!frame.ok) return { kind: "fault", fault: frame.fault };
  if (frame.value.parts > 1) return { kind: "part", frame: frame.value };
  const shared = sharedOfFrame(frame.value);
  return shared.ok ? shared.value : { kind: "fault", fault: shared.fault };
}
