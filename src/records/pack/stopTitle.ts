import type { EstimatedCurve } from "../../physics/fitment.ts";
import type { Message, Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";

interface Named {
  readonly name: string;
  readonly estimated?: EstimatedCurve;
}

/** A stop's name, marked where its force curve is an estimate: so it is named wherever it is judged. */
export function stopTitle({ name, estimated }: Named): Words {
  return estimated === undefined ? name : messages.estimate({ name });
}

/** "± 25 %": what the forces of an estimated curve are known to. */
export function estimateBand({ forceShare }: EstimatedCurve): Message {
  return messages.estimateBand({ percent: Math.round(100 * forceShare) });
}

/** One sentence for a stop whose curve was not tested; null where it was. */
export function estimateSentence({ name, estimated }: Named): Message | null {
  if (estimated === undefined) return null;
  const how = estimated.how.trim();
  return messages.forceCurveOfWas({
    whose: name.trim() === "" ? messages.stopWord2 : messages.quoted({ name }),
    isTold: how !== "",
    how,
    estimateBand: estimateBand(estimated),
  });
}
