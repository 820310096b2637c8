import type { CellFailure } from "../../physics/stiffness/index.ts";

/** One line pattern a failure, so that the map reads without its colours. */
const lines: Record<CellFailure, string> = {
  hardContact: "M0 0L8 8M8 0L0 8",
  fullStop: "M0 8L8 0M-2 2L2 -2M6 10L10 6",
  acceleration: "M0 2H8M0 6H8",
  clearance: "M2 0V8M6 0V8",
  earlyContact: "M0 0L8 8M-2 6L2 10M6 -2L10 2",
  notComputed: "M4 3V5M3 4H5",
};

export function Hatches({ prefix }: { prefix: string }) {
  return (
    <defs>
      {Object.entries(lines).map(([failure, path]) => (
        <pattern
          key={failure}
          id={`${prefix}-${failure}`}
          width="8"
          height="8"
          patternUnits="userSpaceOnUse"
        >
          <rect class={`hatch-ground hatch-${failure}`} width="8" height="8" />
          <path class={`hatch-lines hatch-${failure}`} d={path} />
        </pattern>
      ))}
    </defs>
  );
}
