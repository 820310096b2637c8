import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import type { PackStop } from "../../../records/pack/pack.ts";
import { referencePack } from "../../referencePack.ts";
import { platformOfCheck } from "../platforms.ts";

/** The stops of the reference pack; the one that this platform usually has comes first. */
export function packStops(stored: StoredCheck): readonly PackStop[] {
  const usual = platformOfCheck(stored)?.usualStop;
  return [...referencePack().stops].sort((a, b) => Number(b.id === usual) - Number(a.id === usual));
}
