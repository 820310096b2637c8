import type { Pack } from "../../../records/pack/pack.ts";
import * as messages from "../../../words/compiled/screens/exchange/maker.ts";

/** Whom a check goes to, by the parts library. */
export function makerName({ maker }: Pick<Pack, "maker">): string {
  return maker?.name.trim() || messages.maker;
}
