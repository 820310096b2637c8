import * as messages from "../../words/compiled/screens/guide.ts";
/** What the vehicle must be before it is measured; each has its picture. */
export const standingSteps = [
  {
    id: "tyres",
    words: messages.tiresAtTheirDriving,
    hint: messages.coldAsVehicleIs,
  },
  {
    id: "load",
    words: messages.itsUsualLoadIs,
    hint: messages.fuelToolsRackBumper,
  },
  {
    id: "settled",
    words: messages.rolledAndBounced,
    hint: messages.rollItLengthForward,
  },
  {
    id: "wheels",
    words: messages.onItsOwnWheels,
    hint: messages.noJackNoLift,
  },
] as const;
