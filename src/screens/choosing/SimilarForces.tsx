import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { similarStop, withSimilarStop } from "../../records/filling/similarStop.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import * as messages from "../../words/compiled/screens/choosing.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { usePackInUse } from "../referencePack.ts";

/** Without a test sheet: the forces of the nearest stop of the library, by one tap. Nothing where there is none. */
export function SimilarForces({
  stored,
  onTake,
  unit,
}: {
  stored: StoredCheck;
  onTake: (taken: (now: StoredCheck) => StoredCheck) => void;
  unit: LengthUnit;
}) {
  const inUse = usePackInUse();
  const { stop = {} } = stored.record;
  const similar = inUse && similarStop(inUse.pack, stop);
  if (!similar || stop.curve !== undefined || stop.freeHeight === undefined) return null;
  return (
    <Notice tone="info">
      <p>{messages.noTestSheetNearest({ name: similar.stop.name })}</p>
      <div class="row">
        <Button onClick={() => onTake((now) => withSimilarStop(now, similar, unit, inModelUnits))}>
          {messages.takeItsForcesAs}
        </Button>
      </div>
    </Notice>
  );
}
