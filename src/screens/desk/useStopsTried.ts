import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment, State } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import { fitmentWithStop } from "../../physics/prescription/fitmentWithStop.ts";
import type { PackStop } from "../../records/pack/pack.ts";
import { recordStop } from "../../records/pack/pack.ts";
import { useReferencePack } from "../referencePack.ts";

/** A stop of the pack, tried on this check's readings. */
export interface TriedStop {
  readonly stop: PackStop;
  /** Null while it is computed. */
  readonly assessment: Assessment | null;
  /** Why it can't be tried. */
  readonly fault: Fault | null;
}

const order: readonly State[] = ["ok", "care", "unsure", "no"];

function rank({ assessment, fault }: TriedStop): number {
  if (fault !== null) return 5;
  return assessment === null ? 4 : order.indexOf(assessment.verdict);
}

/** Every other stop of the pack on this vehicle, the best first; computed one after another. */
export function useStopsTried(
  assessor: Assessor,
  fitment: Fitment,
  wanted: boolean,
): readonly TriedStop[] {
  const pack = useReferencePack();
  const [tried, setTried] = useState<readonly TriedStop[]>([]);
  useEffect(() => {
    setTried([]);
    if (!wanted) return;
    let left = false;
    const cancels: (() => void)[] = [];
    const put = (index: number, change: Partial<TriedStop>) => {
      if (left) return;
      setTried((all) =>
        all.map((each, place) => (place === index ? { ...each, ...change } : each)),
      );
    };
    const stops = pack.stops.filter(({ name }) => name !== fitment.stop.name);
    setTried(stops.map((stop) => ({ stop, assessment: null, fault: null })));
    for (const [index, stop] of stops.entries()) {
      const other = fitmentWithStop(fitment, recordStop(stop));
      if (!other.ok) {
        put(index, { fault: other.fault });
        continue;
      }
      cancels.push(
        assessor.assess(
          other.value,
          {
            onStatic: () => undefined,
            onComplete: (assessment) => put(index, { assessment }),
            onFault: (fault) => put(index, { fault }),
          },
          { lane: `stop ${stop.id}` },
        ),
      );
    }
    return () => {
      left = true;
      for (const cancel of cancels) cancel();
    };
  }, [assessor, fitment, wanted, pack]);
  return useMemo(() => [...tried].sort((a, b) => rank(a) - rank(b)), [tried]);
}
