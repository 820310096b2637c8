import { useRef, useState } from "preact/hooks";
import type { Fault } from "../../../physics/outcome.ts";
import { Button } from "../../parts/Button.tsx";
import { FaultNotice } from "../../parts/FaultNotice.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { keepReferencePack } from "../../referencePack.ts";
import { countWords, momentText } from "../words.ts";
import type { SharedState } from "./sharedRun.ts";
import type { Shared } from "./useShared.ts";

const stateWords: { readonly [State in SharedState["state"]]: string } = {
  connecting: "Connecting …",
  on: "Connected.",
  off: "No connection. You can work on; it is told once there is one.",
  refused: "Not connected.",
};

const changedElsewhere: Fault = {
  code: "packChangedElsewhere",
  sentence: [
    "The library was just changed in another tab of this review desk. Look at it, then tap again.",
  ],
};

/** Who is signed in to the shared desk, and whether it is reached. */
export function SharedBar({ shared }: { shared: Shared }) {
  const file = useRef<HTMLInputElement>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const { state, waiting, packThere } = shared;
  const chooser = (
    <input
      ref={file}
      type="file"
      class="unseen"
      tabIndex={-1}
      aria-label="Credential file"
      onChange={async (event) => {
        const input = event.currentTarget;
        const [chosen] = input.files ?? [];
        input.value = "";
        if (chosen) setFault(await shared.signIn(chosen));
      }}
    />
  );
  if (state === null) {
    return (
      <Notice tone="info">
        <p>
          This review desk can share its checks with others. Sign in with the credential file that
          you were given; it is saved in this browser.
        </p>
        {chooser}
        <div class="row">
          <Button look="main" onClick={() => file.current?.click()}>
            Sign in
          </Button>
        </div>
        {fault && <FaultNotice fault={fault} />}
      </Notice>
    );
  }
  return (
    <section class="desk-shared" aria-label="Shared desk" data-shared={state.state}>
      <p role="status">
        Shared desk: signed in as <strong>{state.person || "nobody"}</strong>.{" "}
        {stateWords[state.state]}
        {waiting.length > 0 && ` ${countWords(waiting.length, "thing")} still to be told.`}
      </p>
      <Button look="quiet" onClick={shared.signOut}>
        Sign out
      </Button>
      {packThere && (
        <Notice tone="info">
          <p>
            <strong>{packThere.by}</strong> put a version of the library “
            <bdi>{packThere.pack.name}</bdi>” there, {momentText(packThere.at)}.
          </p>
          <div class="row">
            <Button onClick={shared.forgetPack}>Not now</Button>
            <Button
              look="main"
              onClick={async () => {
                const kept = await keepReferencePack(packThere.pack);
                if (kept.kind === "kept") shared.forgetPack();
                else setFault(kept.kind === "notKept" ? kept.fault : changedElsewhere);
              }}
            >
              Use it at this review desk
            </Button>
          </div>
        </Notice>
      )}
      {fault && <FaultNotice fault={fault} />}
      {state.fault && state.state !== "off" && <FaultNotice fault={state.fault} />}
    </section>
  );
}
