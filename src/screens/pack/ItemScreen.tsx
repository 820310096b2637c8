import type { ComponentChildren } from "preact";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { packHref } from "../addresses.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import type { ItemEditing } from "./useItemDraft.ts";

/** The frame of one item's editing: heading, what is wrong, and “Keep” within a thumb's reach. */
export function ItemScreen({
  heading,
  editing,
  onKeep,
  children,
}: {
  heading: string;
  editing: ItemEditing;
  onKeep: () => void;
  children: ComponentChildren;
}) {
  const focus = useHeadingFocus(heading);
  const { faults, draft, changed, overtaken } = editing;
  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={packHref} icon="back" label={messages.toPartsLibrary} />
          <span class="screen-name">{messages.partsLibrary}</span>
        </>
      }
      actions={
        <>
          {changed && (
            <Button icon="undo" onClick={editing.discard}>
              {messages.asItWas}
            </Button>
          )}
          <Button look="main" icon="tick" onClick={onKeep}>
            {messages.save}
          </Button>
        </>
      }
    >
      <h1 ref={focus} tabIndex={-1}>
        {heading}
      </h1>
      {changed && (
        <p class="small soft" role="status">
          {messages.changedNotInLibrary}
        </p>
      )}
      {overtaken && (
        <Notice tone="care" live>
          <p>{messages.libraryHasBeenChanged}</p>
        </Notice>
      )}
      {children}
      {faults.length > 0 && (
        <Notice tone="no" live>
          <p>{messages.notSavedYet}</p>
          <ul class="plain-list">
            {faults.map(({ field, sentence }) => {
              const text = sentenceText(sentence, draft.unit);
              return <li key={`${field} ${text}`}>{text}</li>;
            })}
          </ul>
        </Notice>
      )}
    </Screen>
  );
}

/** The item of the address is not in the pack. */
export function NoSuchItem({ what }: { what: string }) {
  const focus = useHeadingFocus(what);
  return (
    <Screen
      top={<span class="screen-name">{messages.partsLibrary}</span>}
      actions={
        <ButtonLink look="main" href={packHref}>
          {messages.toPartsLibrary}
        </ButtonLink>
      }
    >
      <h1 ref={focus} tabIndex={-1}>
        {messages.thisIsNotIn({ what })}
      </h1>
      <p>{messages.itMayHaveBeen}</p>
    </Screen>
  );
}
