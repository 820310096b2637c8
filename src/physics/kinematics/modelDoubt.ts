import type { Linkage } from "../fitment.ts";
import { linkages } from "./linkages.ts";

/** What a planar model itself may be off, as the standard deviation of a factor m on every z. */
export const modelDoubt = Object.fromEntries(
  Object.entries(linkages).map(([linkage, { doubt }]) => [linkage, doubt]),
) as Readonly<Record<Linkage, number>>;
