import fc from "fast-check";
import { expect, it } from "vitest";
import { readingsOf } from "../../../src/records/review/oddReadings.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { cardContent } from "../../../src/screens/answer/card/cardContent.ts";
import { lines, middleOf } from "../../../src/screens/answer/card/cardPicture.ts";
import { cautionsOf } from "../../../src/screens/guide/cautions.ts";
import { assessed, demoFitment, demoNames, demoRecord } from "./demoChecks.ts";

const searching = { state: "searching", progress: null } as const;

it.each(demoNames)("the card of %s names every reading with its source, in one unit", (name) => {
  const record = demoRecord(name);
  const assessment = assessed(demoFitment(name));
  for (const unit of ["mm", "in"] as const) {
    const card = cardContent(record, assessment, searching, unit);
    expect(card.readings).toHaveLength(readingsOf(record).length);
    for (const { value } of card.readings) {
      expect(value).toMatch(/, (measured|from the library|estimated)$/);
    }
    const told = withPlainSpaces(JSON.stringify(card));
    expect(told).not.toMatch(/NaN|Infinity|undefined/);
    if (unit === "in") expect(told).not.toMatch(/\d mm\b(?!\/)/);
    else expect(told).not.toMatch(/\d in\b/);
    expect(card.cautions).toEqual(
      cautionsOf(record.vehicle.liftMm > 0 ? "raised" : "level").map(({ words }) => words),
    );
    expect(card.certification).toBe("This is a screening check, not a certification.");
  }
});

it("what comes from a pack is not told as measured", () => {
  const record = demoRecord("arm-fits");
  const [first] = record.corners;
  if (!first?.rideHeight) throw new Error("no ride height");
  const rideHeight = { ...first.rideHeight, source: "pack" as const };
  const changed = { ...record, corners: [{ ...first, rideHeight }, ...record.corners.slice(1)] };
  const before = cardContent(record, assessed(demoFitment("arm-fits")), searching, "mm");
  const after = cardContent(changed, assessed(demoFitment("arm-fits")), searching, "mm");
  const fromPack = (readings: typeof after.readings) =>
    readings.filter(({ value }) => value.endsWith("from the library")).length;
  expect(fromPack(after.readings)).toBe(fromPack(before.readings) + 1);
});

it("words of a card are broken into lines that fit, none lost", () => {
  fc.assert(
    fc.property(
      fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 40 }),
      fc.integer({ min: 12, max: 60 }),
      (words, room) => {
        const broken = lines(words.join(" "), room, (text) => text.length);
        expect(broken.join(" ")).toBe(words.join(" "));
        for (const line of broken) expect(line.length).toBeLessThanOrEqual(room);
      },
    ),
  );
});

it("a photo keeps its shape: its middle, as much of it as the place has room for", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 8000 }),
      fc.integer({ min: 1, max: 8000 }),
      fc.double({ min: 0.2, max: 5, noNaN: true }),
      (width, height, ratio) => {
        const part = middleOf({ width, height }, ratio);
        expect(part.width / part.height).toBeCloseTo(ratio, 6);
        expect(part.width).toBeLessThanOrEqual(width + 1e-9);
        expect(part.height).toBeLessThanOrEqual(height + 1e-9);
        expect(part.x + part.width / 2).toBeCloseTo(width / 2, 6);
        expect(part.y + part.height / 2).toBeCloseTo(height / 2, 6);
        expect(Math.max(part.width / width, part.height / height)).toBeCloseTo(1, 9);
      },
    ),
  );
});

it("a check of a job says so on its card", () => {
  const job = { id: "j", label: "Osprey wagon", number: "2214", moment: "after" as const };
  const record = { ...demoRecord("arm-fits"), job };
  const card = cardContent(record, assessed(demoFitment("arm-fits")), searching, "mm");
  expect(card.facts[0]).toBe("Osprey wagon, job 2214, after the change");
});
