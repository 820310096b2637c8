import type { Pack } from "../../../records/pack/pack.ts";

/** Whom a check goes to, by the parts library. */
export function makerName({ maker }: Pick<Pack, "maker">): string {
  return maker?.name.trim() || "the maker";
}
