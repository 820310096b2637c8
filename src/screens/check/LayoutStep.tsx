import type { ArmRole } from "../../physics/fitment.ts";
import { layoutKinds, layoutRegistry } from "../../physics/readings/index.ts";
import { chooseLayout } from "../../records/filling/changes.ts";
import {
  armRoleChoice,
  chooseArmRole,
  chooseMeeting,
  hasArm,
  type Meeting,
  meetingChoice,
} from "../../records/filling/layoutChoices.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { ArmRolePicture } from "../drawings/choices/ArmRolePicture.tsx";
import { StopOnPicture } from "../drawings/choices/StopOnPicture.tsx";
import { LayoutPicture } from "../drawings/LayoutPicture.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { Choices } from "../parts/Choices.tsx";

const roles: readonly { value: ArmRole; name: string; hint: string }[] = [
  { value: "lower", name: messages.lowerOfTwoArms, hint: messages.anotherArmAboveIt },
  { value: "upper", name: messages.upperOfTwoArms, hint: messages.anotherArmBelowIt },
  { value: "underStrut", name: messages.armUnderStrut, hint: messages.noArmAboveIt },
  {
    value: "carriesWheel",
    name: messages.trailingArm,
    hint: messages.itCarriesWheelItself,
  },
];

const meetings: readonly { value: Meeting; name: string; hint: string }[] = [
  {
    value: "frame",
    name: messages.flatPadOnArm,
    hint: messages.stopHangsFromFrame,
  },
  {
    value: "arm",
    name: messages.stopIsOnArm,
    hint: messages.itTurnsWithArm,
  },
  {
    value: "round",
    name: messages.roundPart,
    hint: messages.tubeDomeOrRounded,
  },
];

/** Where the stop sits, by picture; of an arm also which one it is, and what is flat and turns. */
export function LayoutStep({ stored, change }: StepProps) {
  const kind = stored.record.layout?.kind ?? null;
  const role = armRoleChoice(stored);
  return (
    <>
      <div class="layout-choices">
        <Choices
          legend={messages.tapDrawingThatLooks}
          value={kind}
          onChange={(chosen) => change((current) => chooseLayout(current, chosen))}
          options={layoutKinds.map((value) => ({
            value,
            ...layoutsOnScreen[value].words.choice,
            picture: (
              <span class="layout-picture" aria-hidden="true">
                <LayoutPicture kind={value} />
              </span>
            ),
          }))}
        />
      </div>
      {hasArm(stored) && (
        <div class="layout-choices">
          <Choices<ArmRole | "unsaid">
            legend={messages.whichArmIsIt}
            value={role}
            onChange={(chosen) => change((current) => chooseArmRole(current, chosen))}
            options={[
              ...roles.map((each) => ({
                ...each,
                picture: <ArmRolePicture role={each.value} />,
              })),
              {
                value: "unsaid" as const,
                name: messages.iCantTell,
                hint: messages.answerThenHasWider,
              },
            ]}
          />
        </div>
      )}
      {kind !== null && layoutRegistry[kind].saysStopOn && role !== null && (
        <div class="layout-choices">
          <Choices
            legend={messages.whatIsFlatAnd}
            value={meetingChoice(stored)}
            onChange={(chosen) => change((current) => chooseMeeting(current, chosen))}
            options={meetings.map((each) => ({
              ...each,
              picture: <StopOnPicture meeting={each.value} />,
            }))}
          />
        </div>
      )}
    </>
  );
}
