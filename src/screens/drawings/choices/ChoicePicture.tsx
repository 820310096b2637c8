import type { ComponentChildren } from "preact";
import { type Frame, fitView, type Point, type View } from "../../shapes/geometry.ts";
import "../drawings.css";

const size = { width: 150, height: 120 } as const;
const frame: Frame = { left: 5, top: 5, right: size.width - 5, bottom: size.height - 5 };

/** A picture to choose by, beside the words of its option, which say what it shows. */
export function ChoicePicture({
  points,
  children,
}: {
  /** Corners of what must be seen, mm. */
  readonly points: readonly Point[];
  readonly children: (view: View) => ComponentChildren;
}) {
  const view = fitView(points, frame, 1);
  return (
    <span class="layout-picture" aria-hidden="true">
      <svg
        class="drawing layout-picture"
        viewBox={`0 0 ${size.width} ${size.height}`}
        aria-hidden="true"
      >
        {children(view)}
      </svg>
    </span>
  );
}
