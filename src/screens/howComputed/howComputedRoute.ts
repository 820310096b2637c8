import * as messages from "../../words/compiled/screens/howComputed.ts";
/** The passages of the model that the app leads to, by their headings. */
export type Passage =
  | "kinematics"
  | "the-stop"
  | "travel-budget"
  | "road-and-contacts"
  | "impact"
  | "doubt"
  | "the-prescription";

export interface HowComputedRoute {
  readonly screen: "howComputed";
  readonly passage: string | null;
}

const place = "how";

export const howComputedHref = `#/${place}`;

export const howComputedName = messages.howItIsComputed;

export function passageHref(passage: Passage): string {
  return `${howComputedHref}/${passage}`;
}

export function readHowComputedRoute(parts: readonly (string | null)[]): HowComputedRoute | null {
  const [first, passage = null] = parts;
  return first === place && parts.length <= 2 ? { screen: "howComputed", passage } : null;
}
