import { useEffect, useState } from "preact/hooks";
import * as messages from "../../words/compiled/screens/offline.ts";
import { Button } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Icon } from "../parts/Icon.tsx";
import { Notice } from "../parts/Notice.tsx";
import type { OfflineState, OfflineWatch } from "./registration.ts";
import "./offline.css";

/** Once the first screen is painted, so that it is not held up by files for later. */
async function startWatch(): Promise<OfflineWatch | null> {
  if (import.meta.env.DEV) return null;
  const { offlineWatch } = await import("./registration.ts");
  return offlineWatch();
}

function afterFirstPaint(callback: () => void): () => void {
  const timer = setTimeout(callback, 0);
  return () => clearTimeout(timer);
}

export interface OfflineNoticeProps {
  /** True while a check is being filled in: nothing is asked and nothing changes until it is left. */
  readonly filling: boolean;
  /** Above a screen that has other things to say: only the question, not whether all is kept. */
  readonly updateOnly?: boolean;
  readonly start?: () => Promise<OfflineWatch | null>;
}

/** Whether the app works without a signal, and the question whether to take a new version. */
export function OfflineNotice({
  filling,
  updateOnly = false,
  start = startWatch,
}: OfflineNoticeProps) {
  const [watch, setWatch] = useState<OfflineWatch | null>(null);
  const [state, setState] = useState<OfflineState | null>(null);
  const [unwatched, setUnwatched] = useState(false);

  useEffect(() => {
    let leave: (() => void) | undefined;
    let left = false;
    const cancel = afterFirstPaint(async () => {
      const started = await start();
      if (left) return;
      if (!started) {
        setUnwatched(true);
        return;
      }
      setWatch(started);
      setState(started.state());
      started.look();
      leave = started.subscribe(setState);
    });
    return () => {
      left = true;
      cancel();
      leave?.();
    };
  }, [start]);

  if (filling || unwatched) return null;
  // Takes the room of what will be said, so that the list does not jump.
  if (!watch || !state) return updateOnly ? null : <GettingReady />;
  if (state.update === "none") {
    return updateOnly ? null : <OfflineLine kept={state.kept} release={watch.release} />;
  }
  const question = <UpdateQuestion update={state.update} watch={watch} />;
  return updateOnly ? (
    <aside class="offline-above" aria-label={messages.versionOfApp}>
      {question}
    </aside>
  ) : (
    question
  );
}

function UpdateQuestion({
  update,
  watch,
}: {
  update: "waiting" | "replaced";
  watch: OfflineWatch;
}) {
  const [changes, setChanges] = useState<readonly string[]>([]);
  useEffect(() => {
    let left = false;
    watch.whatIsNew().then((found) => !left && setChanges(found));
    return () => {
      left = true;
    };
  }, [watch]);
  return (
    <Notice tone="info" live>
      <p>{update === "waiting" ? messages.newVersionIsReady : messages.anotherTabTookNew}</p>
      {changes.length > 0 && (
        <Disclosure summary={messages.whatIsNew}>
          <ul>
            {changes.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </Disclosure>
      )}
      <div class="row">
        <Button look="main" onClick={() => watch.takeUpdate()}>
          {update === "waiting" ? messages.updateNow : messages.loadItHere}
        </Button>
        <Button look="plain" onClick={() => watch.putOffUpdate()}>
          {messages.later}
        </Button>
      </div>
    </Notice>
  );
}

function OfflineLine({ kept, release }: { kept: OfflineState["kept"]; release: string }) {
  switch (kept) {
    case "kept":
      return (
        <p class="offline-tick" role="status">
          <Icon name="tick" size={16} /> <strong>{messages.readyOffline}</strong>{" "}
          {messages.version({ release })}
        </p>
      );
    case "notKept":
      return (
        <Notice tone="care" live>
          <p>{messages.notReadyOfflineOpen}</p>
        </Notice>
      );
    case "notPossible":
      return (
        <Notice tone="care" live>
          <p>{messages.thisBrowserCantSave}</p>
        </Notice>
      );
    case "working":
      return <GettingReady />;
  }
}

function GettingReady() {
  return <p class="offline-tick">{messages.gettingReadyForUse}</p>;
}
