import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Reply } from "../../records/review/reply.ts";
import type { Frame } from "../../sharing/frame.ts";
import { payloadText } from "../../sharing/payload.ts";
import type { SharedCheck } from "../../sharing/sharedCheck.ts";
import { appAddress, linkTo, openPrefix } from "../../sharing/shareLink.ts";
import { takeReceived } from "../../sharing/shareTarget.ts";
import { isBrowserOnApple } from "../../sharing/thisDevice.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { checksHref, goTo, packHref, stepHref } from "../addresses.ts";
import { handPack } from "../handedPack.ts";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Notice } from "../parts/Notice.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { savedHref } from "../saved/savedRoute.ts";
import type { OpenedStore } from "../useStore.ts";
import { ArrivedScreen } from "./ArrivedScreen.tsx";
import { takeHanded } from "./handed.ts";
import { OpenDraftScreen } from "./OpenDraftScreen.tsx";
import OpenSharedScreen from "./OpenSharedScreen.tsx";
import { OpenWays } from "./OpenWays.tsx";
import { type Received, receivedOfFiles, receivedOfPayload, receivedOfText } from "./received.ts";
import { OpenReplyScreen } from "./reply/OpenReplyScreen.tsx";
import { replyHref } from "./reply/replyRoute.ts";
import { checkOfReply, replyWithoutCheck } from "./reply/takeReplies.ts";
import ScanScreen from "./ScanScreen.tsx";
import SendPackScreen from "./SendPackScreen.tsx";
import { openHref, type ShareRoute } from "./shareRoutes.ts";
import { ToInstalledApp } from "./ToInstalledApp.tsx";

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
  | { readonly kind: "draft"; readonly draft: StoredCheck }
  | { readonly kind: "reply"; readonly reply: Reply; readonly stored: StoredCheck };

const nothingArrived: Fault = {
  code: "nothingArrived",
  sentence: [messages.nothingWasReceivedSave],
};

/** Where checks, replies and backups from others come in, by whatever way. Nothing is kept without a tap. */
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
  const [backup, setBackup] = useState<File | null>(null);
  const [part, setPart] = useState<Frame | null>(null);
  /** What another program or page handed over, and nobody has asked to look at yet. */
  const [arrived, setArrived] = useState<readonly File[]>([]);
  const [fromDesk, setFromDesk] = useState(false);
  const [reading, setReading] = useState(route.screen === "open" && route.payload !== null);
  const latest = useRef(0);
  const payload = route.screen === "open" ? route.payload : null;

  const toBackup = useCallback(async (file: File, way: string) => {
    (await import("../saved/backupHere.ts")).handBackup(file, way);
    goTo(savedHref, { replace: true });
  }, []);

  const show = useCallback(
    async (work: Promise<Received>, handedByDesk = false) => {
      latest.current += 1;
      setFromDesk(handedByDesk);
      const own = latest.current;
      setReading(true);
      setQueue([]);
      setFaults([]);
      setBackup(null);
      setPart(null);
      const { checks, drafts, replies, backups, packs, parts, refused } = await work;
      const troubles = refused.map(({ fault }) => fault);
      const waiting: Waiting[] = [
        ...checks.map((check) => ({ kind: "check" as const, check })),
        ...drafts.map((draft) => ({ kind: "draft" as const, draft })),
      ];
      for (const reply of replies) {
        const stored = await checkOfReply(store, reply);
        if (!stored.ok) troubles.push(stored.fault);
        else if (stored.value === null) troubles.push(replyWithoutCheck(reply));
        else waiting.push({ kind: "reply", reply, stored: stored.value });
      }
      // Another link came while this one was being read.
      if (own !== latest.current) return;
      setReading(false);
      const [library] = packs;
      if (library && waiting.length === 0 && troubles.length === 0) {
        handPack(library, library.name);
        return goTo(packHref, { replace: true });
      }
      const [first = null] = backups;
      if (first && waiting.length === 0 && troubles.length === 0) {
        return toBackup(first, messages.openedFromElsewhere);
      }
      setQueue(waiting);
      setFaults(troubles);
      setBackup(first);
      setPart(parts[0] ?? null);
    },
    [store, toBackup],
  );

  useEffect(() => {
    if (launched && launched.length > 0) show(receivedOfFiles(launched));
  }, [launched, show]);

  useEffect(() => {
    const handed = takeHanded();
    if (handed === null) return;
    const { replies, backup: file, fromDesk: byDesk } = handed;
    show(Promise.resolve({ ...nothing, replies, backups: file ? [file] : [] }), byDesk);
  }, [show]);

  useEffect(() => {
    if (route.screen !== "received") return;
    const receive = async () => {
      const files = await takeReceived(globalThis.caches);
      if (files.length > 0) setArrived(files);
      else if (!launched?.length) setFaults([nothingArrived]);
    };
    receive();
  }, [route.screen, launched]);

  useEffect(() => {
    if (payload !== null) show(receivedOfPayload(payload));
  }, [payload, show]);

  // The check must not stay in the browser's history once it was dealt with.
  const next = (last: string) => {
    if (queue.length > 1) setQueue(queue.slice(1));
    else if (backup) toBackup(backup, messages.openedFromElsewhere);
    else goTo(last, { replace: true });
  };
  const leave = () => next(checksHref);
  const open = (id: string) => goTo(stepHref(id), { replace: true });
  const kept = (id: string) => next(stepHref(id));
  const whole = (frame: Frame) =>
    goTo(`${openPrefix}${payloadText(frame, "letters")}`, { replace: true });

  if (arrived.length > 0) {
    return (
      <ArrivedScreen
        files={arrived}
        onLook={() => {
          setArrived([]);
          show(receivedOfFiles(arrived));
        }}
        onLeave={() => goTo(checksHref, { replace: true })}
      />
    );
  }
  if (reading) {
    return (
      <main aria-busy="true">
        <h1 class="unseen">{messages.openingWhatWasSent}</h1>
        <OneMoment />
      </main>
    );
  }
  const toApp = payload !== null && isBrowserOnApple() && (
    <ToInstalledApp link={linkTo(payload, appAddress(location))} />
  );
  const shown = queue[0];
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
        notice={toApp}
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
  if (shown?.kind === "reply") {
    const { reply, stored } = shown;
    return (
      <OpenReplyScreen
        key={`${reply.id} ${queue.length}`}
        reply={reply}
        stored={stored}
        unit={unit}
        waiting={waiting}
        fromDesk={fromDesk}
        refused={faults}
        onKept={() => next(replyHref(stored.id))}
        onLeave={leave}
        startAssessor={startAssessor}
      />
    );
  }
  if (route.screen === "sendPack") return <SendPackScreen />;
  if (route.screen === "scan" || part !== null) {
    return <ScanScreen begun={part} onWhole={whole} onLeave={() => goTo(openHref)} />;
  }
  return (
    <OpenWays
      notice={
        <>
          {toApp}
          {backup !== null && (
            <Notice tone="info" live>
              <p>{messages.backupCameWithIt}</p>
              <p>
                <a
                  href={savedHref}
                  onClick={(event) => {
                    event.preventDefault();
                    toBackup(backup, messages.openedFromElsewhere);
                  }}
                >
                  {messages.seeWhatIsIn}
                </a>
              </p>
            </Notice>
          )}
          {faults.map((fault, index) => (
            <FaultNotice key={`${fault.code} ${index}`} fault={fault} />
          ))}
        </>
      }
      onFiles={(files) => show(receivedOfFiles(files))}
      onText={(text) => show(receivedOfText(text, messages.pastedText))}
      onLeave={() => goTo(checksHref)}
    />
  );
}

const nothing: Received = {
  checks: [],
  drafts: [],
  replies: [],
  backups: [],
  packs: [],
  parts: [],
  refused: [],
};
