import type { Side } from "../../physics/fitment.ts";
import { isPlainObject } from "../text/plainObject.ts";

const yesOrNo = ["yes", "no"] as const;
/** Of what is said, or not said at all. */
const yes = ["yes"] as const;
/** No list: the id of something that the person's parts library has. */
const anyText = null;

/**
 * What a person chooses in a check that no field of its record holds, and what may be chosen. "side." stands
 * for left and right, which wait under "aside." while that side is not measured; # for a number.
 */
export const choiceValues = {
  walk: ["short"],
  "vehicle.raised": yesOrNo,
  "vehicle.units": ["mm", "in"],
  "layout.armRole": ["unsaid"],
  "layout.stopOn": ["round"],
  linkage: yesOrNo,
  "way.bolts": ["direct", "parts"],
  "way.heights": ["direct", "parts"],
  "side.stand": ["gap", "touching", "pressed", "missing"],
  "side.moved": yesOrNo,
  "side.limits": ["none"],
  "side.limits.#.place": ["wheel", "stop", "nearStop", "mount", "joint", "distance"],
  "side.rideHeight.way": ["settled"],
  "side.cornerMassKg.way": ["scale", "axle", "pack", "unknown"],
  "stop.source": ["pack", "hand"],
  "stop.packId": anyText,
  "aside.stop.hand.stop.packId": anyText,
  "ride.payloadPerCornerKg.way": ["pack", "total", "hitch", "rating", "typed", "unknown"],
  "ride.unsprungMassKg.way": ["pack", "share", "typed", "unknown"],
  "ride.wheelRateNPerMm.way": ["pack", "sag", "coil", "typed", "unknown"],
  "ride.tyreRateNPerMm.way": ["pack", "usual", "typed", "unknown"],
  "ride.damperBumpNsPerMm.way": ["pack", "share", "typed", "unknown"],
  "payload.none": yes,
  "payload.share": ["all", "most", "half", "little"],
  "tyre.sort": ["car", "light", "heavy"],
  "damping.share": ["soft", "usual", "firm"],
  rules: ["seen"],
  "rules.events": ["file"],
  "rules.obstacle.leftOut": yes,
  "rules.hump.leftOut": yes,
  "rules.landing.leftOut": yes,
  "fullTravel.spring": ["coil", "leaf", "torsionBar", "air"],
} as const satisfies { readonly [pattern: string]: readonly string[] | typeof anyText };

type Pattern = keyof typeof choiceValues;
type Numbered<Id extends string> = Id extends `${infer Before}#${infer After}`
  ? `${Before}${number}${After}`
  : Id;
type IdsOf<Each extends Pattern> = Each extends `side.${infer Rest}`
  ? `${"" | "aside."}${Side}.${Numbered<Rest>}`
  : Each;
type ValueOf<Each extends Pattern> = (typeof choiceValues)[Each] extends readonly (infer Value)[]
  ? Value
  : string;

export type ChoiceId = IdsOf<Pattern>;
export type ChoiceValue<Id extends ChoiceId> = {
  [Each in Pattern]: Id extends IdsOf<Each> ? ValueOf<Each> : never;
}[Pattern];

/** What was chosen, by its id. */
export type Choices = { readonly [Id in ChoiceId]?: ChoiceValue<Id> };

const known: { readonly [pattern: string]: readonly string[] | typeof anyText } = choiceValues;

/** What may be chosen there; undefined: it is the id of no choice. */
function valuesOf(id: string): readonly string[] | typeof anyText | undefined {
  const pattern = id
    .replace(/^(?:aside\.)?(?:left|right)\./, "side.")
    .replace(/^(side\.limits\.)\d+(\.place)$/, "$1#$2");
  // A pattern's own words are no id.
  return /^side\.|#/.test(id) || !Object.hasOwn(known, pattern) ? undefined : known[pattern];
}

export function isChoiceId(id: string): id is ChoiceId {
  return valuesOf(id) !== undefined;
}

/** What of a stored value can be choices: known ones, each with what may be chosen there. */
export function choicesOf(value: unknown): Choices {
  const kept = Object.entries(isPlainObject(value) ? value : {}).filter(([id, item]) => {
    const values = valuesOf(id);
    return typeof item === "string" && (values === anyText || values?.includes(item));
  });
  return Object.fromEntries(kept) as Choices;
}
