import type { LimitKind } from "../../../physics/fitment.ts";
import { type CautionId, levelCautions } from "../../guide/cautions.ts";

/** The caution that belongs to a reading, said again where it is taken. */
export function CautionHere({ id, limit }: { id: string; limit: LimitKind | undefined }) {
  const own = cautionAt(id, limit);
  const caution = levelCautions.find((each) => each.id === own);
  return caution ? <p class="small tone-care">{caution.words}</p> : null;
}

function cautionAt(id: string, limit: LimitKind | undefined): CautionId | null {
  if (limit === "spring" || limit === "damper") return "caution.energy";
  if (/\.(pressedHeight|seatToPad)$/.test(id)) return "caution.jack";
  return null;
}
