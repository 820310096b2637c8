import type { State } from "../../physics/fitment.ts";
import type { RestoreCounts } from "../../storage/restoreBackup.ts";
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
    name: "Saved for good",
    words:
      "This browser won't clear Stopfit's data on its own. A phone can still be lost or break: save a backup now and then.",
  },
  mayEvict: {
    tone: "care",
    name: "The browser may clear the checks",
    words:
      "It may do so when the phone runs short of space, or after weeks without opening Stopfit. Install Stopfit on the home screen, or save a backup.",
  },
  unknown: {
    tone: "unsure",
    name: "Can't tell whether the checks are saved for good",
    words:
      "This browser does not say. Install Stopfit on the home screen, and save a backup now and then.",
  },
};

/**
 * On Apple's phones the time is known: seven days on which the browser is used and this site is not
 * (WebKit's own account of its limit on storage that scripts write).
 */
const deletedAfterSevenDays = {
  tone: "care",
  name: "The browser deletes what is not opened for a week",
  words:
    "After 7 days of use without a visit to Stopfit it deletes the checks. Save a backup, then install Stopfit: the installed app is not counted with the browser.",
} as const;

/** What an app on the home screen need not be told: to be put there. */
const installedWords = {
  mayEvict:
    "It may do so when the phone runs short of space, or after weeks without opening Stopfit. Save a backup now and then.",
  unknown: "This browser does not say. Save a backup now and then.",
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
  return count === 1 ? "1 check" : `${count} checks`;
}

export function onlyHereText(count: number): string {
  return count === 1
    ? "1 check exists only on this phone."
    : `${count} checks exist only on this phone.`;
}

export function restoredText({ added, present, joined }: RestoreCounts): string {
  const isNew = added - joined;
  const parts = [
    `${isNew} added`,
    ...(joined > 0 ? [`${joined} joined with what is here`] : []),
    ...(present > 0 ? [`${present} here already`] : []),
  ];
  return `Restored: ${parts.join(", ")}.`;
}
