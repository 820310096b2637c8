import type { LayoutKind } from "../../../physics/fitment.ts";
import type { Stand } from "../../../records/filling/stand.ts";
import { add } from "../../shapes/geometry.ts";
import { drawnNumbers, type PicturedReading } from "../drawnNumbers.ts";
import { Scene } from "../Scene.tsx";
import { skeletonOf } from "../skeletonOf.ts";
import { ChoicePicture } from "./ChoicePicture.tsx";

const asReading: { readonly [Each in Stand]: PicturedReading } = {
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
  readonly stand: Stand;
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
