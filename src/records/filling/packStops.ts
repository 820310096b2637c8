import type { StoredCheck } from "../check/storedCheck.ts";
import type { Pack, PackStop } from "../pack/pack.ts";
import { platformOfCheck } from "./platforms.ts";

/** The stops of the reference pack; the one that this platform usually has comes first. */
export function packStops(stored: StoredCheck, pack: Pack): readonly PackStop[] {
  const usual = platformOfCheck(stored, pack)?.usualStop;
  return [...pack.stops].sort((a, b) => Number(b.id === usual) - Number(a.id === usual));
}
