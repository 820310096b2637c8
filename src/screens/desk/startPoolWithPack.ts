import { createPool, type Pool } from "../../compute/pool.ts";
import { referencePack } from "../referencePack.ts";

/** A pool whose workers hold readings against the pack in use. */
export function startPoolWithPack(): Pool {
  return createPool({ pack: referencePack() });
}
