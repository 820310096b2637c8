import { useEffect, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { MapLayout } from "../../compute/messages.ts";
import type { Fitment, Side } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { MapCell } from "../../physics/stiffness/index.ts";

export interface FillingMap {
  readonly layout: MapLayout | null;
  readonly cells: ReadonlyMap<string, MapCell>;
  readonly done: boolean;
  readonly fault: Fault | null;
}

const empty: FillingMap = { layout: null, cells: new Map(), done: false, fault: null };

export function cellKey(extraHeightMm: number, stiffnessClass: number): string {
  return `${extraHeightMm} ${stiffnessClass}`;
}

/** The map of one side as it fills. */
export function useHeightClassMap(
  assessor: Assessor,
  fitment: Fitment,
  side: Side,
  lane: string,
): FillingMap {
  const [map, setMap] = useState<FillingMap>(empty);
  useEffect(() => {
    setMap(empty);
    return assessor.map(
      fitment,
      side,
      {
        onLayout: (layout) => setMap((before) => ({ ...before, layout })),
        onCell: (cell) =>
          setMap((before) => ({
            ...before,
            cells: new Map(before.cells).set(
              cellKey(cell.extraHeightMm, cell.stiffnessClass),
              cell,
            ),
          })),
        onDone: () => setMap((before) => ({ ...before, done: true })),
        onFault: (fault) => setMap((before) => ({ ...before, fault, done: true })),
      },
      { lane },
    );
  }, [assessor, fitment, side, lane]);
  return map;
}
