import { useId, useRef, useState } from "preact/hooks";
import { isInstalledOnApple } from "../../sharing/thisDevice.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { scanHref } from "./shareRoutes.ts";
import { useDrop } from "./useDrop.ts";
import "./exchange.css";

export interface OpenWaysProps {
  /** Why the way before did not lead to a check. */
  readonly notice?: preact.ComponentChildren;
  onFiles(files: readonly File[]): void;
  onText(text: string): void;
  onLeave(): void;
}

/** The ways in for what someone sent: a file, a code, a link. */
export function OpenWays({ notice, onFiles, onText, onLeave }: OpenWaysProps) {
  const id = useId();
  const heading = useHeadingFocus("open ways");
  const picker = useRef<HTMLInputElement>(null);
  const [text, setText] = useState("");
  const over = useDrop((transfer) => {
    const files = [...transfer.files];
    if (files.length > 0) onFiles(files);
    else onText(transfer.getData("text/plain"));
  });
  const linkFirst = isInstalledOnApple();
  const fromLink = (
    <Card heading="From a link">
      <p>
        {linkFirst
          ? "A tapped link opens in the browser, not in this app. Copy the link and paste it here."
          : "Tap the link where it was sent to you, or paste it here with whatever is around it."}
      </p>
      <label class="field" for={id}>
        <span class="field-label">Link or message</span>
        <textarea
          id={id}
          class="paste-text"
          rows={3}
          value={text}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <Button wide onClick={() => onText(text)} disabled={text.trim() === ""}>
        Open the link
      </Button>
    </Card>
  );
  return (
    <Screen
      top={<span class="screen-name brand">Stopfit</span>}
      actions={<Button onClick={onLeave}>All checks</Button>}
    >
      <h1 ref={heading} tabIndex={-1}>
        Open a check or a reply
      </h1>
      {notice}
      {linkFirst && fromLink}
      <Card heading={over ? "Drop it here" : "From a file"}>
        <p>
          A check, a review desk's reply or a backup that was saved or shared as a file. Several at
          once if you like, or drop them here.
        </p>
        <input
          ref={picker}
          type="file"
          multiple
          accept=".json,.txt,application/json,text/plain"
          class="unseen"
          tabIndex={-1}
          aria-label="Files to open"
          onChange={(event) => {
            const files = [...(event.currentTarget.files ?? [])];
            event.currentTarget.value = "";
            if (files.length > 0) onFiles(files);
          }}
        />
        <Button look="main" icon="file" wide onClick={() => picker.current?.click()}>
          Choose a file
        </Button>
      </Card>
      <Card heading="From a code">
        <p>QR codes that another device shows on its screen.</p>
        <ButtonLink wide href={scanHref}>
          Scan a code
        </ButtonLink>
      </Card>
      {!linkFirst && fromLink}
    </Screen>
  );
}
