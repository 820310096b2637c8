import demonstration from "../../../demo-data/pack.json";
import type { Pack } from "./pack.ts";

/** The demonstration pack: invented platforms and stops. A test holds it to the reader's rules. */
export const demoPack = demonstration as unknown as Pack;
