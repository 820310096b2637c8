import type { ComponentChildren } from "preact";
import { sentenceText } from "../../records/entry/quantityText.ts";
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
          <ButtonLink look="quiet" href={packHref} icon="back" label="To the parts library" />
          <span class="screen-name">Parts library</span>
        </>
      }
      actions={
        <>
          {changed && (
            <Button icon="undo" onClick={editing.discard}>
              As it was
            </Button>
          )}
          <Button look="main" icon="tick" onClick={onKeep}>
            Save
          </Button>
        </>
      }
    >
      <h1 ref={focus} tabIndex={-1}>
        {heading}
      </h1>
      {changed && (
        <p class="small soft" role="status">
          Changed, not in the library yet. What you typed stays here until you save it.
        </p>
      )}
      {overtaken && (
        <Notice tone="care" live>
          <p>
            The library has been changed since you began. You see what you had typed; “As it was”
            shows what the library has now.
          </p>
        </Notice>
      )}
      {children}
      {faults.length > 0 && (
        <Notice tone="no" live>
          <p>Not saved yet:</p>
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
      top={<span class="screen-name">Parts library</span>}
      actions={
        <ButtonLink look="main" href={packHref}>
          To the parts library
        </ButtonLink>
      }
    >
      <h1 ref={focus} tabIndex={-1}>
        This {what} is not in the library
      </h1>
      <p>It may have been deleted, or another library has been opened since.</p>
    </Screen>
  );
}
