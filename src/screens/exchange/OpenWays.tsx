import { useId, useRef, useState } from "preact/hooks";
import { isInstalledOnApple } from "../../sharing/thisDevice.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
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
  const heading = useHeadingFocus("ways");
  const picker = useRef<HTMLInputElement>(null);
  const [text, setText] = useState("");
  const over = useDrop((transfer) => {
    const files = [...transfer.files];
    if (files.length > 0) onFiles(files);
    else onText(transfer.getData("text/plain"));
  });
  const linkFirst = isInstalledOnApple();
  const fromLink = (
    <Card heading={messages.fromLink}>
      <p>{linkFirst ? messages.tappedLinkOpensIn : messages.tapLinkWhereIt}</p>
      <label class="field" for={id}>
        <span class="field-label">{messages.linkOrMessage}</span>
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
        {messages.openLink}
      </Button>
    </Card>
  );
  return (
    <Screen
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={<Button onClick={onLeave}>{messages.allChecks}</Button>}
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.openCheckOrReply}
      </h1>
      {notice}
      {linkFirst && fromLink}
      <Card heading={over ? messages.dropItHere : messages.fromFile}>
        <p>{messages.checkReviewDesksReply}</p>
        <input
          ref={picker}
          type="file"
          multiple
          accept=".json,.txt,application/json,text/plain"
          class="unseen"
          tabIndex={-1}
          aria-label={messages.filesToOpen}
          onChange={(event) => {
            const files = [...(event.currentTarget.files ?? [])];
            event.currentTarget.value = "";
            if (files.length > 0) onFiles(files);
          }}
        />
        <Button look="main" icon="file" wide onClick={() => picker.current?.click()}>
          {messages.chooseFile}
        </Button>
      </Card>
      <Card heading={messages.fromCode}>
        <p>{messages.qrCodesThatAnother}</p>
        <ButtonLink wide href={scanHref}>
          {messages.scanCode}
        </ButtonLink>
      </Card>
      {!linkFirst && fromLink}
    </Screen>
  );
}
