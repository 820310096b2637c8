import { type Choices, choicesOf, choiceValues } from "../../src/records/check/choices.ts";

function idsOf(pattern: string): readonly string[] {
  if (!pattern.startsWith("side.")) return [pattern];
  const own = pattern.slice("side.".length);
  return ["left.", "right.", "aside.left.", "aside.right."].flatMap((side) =>
    own.includes("#")
      ? ["0", "1", "12"].map((index) => `${side}${own.replace("#", index)}`)
      : [`${side}${own}`],
  );
}

/** Every choice that can be made, by its definition, with all that can be chosen there; two texts for any text. */
export const everyChoice: readonly (readonly [id: string, values: readonly string[]])[] =
  Object.entries(choiceValues).flatMap(([pattern, values]) =>
    idsOf(pattern).map((id) => [id, values ?? ["tall", "short-2"]] as const),
  );

/** All of them chosen at once, each the `turn`th of what can be chosen there. */
export function allChosen(turn = 0): Choices {
  return choicesOf(
    Object.fromEntries(everyChoice.map(([id, values]) => [id, values[turn % values.length]])),
  );
}
