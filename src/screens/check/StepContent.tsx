import type { StepProps } from "../guide/stepProps.ts";
import { AxleStep } from "./AxleStep.tsx";
import { CautionsStep } from "./CautionsStep.tsx";
import { FinishStep } from "./FinishStep.tsx";
import { LayoutStep } from "./LayoutStep.tsx";
import { LimitsStep } from "./LimitsStep.tsx";
import { LinkageStep } from "./LinkageStep.tsx";
import { RightGeometryStep } from "./RightGeometryStep.tsx";
import { RulesStep } from "./RulesStep.tsx";
import { ReadingStep } from "./reading/ReadingStep.tsx";
import { CornerMassStep } from "./ride/CornerMassStep.tsx";
import { DampingStep } from "./ride/DampingStep.tsx";
import { PayloadStep } from "./ride/PayloadStep.tsx";
import { TyreRateStep } from "./ride/TyreRateStep.tsx";
import { UnsprungMassStep } from "./ride/UnsprungMassStep.tsx";
import { WheelRateStep } from "./ride/WheelRateStep.tsx";
import { StandingStep } from "./StandingStep.tsx";
import { CurveStep } from "./stop/CurveStep.tsx";
import { StopHeightStep } from "./stop/StopHeightStep.tsx";
import { StopStep } from "./stop/StopStep.tsx";
import { VehicleStep } from "./VehicleStep.tsx";

const screens: { readonly [id: string]: (props: StepProps) => preact.JSX.Element | null } = {
  vehicle: VehicleStep,
  cautions: CautionsStep,
  standing: StandingStep,
  axle: AxleStep,
  layout: LayoutStep,
  linkage: LinkageStep,
  "right.geometry": RightGeometryStep,
  "left.limits": LimitsStep,
  "right.limits": LimitsStep,
  "left.cornerMassKg": CornerMassStep,
  "right.cornerMassKg": CornerMassStep,
  stop: StopStep,
  "stop.freeHeight": StopHeightStep,
  "stop.curve": CurveStep,
  "ride.payloadPerCornerKg": PayloadStep,
  "ride.unsprungMassKg": UnsprungMassStep,
  "ride.wheelRateNPerMm": WheelRateStep,
  "ride.tyreRateNPerMm": TyreRateStep,
  "ride.damperBumpNsPerMm": DampingStep,
  rules: RulesStep,
  finish: FinishStep,
};

export function StepContent(props: StepProps) {
  const { id, reading } = props.step;
  const Content = screens[id];
  if (Content) return <Content {...props} />;
  return reading && <ReadingStep {...props} id={reading} />;
}
