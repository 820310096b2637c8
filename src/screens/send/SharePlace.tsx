import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import { type Fault, fail, type Outcome } from "../../physics/outcome.ts";
import type { LengthUnit } from "../../records/units.ts";
import type { Frame } from "../../sharing/frame.ts";
import { payloadText, readPayload } from "../../sharing/payload.ts";
import { checkOfText, readFileText } from "../../sharing/receivedFile.ts";
import { checkOfFrame, checkOfPayload, type SharedCheck } from "../../sharing/sharedCheck.ts";
import { findPayloads, openPrefix } from "../../sharing/shareLink.ts";
import { takeReceived } from "../../sharing/shareTarget.ts";
import { checksHref, goTo, stepHref } from "../router.ts";
import type { OpenedStore } from "../useStore.ts";
import { FaultNotice } from "./FaultNotice.tsx";
import OpenSharedScreen from "./OpenSharedScreen.tsx";
import { OpenWays } from "./OpenWays.tsx";
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

/** Where checks from others come in, by whatever way. */
export default function SharePlace({
  route,
  opened,
  unit,
  launched,
  startAssessor,
}: SharePlaceProps) {
  const [queue, setQueue] = useState<readonly SharedCheck[]>([]);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const payload = route.screen === "open" ? route.payload : null;
  const linked = useMemo(() => (payload === null ? null : outcomeOf(payload)), [payload]);

  const takeAll = useCallback((outcomes: readonly Outcome<SharedCheck>[]) => {
    setQueue(outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])));
    setFaults(outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.fault])));
  }, []);

  const takeFiles = useCallback(
    async (files: readonly File[]) => {
      const outcomes: Outcome<SharedCheck>[] = [];
      for (const file of files) {
        const text = await readFileText(file);
        outcomes.push(...(text.ok ? checksOf(text.value.text, text.value.what) : [text]));
      }
      takeAll(outcomes);
    },
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
    }
  }, [payload]);

  // The check must not stay in the browser's history once it was dealt with.
  const leave = () => {
    if (queue.length > 1) setQueue(queue.slice(1));
    else goTo(checksHref, { replace: true });
  };
  const open = (id: string) => goTo(stepHref(id), { replace: true });
  const kept = (id: string) => (queue.length > 1 ? setQueue(queue.slice(1)) : open(id));
  const whole = (frame: Frame) =>
    goTo(`${openPrefix}${payloadText(frame, "letters")}`, { replace: true });

  const [first] = queue;
  const shared = first ?? (linked?.kind === "check" ? linked.shared : null);
  if (shared) {
    return (
      <OpenSharedScreen
        key={`${shared.record.id} ${queue.length}`}
        shared={shared}
        opened={opened}
        unit={unit}
        onOpen={open}
        onKept={kept}
        onLeave={leave}
        refused={faults}
        waiting={Math.max(0, queue.length - 1)}
        {...(startAssessor && { startAssessor })}
      />
    );
  }
  if (route.screen === "scan" || linked?.kind === "part") {
    const begun = linked?.kind === "part" ? linked.frame : null;
    return <ScanScreen begun={begun} onWhole={whole} onLeave={() => goTo(openHref)} />;
  }
  const shown = linked?.kind === "fault" ? [linked.fault, ...faults] : faults;
  return (
    <OpenWays
      notice={shown.map((fault, index) => (
        <FaultNotice key={`${fault.code} ${index}`} fault={fault} />
      ))}
      onFiles={takeFiles}
      onText={(text) => takeAll(checksOf(text, "The pasted text"))}
      onLeave={() => goTo(checksHref)}
    />
  );
}

const nothingArrived: Fault = {
  code: "nothingArrived",
  sentence: ["Nothing arrived from the other program. Save the file there, then choose it here."],
};

type Linked =
  | { readonly kind: "check"; readonly shared: SharedCheck }
  | { readonly kind: "part"; readonly frame: Frame }
  | { readonly kind: "fault"; readonly fault: Fault };

function outcomeOf(payload: string): Linked {
  const frame = readPayload(payload);
  if (!frame.ok) return { kind: "fault", fault: frame.fault };
  if (frame.value.parts > 1) return { kind: "part", frame: frame.value };
  const shared = checkOfFrame(frame.value);
  return shared.ok
    ? { kind: "check", shared: shared.value }
    : { kind: "fault", fault: shared.fault };
}

/** Checks shown one after another from one text; what more of them there are is said. */
const checksAtOnce = 50;

/** Every check in a text: one in a file's text, one for each link in a message. */
function checksOf(text: string, what: string): Outcome<SharedCheck>[] {
  const payloads = /^\ufeff?\s*[{[]/.test(text) ? [] : findPayloads(text);
  if (payloads.length < 2) return [checkOfText({ text, what })];
  const outcomes = payloads.slice(0, checksAtOnce).map((payload) => checkOfPayload(payload));
  return payloads.length <= checksAtOnce
    ? outcomes
    : [
        ...outcomes,
        fail("tooManyLinks", [
          `Only ${checksAtOnce} links are opened at a time. Paste the rest after these.`,
        ]),
      ];
}
