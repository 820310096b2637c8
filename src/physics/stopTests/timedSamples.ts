import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import type { Remark, TimeDisplacementForce } from "./benchTest.ts";

export type Samples = Omit<TimeDisplacementForce, "kind">;

const fewestSamples = 32;
/** Share of samples that may repeat a time or go back before the file is refused. */
const mostOutOfOrder = 0.01;
/** Pause put between two records that each begin their time anew, s: everything relaxes. */
const pauseS = 100;

/**
 * Samples in the order of time: a few that repeat a time are left out; where the time begins anew and then
 * goes on rising, a second record follows the first after a long pause.
 *
 * Errors: "tooFewSamples", "timeNotRising".
 */
export function timedSamples(
  given: TimeDisplacementForce,
): Outcome<{ readonly samples: Samples; readonly remarks: readonly Remark[] }> {
  const count = given.timeS.length;
  if (count < fewestSamples) {
    return fail("tooFewSamples", [messages.fileHoldsFewerThan32]);
  }
  const kept = new Uint32Array(count);
  const timeS = new Float64Array(count);
  let taken = 0;
  let shift = 0;
  let restarts = 0;
  let latest = Number.NEGATIVE_INFINITY;
  for (let place = 0; place < count; place++) {
    const time = given.timeS[place];
    if (time + shift <= latest) {
      if (!beginsAnew(given.timeS, place)) continue;
      shift = latest + pauseS - time;
      restarts++;
    }
    latest = time + shift;
    kept[taken] = place;
    timeS[taken++] = latest;
  }
  const dropped = count - taken;
  if (dropped + restarts > mostOutOfOrder * count) {
    return fail("timeNotRising", [messages.timeDoesNotRise]);
  }
  const remarks: Remark[] = [];
  if (dropped > 0) {
    remarks.push({
      code: "rowsLeftOut",
      sentence: [
        messages.rowsWhoseTimeIs({
          dropped: { kind: "count", value: dropped },
        }),
      ],
    });
  }
  if (restarts > 0) {
    remarks.push({
      code: "timeRestarts",
      sentence: [
        messages.timeStartsOverTime({
          restarts: { kind: "count", value: restarts },
          restarts2: restarts,
        }),
      ],
    });
  }
  const places = kept.subarray(0, taken);
  const at = (values: Float64Array) =>
    dropped === 0 ? values : Float64Array.from(places, (place) => values[place]);
  if (dropped + restarts === 0) return succeed({ samples: given, remarks });
  return succeed({
    samples: {
      timeS: timeS.subarray(0, taken),
      displacementMm: at(given.displacementMm),
      forceN: at(given.forceN),
    },
    remarks,
  });
}

/** The next samples rise from here in the order of time, and the fall was more than a sample's step. */
function beginsAnew(timeS: Float64Array, place: number): boolean {
  const look = 16;
  if (place + look > timeS.length) return false;
  const step = (timeS[place + look - 1] - timeS[place]) / (look - 1);
  for (let next = place + 1; next < place + look; next++) {
    const own = timeS[next] - timeS[next - 1];
    if (!(own > 0 && own <= 3 * step)) return false;
  }
  return timeS[place - 1] - timeS[place] > 5 * step;
}
