import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { QuantityKind } from "../../../src/physics/sentence.ts";
import { quantityText as onScreen, withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { firstSentence, sentenceText } from "../../../src/saying/sentenceText.ts";

const kinds: readonly QuantityKind[] = [
  "length",
  "angle",
  "rate",
  "force",
  "mass",
  "energy",
  "speed",
  "acceleration",
  "share",
  "ratio",
  "count",
];

const quantityText: typeof onScreen = (...given) => withPlainSpaces(onScreen(...given));

describe("numbers in the person's unit", () => {
  it("stay on one line with their unit, a number in brackets aside", () => {
    expect(onScreen({ kind: "rate", value: 63 }, "mm")).toBe("63.0\u00a0N/\u2060mm");
    expect(onScreen({ kind: "length", value: 58.7375 }, "in", { fractions: true })).toBe(
      "2\u00a05/16\u00a0in",
    );
    expect(onScreen({ kind: "stiffnessClass", value: 63 }, "in")).toBe(
      "360\u00a0lb/\u2060in (63\u00a0N/\u2060mm)",
    );
  });

  it("end no line within a unit or a fraction, and are plain where they leave the screens", () => {
    for (const unit of ["mm", "in"] as const) {
      for (const kind of kinds) {
        const shown = onScreen({ kind, value: 58.7375 }, unit, { fractions: true });
        expect(shown).not.toMatch(/\/\p{L}/u);
        expect(withPlainSpaces(shown)).not.toMatch(/[\u00a0\u2060]/);
      }
    }
    expect(withPlainSpaces(onScreen({ kind: "damping", value: 1.8 }, "mm"))).toBe("1.80 N·s/mm");
    expect(onScreen({ kind: "contactRate", value: 12.3 }, "mm")).toBe("12.3 per\u00a0km");
    expect(onScreen({ kind: "contactRate", value: 1 / 850 }, "mm")).toBe("once in 850\u00a0km");
  });

  it("mm and the units that go with it", () => {
    const text = (kind: QuantityKind, value: number) => quantityText({ kind, value }, "mm");
    expect(kinds.map((kind) => text(kind, 0.4567))).toEqual([
      "0.5 mm",
      "0.5°",
      "0.457 N/mm",
      "0 N",
      "0 kg",
      "0.5 J",
      "0 mm/s",
      "0.46 g",
      "46 %",
      "0.46 : 1",
      "0.457",
    ]);
  });

  it("inches and the pound units that go with them", () => {
    const text = (kind: QuantityKind, value: number) => quantityText({ kind, value }, "in");
    expect(text("length", 58.7375)).toBe("2.31 in");
    expect(text("rate", 28.02029363943616)).toBe("160 lb/in");
    expect(text("force", 4448.2216152605)).toBe("1000 lbf");
    expect(text("mass", 45.359237)).toBe("100 lb");
    expect(text("energy", 1.3558179483314)).toBe("1.0 ft·lbf");
    expect(text("speed", 254)).toBe("10.0 in/s");
    expect(quantityText({ kind: "length", value: 58.7375 }, "in", { fractions: true })).toBe(
      "2 5/16 in",
    );
  });

  // 63 N/mm by 0.175126835246476 N/mm per lbf/in (NIST SP 811): 359.74 lb/in.
  it("a stiffness class stands in lb/in first, its name in N/mm beside it", () => {
    const named = { kind: "stiffnessClass", value: 63 } as const;
    expect(quantityText(named, "mm")).toBe("63 N/mm");
    expect(quantityText(named, "in")).toBe("360 lb/in (63 N/mm)");
    expect(quantityText({ ...named, value: 10 }, "in")).toBe("57 lb/in (10 N/mm)");
    expect(quantityText({ ...named, value: 1000 }, "in")).toBe("5710 lb/in (1000 N/mm)");
    expect(quantityText({ kind: "rate", value: 63 }, "in")).toBe("360 lb/in");
  });

  it("no minus before a zero, no exponent, however small or large", () => {
    expect(quantityText({ kind: "length", value: -0.04 }, "mm")).toBe("0.0 mm");
    expect(quantityText({ kind: "share", value: -0.001 }, "mm")).toBe("0 %");
    expect(quantityText({ kind: "count", value: 2.8e-7 }, "mm")).toBe("under 0.001");
    expect(quantityText({ kind: "rate", value: 123456 }, "mm")).toBe("123456 N/mm");
  });

  it("NaN and Infinity never reach a screen", () => {
    const unit = fc.constantFrom("mm" as const, "in" as const);
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double(),
        unit,
        fc.boolean(),
        (kind, value, u, f) => {
          const text = quantityText({ kind, value }, u, { fractions: f });
          expect(text).not.toMatch(/NaN|Infinity|undefined/);
          if (!Number.isFinite(value)) expect(text).toBe("unknown");
        },
      ),
    );
  });

  it("a sentence shows its numbers in that unit and its words as they are", () => {
    const sentence = ["Make the stop ", { kind: "length" as const, value: 25.4 }, " taller."];
    expect(withPlainSpaces(sentenceText(sentence, "mm"))).toBe("Make the stop 25.4 mm taller.");
    expect(withPlainSpaces(sentenceText(sentence, "in", { fractions: true }))).toBe(
      "Make the stop 1 in taller.",
    );
  });
});

it("of a message the first sentence alone, its numbers with it", () => {
  const gap = { kind: "length", value: 4.5 } as const;
  const message = ["Can't tell: the readings say ", gap, " short. Measure ", gap, " again."];
  expect(firstSentence(message)).toEqual(["Can't tell: the readings say ", gap, " short."]);
  expect(firstSentence(["Short by ", gap, ".", " Measure ", "it."])).toEqual([
    "Short by ",
    gap,
    ".",
  ]);
  expect(firstSentence(["It fits."])).toEqual(["It fits."]);
  expect(firstSentence(["One. Two. Three."])).toEqual(["One."]);
});

describe("a spacer", () => {
  const text = (value: number, unit: "mm" | "in") =>
    withPlainSpaces(quantityText({ kind: "spacer", value }, unit, { coarse: true }));

  it("is told as it is sold: in whole mm or the tape's fractions, never rounded to another one", () => {
    expect([10, 2.5, 60].map((value) => text(value, "mm"))).toEqual(["10 mm", "2.5 mm", "60 mm"]);
    expect([12.7, 3.175, 63.5].map((value) => text(value, "in"))).toEqual([
      "1/2 in",
      "1/8 in",
      "2 1/2 in",
    ]);
    expect(text(10, "in")).toBe("0.39 in (10 mm)");
  });
});
