import type { State } from "../../physics/fitment.ts";
import type { RestoreCounts } from "../../storage/restoreBackup.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import type { Persistence } from "./persistence.ts";

const persistenceWords: {
  readonly [Which in Persistence]: {
    readonly tone: State;
    readonly name: string;
    readonly words: string;
  };
} = {
  kept: {
    tone: "ok",
    name: messages.savedForGood,
    words: messages.thisBrowserWontClear,
  },
  mayEvict: {
    tone: "care",
    name: messages.browserMayClearChecks,
    words: messages.itMayDoSo,
  },
  unknown: {
    tone: "unsure",
    name: messages.cantTellWhetherChecks,
    words: messages.thisBrowserDoesNotSay,
  },
};

/**
 * On Apple's phones the time is known: seven days on which the browser is used and this site is not
 * (WebKit's own account of its limit on storage that scripts write).
 */
const deletedAfterSevenDays = {
  tone: "care",
  name: messages.browserDeletesWhatIs,
  words: messages.after7DaysOf,
} as const;

/** What an app on the home screen need not be told: to be put there. */
const installedWords = {
  mayEvict: messages.itMayDoSoWhen,
  unknown: messages.thisBrowserDoesNotSaySave,
} as const;

export function safekeepingWords(
  persistence: Persistence,
  { inAppleBrowser, installed }: { inAppleBrowser: boolean; installed: boolean },
) {
  const usual = persistenceWords[persistence];
  if (persistence === "kept") return usual;
  if (inAppleBrowser) return deletedAfterSevenDays;
  return installed ? { ...usual, words: installedWords[persistence] } : usual;
}

export function checksText(count: number): string {
  return count === 1 ? messages.n1Check : messages.checks({ count });
}

export function onlyHereText(count: number): string {
  return count === 1 ? messages.n1CheckExistsOnly : messages.checksExistOnlyOn({ count });
}

export function restoredText({ added, present, joined }: RestoreCounts): string {
  const isNew = added - joined;
  const parts = [
    messages.added({ isNew }),
    ...(joined > 0 ? [messages.joinedWithWhatIs({ joined })] : []),
    ...(present > 0 ? [messages.hereAlready({ present })] : []),
  ];
  return messages.restored({ parts: parts.join(", ") });
}
