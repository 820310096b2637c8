import { useRef } from "preact/hooks";
import * as messages from "../../words/compiled/screens/desk.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { canChooseFolder } from "../parts/folderChoice.ts";
import { deskPartsHref, deskPeopleHref, deskScanHref } from "./deskRoutes.ts";
import { isUnderWay } from "./ImportPanel.tsx";
import { sourcesOfFiles } from "./sources.ts";
import type { Desk } from "./useDesk.ts";

/** What brings checks to the desk, and the ways to its other pages; in the top row or folded away where a list needs the room. */
export function WaysIn({
  desk,
  boxed,
  onPaste,
}: {
  desk: Desk;
  /** Alone on the page, where files are dropped. */
  boxed: boolean;
  onPaste: () => void;
}) {
  const files = useRef<HTMLInputElement>(null);
  const folder = useRef<HTMLInputElement>(null);
  const off = !desk.store || isUnderWay(desk.importing);
  const take = (input: HTMLInputElement) => {
    const chosen = [...(input.files ?? [])];
    input.value = "";
    if (chosen.length > 0) desk.take(sourcesOfFiles(chosen));
  };
  return (
    <div class={boxed ? "desk-ways desk-ways-box" : "desk-ways"}>
      {boxed && canChooseFolder() && <p>{messages.dropFilesOrFolder}</p>}
      <input
        ref={files}
        type="file"
        multiple
        class="unseen"
        tabIndex={-1}
        aria-label={messages.filesToTakeIn}
        onChange={(event) => take(event.currentTarget)}
      />
      <input
        ref={(element) => {
          folder.current = element;
          element?.setAttribute("webkitdirectory", "");
        }}
        type="file"
        multiple
        class="unseen"
        tabIndex={-1}
        aria-label={messages.folderToTakeIn}
        onChange={(event) => take(event.currentTarget)}
      />
      <div class="row">
        <Button look="main" icon="file" disabled={off} onClick={() => files.current?.click()}>
          {messages.chooseFiles}
        </Button>
        {canChooseFolder() && (
          <Button disabled={off} onClick={() => folder.current?.click()}>
            {messages.chooseFolder}
          </Button>
        )}
        <Button disabled={off} onClick={onPaste}>
          {messages.pasteLinks}
        </Button>
        <ButtonLink href={deskScanHref}>{messages.scanCode}</ButtonLink>
        <ButtonLink href={deskPartsHref}>{messages.wherePartWent}</ButtonLink>
        <ButtonLink href={deskPeopleHref}>{messages.twoPeople}</ButtonLink>
      </div>
    </div>
  );
}
