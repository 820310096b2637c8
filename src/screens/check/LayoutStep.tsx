import { layoutKinds, layoutRegistry } from "../../physics/readings/index.ts";
import { chooseLayout } from "../../records/filling/changes.ts";
import {
  type ArmRole,
  armRoleChoice,
  chooseArmRole,
  chooseMeeting,
  hasArm,
  type Meeting,
  meetingChoice,
} from "../../records/filling/layoutChoices.ts";
import { ArmRolePicture } from "../drawings/choices/ArmRolePicture.tsx";
import { StopOnPicture } from "../drawings/choices/StopOnPicture.tsx";
import { LayoutPicture } from "../drawings/LayoutPicture.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { Choices } from "../parts/Choices.tsx";

const roles: readonly { value: ArmRole; name: string; hint: string }[] = [
  { value: "lower", name: "The lower of two arms", hint: "Another arm above it." },
  { value: "upper", name: "The upper of two arms", hint: "Another arm below it." },
  { value: "underStrut", name: "The arm under a strut", hint: "No arm above it." },
  {
    value: "carriesWheel",
    name: "A trailing arm",
    hint: "It carries the wheel itself and runs along the vehicle.",
  },
];

const meetings: readonly { value: Meeting; name: string; hint: string }[] = [
  {
    value: "frame",
    name: "A flat pad on the arm",
    hint: "The stop hangs from the frame. The pad turns with the arm.",
  },
  {
    value: "arm",
    name: "The stop is on the arm",
    hint: "It turns with the arm and meets a flat pad on the frame.",
  },
  {
    value: "round",
    name: "A round part",
    hint: "A tube, a dome or a rounded bracket meets the stop.",
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
          legend="Tap the drawing that looks like your vehicle"
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
            legend="Which arm is it?"
            value={role}
            onChange={(chosen) => change((current) => chooseArmRole(current, chosen))}
            options={[
              ...roles.map((each) => ({
                ...each,
                picture: <ArmRolePicture role={each.value} />,
              })),
              {
                value: "unsaid" as const,
                name: "I can't tell",
                hint: "The answer then has a wider margin of error.",
              },
            ]}
          />
        </div>
      )}
      {kind !== null && layoutRegistry[kind].saysStopOn && role !== null && (
        <div class="layout-choices">
          <Choices
            legend="What is flat, and what turns with the arm?"
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
