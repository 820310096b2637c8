import { useEffect, useState } from "preact/hooks";
import { type Assessor, createAssessor } from "../../compute/assessor.ts";

let shared: Assessor | null = null;
let owners = 0;

/** The shared calculator with lanes of this owner's own, so that no screen overtakes another's. */
function ownLanes(): Assessor {
  shared ??= createAssessor();
  const assessor = shared;
  owners += 1;
  const owner = owners;
  const lane = (name: string) => `${owner} ${name}`;
  return {
    assess: (fitment, handlers, options = {}) =>
      assessor.assess(fitment, handlers, { ...options, lane: lane(options.lane ?? "answer") }),
    map: (fitment, side, handlers, options = {}) =>
      assessor.map(fitment, side, handlers, { ...options, lane: lane(options.lane ?? "map") }),
    rank: (fitment, candidates, handlers, options) =>
      assessor.rank(fitment, candidates, handlers, {
        ...options,
        lane: lane(options.lane ?? "rank"),
      }),
    prescribe: (fitment, candidates, handlers, options) =>
      assessor.prescribe(fitment, candidates, handlers, {
        ...options,
        lane: lane(options.lane ?? "prescribe"),
      }),
    planRemeasure: (fitment, assessment, tools, handlers, options = {}) =>
      assessor.planRemeasure(fitment, assessment, tools, handlers, {
        ...options,
        lane: lane(options.lane ?? "remeasure"),
      }),
    run: (fitment, side, event, change) => assessor.run(fitment, side, event, change),
    dispose: () => undefined,
  };
}

/**
 * The calculator. Its worker is started once and kept, so that an answer after a changed reading need
 * not wait for it; whoever asks cancels what is no longer wanted. One started by `create` is closed
 * with the screen.
 */
export function useAssessor(create: () => Assessor = ownLanes): Assessor {
  const [assessor] = useState(create);
  useEffect(() => () => assessor.dispose(), [assessor]);
  return assessor;
}
