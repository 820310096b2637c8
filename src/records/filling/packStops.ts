import type { StoredCheck } from "../check/storedCheck.ts";
import { isOffered, type Pack, type PackStop } from "../pack/pack.ts";
import { platformOfCheck } from "./platforms.ts";

/**
 * The stops of the parts library; the one that this platform usually has comes first, what can't be
 * ordered any more last: it may still be what is fitted.
 */
export function packStops(stored: StoredCheck, pack: Pack): readonly PackStop[] {
  const usual = platformOfCheck(stored, pack)?.usualStop;
  const place = (stop: PackStop) => (stop.id === usual ? 0 : isOffered(stop) ? 1 : 2);
  return [...pack.stops].sort((a, b) => place(a) - place(b));
}
