import type { Stop } from "../../../physics/fitment.ts";

export const packStops: readonly Stop[] = [];
