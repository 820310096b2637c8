import type { ArmRole } from "../../../physics/fitment.ts";
import { linkageFromFront } from "../../layouts/linkageFromFront.ts";
import { add, belowHorizontal, tyreRadius, tyreWidth } from "../../shapes/geometry.ts";
import { Bar, Ground, Joint, Line, WheelFromSide } from "../../shapes/parts.tsx";
import { type DrawnNumbers, drawnNumbers } from "../drawnNumbers.ts";
import { LinkageScene } from "../linkage/LinkageScene.tsx";
import { ChoicePicture } from "./ChoicePicture.tsx";

/** Which arm of the suspension the stop's arm is: that one stands out. */
export function ArmRolePicture({ role }: { readonly role: ArmRole }) {
  if (role === "carriesWheel") return <TrailingArm />;
  const strut = role === "underStrut";
  const numbers: DrawnNumbers = drawnNumbers(strut ? "strut" : "arm", "gap", {
    stopLean: strut ? 7 : 0,
  });
  const linkage = linkageFromFront(numbers, strut, role === "upper" ? "upper" : "lower");
  const { wheelCentre, lowerPivot, upper, top } = linkage;
  return (
    <ChoicePicture
      points={[
        { x: Math.min(lowerPivot.x, upper?.pivot.x ?? 0) - 90, y: wheelCentre.y - 200 },
        { x: wheelCentre.x + tyreWidth / 2, y: Math.max(top?.y ?? 0, wheelCentre.y + 280) },
      ]}
    >
      {(view) => (
        <LinkageScene
          view={view}
          linkage={linkage}
          strutLean={numbers.stopLean}
          standsOut={role === "upper" ? "upper" : "lower"}
        />
      )}
    </ChoicePicture>
  );
}

/** Seen from the side: the arm runs back from its pivot and carries the wheel itself. */
function TrailingArm() {
  const pivot = { x: 0, y: 0 };
  const wheelCentre = add(pivot, belowHorizontal(8), 520);
  return (
    <ChoicePicture
      points={[
        { x: -120, y: wheelCentre.y - tyreRadius },
        { x: wheelCentre.x + tyreRadius, y: wheelCentre.y + tyreRadius },
      ]}
    >
      {(view) => (
        <g>
          <Ground
            view={view}
            from={-120}
            to={wheelCentre.x + tyreRadius}
            y={wheelCentre.y - tyreRadius}
          />
          <WheelFromSide view={view} centre={wheelCentre} />
          <Line
            view={view}
            closed
            points={[
              { x: -120, y: 60 },
              { x: 520, y: 250 },
              { x: 520, y: 330 },
              { x: -120, y: 140 },
            ]}
          />
          <g class="stands-out">
            <Bar view={view} tone="part" width={46} points={[pivot, wheelCentre]} />
            <Joint view={view} at={pivot} />
          </g>
        </g>
      )}
    </ChoicePicture>
  );
}
