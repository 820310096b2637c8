import * as messages from "../../words/compiled/screens/guide.ts";
import type { CautionPictureName } from "../drawings/CautionPicture.tsx";

export type CautionId = `caution.${CautionPictureName}`;

export interface Caution {
  readonly id: CautionId;
  readonly picture: CautionPictureName;
  readonly words: string;
}

/** What must be acknowledged before anything is measured. */
export const levelCautions: readonly Caution[] = [
  {
    id: "caution.ground",
    picture: "ground",
    words: messages.levelFirmGroundFront,
  },
  {
    id: "caution.jack",
    picture: "jack",
    words: messages.neverUnderVehicleHeld,
  },
  {
    id: "caution.energy",
    picture: "energy",
    words: messages.springsAndGasShocks,
  },
  {
    id: "caution.loads",
    picture: "loads",
    words: messages.tallerStopLimitsUpward,
  },
  {
    id: "caution.travel",
    picture: "travel",
    words: messages.beforeDrivingWithChanged,
  },
  {
    id: "caution.rules",
    picture: "rules",
    words: messages.localRulesOnRaised,
  },
  {
    id: "caution.screening",
    picture: "screening",
    words: messages.resultScreensInstallationIt,
  },
];

/** What a raised vehicle adds. */
export const raisedCautions: readonly Caution[] = [
  {
    id: "caution.raised",
    picture: "raised",
    words: messages.raisedVehicleHandlesBrakes,
  },
  {
    id: "caution.qualified",
    picture: "qualified",
    words: messages.brakeHosesAbsWires,
  },
];

export type CautionLevel = "level" | "raised";

export function cautionsOf(level: CautionLevel): readonly Caution[] {
  return level === "raised" ? [...raisedCautions, ...levelCautions] : levelCautions;
}
