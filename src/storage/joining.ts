import type { StoredCheck } from "../records/check/storedCheck.ts";

type Join = (base: StoredCheck, mine: StoredCheck, theirs: StoredCheck) => StoredCheck;

let join: Join | null = null;

/** Fetches what joins two versions of a check. The list shows checks without it; a write asks for it. */
export async function fetchJoining(): Promise<void> {
  try {
    join ??= (await import("./mergeChecks.ts")).mergeChecks;
  } catch {
    // Then two versions are kept beside each other, and the next write tries again.
  }
}

/** Joins two versions that grew from `base`; null while what joins them could not be fetched. */
export function joining(): Join | null {
  return join;
}
