import { useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { goTo, packHref } from "../addresses.ts";
import { type FieldFault, type ItemDraft, keepDraft, readKeptDraft } from "./itemDraft.ts";
import { type Changed, changePack } from "./packEdits.ts";
import { packMergeHref } from "./packRoutes.ts";

export interface ItemEditing {
  readonly draft: ItemDraft;
  /** The draft was found again, and its item has been changed since it was begun. */
  readonly overtaken: boolean;
  readonly changed: boolean;
  readonly faults: readonly FieldFault[];
  change(update: (draft: ItemDraft) => ItemDraft): void;
  refuse(faults: readonly FieldFault[]): void;
  /** Keeps the pack with the item in it and goes on. */
  keep(pack: Pack, words: string, onward?: string): Promise<void>;
  /** Back to the item as the pack has it. */
  discard(): void;
}

function asFieldFault({ sentence, reading }: Fault): FieldFault {
  return { field: reading ?? "", sentence };
}

/** Where to go after a change: on, or to the merging of two packs that were changed side by side. */
export function goAfter(result: Changed, onward: string): readonly FieldFault[] {
  if (result.kind === "refused") return result.faults.map(asFieldFault);
  goTo(result.kept.kind === "changedElsewhere" ? packMergeHref : onward);
  return [];
}

/** An item while it is edited. What is typed is there again after a reload, until it is kept. */
export function useItemDraft(key: string, base: string, fresh: () => ItemDraft): ItemEditing {
  const [found] = useState(() => readKeptDraft(key));
  const [draft, setDraft] = useState<ItemDraft>(() => found?.draft ?? fresh());
  const [changed, setChanged] = useState(found !== null);
  const [faults, setFaults] = useState<readonly FieldFault[]>([]);
  const latest = useRef(draft);
  const show = (next: ItemDraft): void => {
    latest.current = next;
    setDraft(next);
  };
  return {
    draft,
    changed,
    faults,
    overtaken: found !== null && found.base !== base,
    change(update) {
      const next = update(latest.current);
      show(next);
      // Here, not after the next paint: the page may be gone by then.
      keepDraft(key, { draft: next, base: found?.base ?? base });
      setChanged(true);
      setFaults([]);
    },
    refuse: setFaults,
    async keep(pack, words, onward = packHref) {
      const result = await changePack(pack, words);
      if (result.kind === "changed") {
        setChanged(false);
        keepDraft(key, null);
      }
      setFaults(goAfter(result, onward));
    },
    discard() {
      keepDraft(key, null);
      show(fresh());
      setChanged(false);
      setFaults([]);
    },
  };
}
