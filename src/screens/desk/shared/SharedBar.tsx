import { useRef, useState } from "preact/hooks";
import type { Fault } from "../../../physics/outcome.ts";
import * as messages from "../../../words/compiled/screens/desk/shared.ts";
import { filled } from "../../filled.ts";
import { Button } from "../../parts/Button.tsx";
import { FaultNotice } from "../../parts/FaultNotice.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { keepReferencePack } from "../../referencePack.ts";
import { countWords, momentText } from "../words.ts";
import type { SharedState } from "./sharedRun.ts";
import type { Shared } from "./useShared.ts";

const stateWords: { readonly [State in SharedState["state"]]: string } = {
  connecting: messages.connecting,
  on: messages.connected,
  off: messages.noConnectionYouCan,
  refused: messages.notConnected,
};

const changedElsewhere: Fault = {
  code: "packChangedElsewhere",
  sentence: [messages.libraryWasJustChanged],
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
      aria-label={messages.credentialFile}
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
        <p>{messages.thisReviewDeskCan}</p>
        {chooser}
        <div class="row">
          <Button look="main" onClick={() => file.current?.click()}>
            {messages.signIn}
          </Button>
        </div>
        {fault && <FaultNotice fault={fault} />}
      </Notice>
    );
  }
  return (
    <section class="desk-shared" aria-label={messages.sharedDesk} data-shared={state.state}>
      <p role="status">
        {filled(messages.sharedDeskSignedIn, {
          person: <strong>{state.person || "nobody"}</strong>,
          state: stateWords[state.state],
        })}
        {waiting.length > 0 &&
          messages.stillToBeTold({ count: countWords(waiting.length, "thing") })}
      </p>
      <Button look="quiet" onClick={shared.signOut}>
        {messages.signOut}
      </Button>
      {packThere && (
        <Notice tone="info">
          <p>
            {filled(messages.putVersionOfLibrary, { by: <strong>{packThere.by}</strong> })}
            <bdi>{packThere.pack.name}</bdi>
            {messages.there({ at: momentText(packThere.at) })}
          </p>
          <div class="row">
            <Button onClick={shared.forgetPack}>{messages.notNow}</Button>
            <Button
              look="main"
              onClick={async () => {
                const kept = await keepReferencePack(packThere.pack);
                if (kept.kind === "kept") shared.forgetPack();
                else setFault(kept.kind === "notKept" ? kept.fault : changedElsewhere);
              }}
            >
              {messages.useItAtThis}
            </Button>
          </div>
        </Notice>
      )}
      {fault && <FaultNotice fault={fault} />}
      {state.fault && state.state !== "off" && <FaultNotice fault={state.fault} />}
    </section>
  );
}
