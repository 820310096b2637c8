import { uses } from "../../physics/choices.ts";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { shortened } from "../text/jsonText.ts";
import { type Pack, type PackStop, type Platform, partsTwice } from "./pack.ts";
import { headFields, type PackDifference, packDifferences } from "./packDifferences.ts";

export { type PackDifference, packDifferences } from "./packDifferences.ts";

/** both: theirs is added beside mine under a new id (stops and platforms only); neither: left out. */
export type MergeChoice = "mine" | "theirs" | "both" | "neither";

/** The choices a difference leaves, the usual one first. */
export function mergeChoices({ kind, list }: PackDifference): readonly MergeChoice[] {
  const isItem = list === "stop" || list === "platform";
  if (kind === "onlyMine") return isItem || list === "rules" ? ["mine", "neither"] : ["mine"];
  if (kind === "onlyTheirs") return ["theirs", "neither"];
  return isItem ? ["mine", "theirs", "both"] : ["mine", "theirs"];
}

/** What is taken where nothing is chosen: what either has alone, and mine where they differ. */
export function usualChoice(difference: PackDifference): MergeChoice {
  return difference.kind === "onlyTheirs" ? "theirs" : "mine";
}

/**
 * One pack of two, by choice per difference key; a choice that a difference does not leave counts as
 * the usual one. Mine keep their order, what is added comes after. A platform taken from theirs goes on
 * naming the stop it named there, also where that was added under a new id.
 *
 * Errors: "stopMissing", a platform that is kept names a usual stop that is left out; "partTwice", two stops
 * that are kept have one part number.
 */
export function mergePacks(
  mine: Pack,
  theirs: Pack,
  choices: { readonly [key: string]: MergeChoice } = {},
): Outcome<Pack> {
  const differences = new Map(packDifferences(mine, theirs).map((each) => [each.key, each]));
  const choiceOf = (key: string): MergeChoice => {
    const difference = differences.get(key);
    if (difference === undefined) return "mine";
    const chosen = Object.hasOwn(choices, key) ? choices[key] : undefined;
    return chosen !== undefined && mergeChoices(difference).includes(chosen)
      ? chosen
      : usualChoice(difference);
  };
  const stops = mergedItems("stop", mine.stops, theirs.stops, choiceOf);
  const platforms = mergedItems("platform", mine.platforms, theirs.platforms, choiceOf);
  const renamedPlatforms = platforms.items.map(({ item, from }): Platform => {
    const renamed =
      from === "theirs" && item.usualStop !== null ? stops.renamed.get(item.usualStop) : undefined;
    return renamed === undefined ? item : { ...item, usualStop: renamed };
  });
  const kept: readonly PackStop[] = stops.items.map(({ item }) => item);
  const astray = renamedPlatforms.find(
    ({ usualStop }) => usualStop !== null && !kept.some(({ id }) => id === usualStop),
  );
  if (astray !== undefined) {
    return fail("stopMissing", [
      messages.vehicleNamesStopAs({
        label: shortened(astray.label),
        usualStop: shortened(astray.usualStop ?? ""),
      }),
    ]);
  }
  const [twice] = partsTwice(kept);
  if (twice !== undefined) {
    return fail("partTwice", [messages.partNumberWouldBelong({ twice: shortened(twice) })]);
  }
  return succeed({
    ...mine,
    ...head(theirs, choiceOf),
    stops: kept,
    platforms: renamedPlatforms,
    ...mergedRules(mine, theirs, choiceOf),
  });
}

type ChoiceOf = (key: string) => MergeChoice;

interface Merged<Item> {
  readonly items: readonly { readonly item: Item; readonly from: "mine" | "theirs" }[];
  /** New ids of theirs that were added beside mine. */
  readonly renamed: ReadonlyMap<string, string>;
}

function mergedItems<Item extends { readonly id: string }>(
  list: "stop" | "platform",
  mine: readonly Item[],
  theirs: readonly Item[],
  choiceOf: ChoiceOf,
): Merged<Item> {
  const others = new Map(theirs.map((item) => [item.id, item]));
  const taken = new Set([...mine, ...theirs].map(({ id }) => id));
  const renamed = new Map<string, string>();
  const items: { item: Item; from: "mine" | "theirs" }[] = [];
  const added: typeof items = [];
  for (const item of mine) {
    const other = others.get(item.id);
    const choice = choiceOf(`${list} ${item.id}`);
    if (choice === "neither") continue;
    if (choice === "theirs" && other !== undefined) items.push({ item: other, from: "theirs" });
    else items.push({ item, from: "mine" });
    if (choice === "both" && other !== undefined) {
      const id = freeId(item.id, taken);
      renamed.set(item.id, id);
      added.push({ item: besideMine(other, id), from: "theirs" });
    }
  }
  const own = new Set(mine.map(({ id }) => id));
  for (const item of theirs) {
    if (!own.has(item.id) && choiceOf(`${list} ${item.id}`) === "theirs") {
      added.push({ item, from: "theirs" });
    }
  }
  return { items: [...items, ...added], renamed };
}

/** Beside mine, under an id of its own; a part number names one stop only, so it stays with mine. */
function besideMine<Item extends { readonly id: string }>(other: Item, id: string): Item {
  const { partNumber: _part, revision: _revision, ...rest } = other as Item & Partial<PackStop>;
  return { ...rest, id } as Item;
}

/** "tall-firm-2": the first number that no id of either pack has. */
function freeId(id: string, taken: Set<string>): string {
  let number = 2;
  while (taken.has(`${id}-${number}`)) number++;
  const free = `${id}-${number}`;
  taken.add(free);
  return free;
}

function head(theirs: Pack, choiceOf: ChoiceOf): Partial<Pack> {
  const taken = headFields.filter((field) => choiceOf(`pack ${field}`) === "theirs");
  return Object.fromEntries(taken.map((field) => [field, theirs[field]]));
}

function mergedRules(mine: Pack, theirs: Pack, choiceOf: ChoiceOf): Pick<Pack, "rules"> {
  if (mine.rules === undefined && theirs.rules === undefined) return {};
  let rules: NonNullable<Pack["rules"]> = { ...mine.rules };
  for (const use of uses) {
    const choice = choiceOf(`rules ${use}`);
    const other = theirs.rules?.[use];
    if (choice === "theirs" && other !== undefined) rules = { ...rules, [use]: other };
    if (choice === "neither") {
      const { [use]: _left, ...rest } = rules;
      rules = rest;
    }
  }
  return { rules };
}
