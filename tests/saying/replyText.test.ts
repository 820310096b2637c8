import { expect, it } from "vitest";
import { acceptText } from "../../src/saying/replyText.ts";
import { demoRecord } from "../support/demoRecords.ts";

it("a letter tells that the readings are accepted apart from whether the part fits", () => {
  const record = demoRecord("arm-needs-taller");
  const answer = {
    verdict: "no" as const,
    words: "Does not fit",
    reason: ["Metal touches first."],
    advice: [],
  };
  const text = acceptText({ record, unit: "mm", from: "Ines", note: "" }, answer);
  const [readings, part] = text.split("\n\n").slice(2);
  expect(readings).toBe("The readings: accepted as you sent them.");
  expect(part).toBe("The part, computed with these readings: Does not fit. Metal touches first.");
  expect(text).toContain("have the whole travel checked by hand by a qualified person");
});
