import type { LayoutKind } from "../../../physics/fitment.ts";
import { add } from "../../shapes/geometry.ts";
import { drawnNumbers, type PicturedReading } from "../drawnNumbers.ts";
import { Scene } from "../Scene.tsx";
import { skeletonOf } from "../skeletonOf.ts";
import { ChoicePicture } from "./ChoicePicture.tsx";

/** How the stop stands on the vehicle as it is. */
export type StopStand = "gap" | "touching" | "pressed" | "missing";

const asReading: { readonly [Stand in StopStand]: PicturedReading } = {
  gap: "gap",
  touching: "gap",
  pressed: "pressedHeight",
  missing: "seatToPad",
};

/** The stop of this layout close up: with air before it, touching, pressed, or gone. */
export function StandPicture({
  kind,
  stopOn,
  stand,
}: {
  readonly kind: LayoutKind;
  readonly stopOn?: "frame" | "arm" | undefined;
  readonly stand: StopStand;
}) {
  const reading = asReading[stand];
  const numbers = drawnNumbers(kind, reading, {
    gap: stand === "gap" ? 38 : 0,
    freeHeight: 70,
    pressedHeight: 46,
    seatToPad: 100,
  });
  const skeleton = skeletonOf(kind, reading, numbers, stopOn);
  const { pad, axis } = skeleton;
  const points = [-28, 136].flatMap((along) =>
    [-86, 86].map((side) =>
      add(add(pad, axis, (skeleton.stopOnArm ? -1 : 1) * along), { x: side, y: 0 }),
    ),
  );
  return (
    <ChoicePicture points={points}>
      {(view) => <Scene view={view} skeleton={skeleton} freeHeight={numbers.freeHeight} />}
    </ChoicePicture>
  );
}
