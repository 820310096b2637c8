import type { Fault } from "../../physics/outcome.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { Notice } from "./Notice.tsx";

export function FaultNotice({ fault }: { fault: Fault }) {
  return (
    <Notice tone="no" live>
      <p>{inModelUnits(fault.sentence)}</p>
    </Notice>
  );
}
