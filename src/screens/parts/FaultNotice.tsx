import type { ComponentChildren } from "preact";
import type { Fault } from "../../physics/outcome.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { Notice } from "./Notice.tsx";

export interface FaultNoticeProps {
  readonly fault: Pick<Fault, "sentence">;
  /** What can be done about it. */
  readonly children?: ComponentChildren;
}

export function FaultNotice({ fault, children }: FaultNoticeProps) {
  return (
    <Notice tone="no" live>
      <p>{inModelUnits(fault.sentence)}</p>
      {children}
    </Notice>
  );
}
