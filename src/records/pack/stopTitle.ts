import type { EstimatedCurve } from "../../physics/fitment.ts";

interface Named {
  readonly name: string;
  readonly estimated?: EstimatedCurve;
}

/** A stop's name, marked where its force curve is an estimate: so it is named wherever it is judged. */
export function stopTitle({ name, estimated }: Named): string {
  return estimated === undefined ? name : `${name} (estimate)`;
}

/** "± 25 %": what the forces of an estimated curve are known to. */
export function estimateBand({ forceShare }: EstimatedCurve): string {
  return `± ${Math.round(100 * forceShare)} %`;
}

/** One sentence for a stop whose curve was not tested; null where it was. */
export function estimateSentence({ name, estimated }: Named): string | null {
  if (estimated === undefined) return null;
  const how = estimated.how.trim() === "" ? "" : ` (${estimated.how.trim()})`;
  const whose = name.trim() === "" ? "the stop" : `“${name}”`;
  return `The force curve of ${whose} was not tested${how}: its forces are taken as ${estimateBand(estimated)}.`;
}
