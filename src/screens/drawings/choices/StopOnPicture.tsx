import type { Meeting } from "../../../records/filling/layoutChoices.ts";
import { add, type Point } from "../../shapes/geometry.ts";
import { Bar, Box, Disc, Plate, StopShape } from "../../shapes/parts.tsx";
import { ChoicePicture } from "./ChoicePicture.tsx";

const inner: Point = { x: -150, y: 16 };
const outer: Point = { x: 170, y: -30 };
const square: Point = { x: 0.142, y: 0.99 };

/** Stop and pad close up: what is flat, and what turns with the arm. */
export function StopOnPicture({ meeting }: { readonly meeting: Meeting }) {
  const pad = { x: 0, y: 30 };
  return (
    <ChoicePicture
      points={[
        { x: -150, y: -50 },
        { x: 150, y: 190 },
      ]}
    >
      {(view) => (
        <g>
          <Box view={view} low={{ x: -90, y: 150 }} high={{ x: 90, y: 205 }} round={6} />
          <Bar view={view} tone="part" width={44} points={[inner, outer]} />
          {meeting === "arm" ? (
            <g>
              <Plate view={view} middle={{ x: 4, y: 148 }} axis={{ x: 0, y: 1 }} half={54} />
              <StopShape
                view={view}
                top={{ x: 0, y: 20 }}
                axis={{ x: -square.x, y: -square.y }}
                height={92}
                freeHeight={92}
              />
            </g>
          ) : (
            <g>
              {meeting === "frame" ? (
                <Plate view={view} middle={add(pad, square, -8)} axis={square} half={54} />
              ) : (
                <Disc view={view} tone="part" centre={{ x: 0, y: 4 }} radius={34} />
              )}
              <Plate view={view} middle={{ x: 0, y: 148 }} axis={{ x: 0, y: 1 }} half={40} />
              <StopShape
                view={view}
                top={{ x: 0, y: 146 }}
                axis={{ x: 0, y: 1 }}
                height={86}
                freeHeight={86}
              />
            </g>
          )}
        </g>
      )}
    </ChoicePicture>
  );
}
