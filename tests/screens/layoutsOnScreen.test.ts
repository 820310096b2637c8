import { describe, expect, it } from "vitest";
import { layoutKinds, layoutRegistry } from "../../src/physics/readings/index.ts";
import { layoutsOnScreen } from "../../src/screens/layouts/layoutsOnScreen.ts";

const roles = [undefined, "lower", "upper", "underStrut", "carriesWheel"] as const;

describe.each(layoutKinds)("the layout %s on screen", (kind) => {
  const { words, picture } = layoutsOnScreen[kind];
  const { onArm, closer } = layoutRegistry[kind];

  it("has the words that its physics asks for, and no others", () => {
    expect(words.placeOnArm !== null).toBe(onArm);
    expect(words.closer !== null).toBe(closer !== null);
  });

  it("names what stands in a picture in 22 letters at most", () => {
    const leans = roles.map((armRole) => words.lean({ kind, armRole }));
    const ends = leans.flatMap(({ a, b }) => [a, b]);
    for (const told of [words.landing, words.landingOfStopOnArm ?? "", words.movingMetal, ...ends])
      expect(told.length, told).toBeLessThanOrEqual(22);
  });

  it("is told apart from the others", () => {
    for (const other of layoutKinds.filter((each) => each !== kind)) {
      expect(layoutsOnScreen[other].words.choice.name).not.toBe(words.choice.name);
      expect(layoutsOnScreen[other].words.short).not.toBe(words.short);
      expect(layoutRegistry[other].tableWord).not.toBe(layoutRegistry[kind].tableWord);
    }
    expect(Object.values(picture.values).every(Number.isFinite)).toBe(true);
  });
});
