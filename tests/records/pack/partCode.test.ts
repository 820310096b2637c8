import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import {
  type PartLabel,
  partCodeText,
  partOfLabel,
  partOfNumber,
  readPartCode,
} from "../../../src/records/pack/partCode.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { said } from "../../../src/saying/texts.ts";

const label: PartLabel = { maker: "HALDEN", partNumber: "HL-1052", revision: "B", batch: "2611" };

function told(outcome: ReturnType<typeof readPartCode | typeof partOfNumber>): string {
  return outcome.ok ? "" : inModelUnits(outcome.fault.sentence);
}

describe("a label's code", () => {
  it("reads back as the part that it names, whatever its letters", () => {
    const text = fc.string({ minLength: 1, maxLength: 30 }).map((each) => `p${each.trim()}q`);
    const plain = text.filter((each) => ![...each].some((letter) => letter < " "));
    fc.assert(
      fc.property(plain, fc.option(plain, { nil: undefined }), plain, (number, revision, batch) => {
        const own = { maker: "HALDEN", partNumber: number, batch, ...(revision && { revision }) };
        const read = readPartCode(partCodeText(own));
        if (!read.ok) throw new Error(partCodeText(own));
        expect(read.value).toEqual(own);
      }),
    );
  });

  it("with one letter wrong, or two changed over, is not read at all", () => {
    const text = partCodeText(label);
    const place = fc.integer({ min: 9, max: text.length - 1 });
    const letter = fc.constantFrom(..."ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789*-%");
    fc.assert(
      fc.property(place, letter, (at, other) => {
        if (text[at] === other) return;
        expect(readPartCode(`${text.slice(0, at)}${other}${text.slice(at + 1)}`).ok).toBe(false);
      }),
      { numRuns: 500 },
    );
    for (let at = 9; at < text.length - 1; at += 1) {
      if (text[at] === text[at + 1]) continue;
      const over = `${text.slice(0, at)}${text[at + 1]}${text[at]}${text.slice(at + 2)}`;
      expect(readPartCode(over).ok, over).toBe(false);
    }
  });

  it("cut short, of a later version, or no label at all is a sentence", () => {
    const text = partCodeText(label);
    expect(told(readPartCode(text.slice(0, -4)))).toContain("not read whole");
    expect(told(readPartCode(text.replace("STOPFIT1", "STOPFIT2")))).toContain("newer version");
    expect(told(readPartCode("https://elsewhere.example/"))).toContain("no code of a part's label");
    fc.assert(fc.property(fc.string(), (any) => typeof readPartCode(any).ok === "boolean"));
  });
});

describe("the part of a label", () => {
  it("is the stop of its revision, with its batch", () => {
    const found = partOfLabel(demoPack, label);
    expect(found.ok && found.value).toMatchObject({
      stop: { id: "arm-block" },
      revision: "B",
      batch: "2611",
    });
    const first = partOfLabel(demoPack, { ...label, revision: "A" });
    expect(first.ok && first.value.stop.id).toBe("arm-block-first-run");
  });

  it("of a revision that the pack does not have is told", () => {
    const found = partOfLabel(demoPack, { ...label, revision: "F" });
    expect(found.ok && said(found.value.remark ?? "")).toContain("says revision F");
  });

  it("of another maker, or unknown, is a sentence", () => {
    expect(told(partOfLabel(demoPack, { ...label, maker: "OTHERS" }))).toContain(
      "of another maker (OTHERS)",
    );
    expect(told(partOfLabel(demoPack, { ...label, partNumber: "HL-9" }))).toContain("“HL-9”");
  });

  it("is found by its number typed, in any spelling", () => {
    const found = partOfNumber(demoPack, " hl1052 ");
    expect(found.ok && found.value.stop.id).toBe("arm-block");
    expect(told(partOfNumber(demoPack, " "))).toContain("Nothing is typed yet");
    const whole = partOfNumber(demoPack, partCodeText(label));
    expect(whole.ok && whole.value.batch).toBe("2611");
  });
});
