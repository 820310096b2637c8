import { describe, expect, it } from "vitest";
import { foundStop } from "../../../src/physics/stopTests/foundStop.ts";
import { importFile } from "../../../src/records/testRows/importFile.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { given } from "../../physics/stopTests/outcomes.ts";
import { trueStops } from "../../support/testMachine/designs.ts";
import { dialects } from "../../support/testMachine/dialects.ts";
import { ramp, sequence, triangle } from "../../support/testMachine/motions.ts";
import { refusedFiles } from "../../support/testMachine/refusedFiles.ts";
import { measure } from "../../support/testMachine/testMachine.ts";

const stop = trueStops.dashpot;
if (stop === undefined) throw new Error("no such stop");
const measured = measure(
  stop,
  sequence([...ramp(0, 44, 8), triangle(0, 40, 100, 3), triangle(0, 40, 400, 4)], 0.2),
  { samplesPerS: 400, whiteN: 5 },
);

describe("one test, however it is written down", () => {
  it.each(dialects.map((dialect) => [dialect.name, dialect] as const))("%s", async (_, dialect) => {
    const text = dialect.write(measured);
    const file = new File([typeof text === "string" ? text : text.slice().buffer], "test.csv");
    const tests = given(await importFile(file, {}, () => undefined));
    expect(tests).toHaveLength(1);
    const found = tests[0] && foundStop(tests[0].analysis);
    if (!found) throw new Error("no curve");
    for (const [depth, force] of found.curve.slice(5)) {
      expect(Math.abs(force / stop.force(depth) - 1)).toBeLessThan(0.02);
    }
    for (const [depth, into, out] of found.damping?.slice(1, -1) ?? []) {
      expect(Math.abs(into / (stop.damping?.(depth, 1) ?? 0) - 1)).toBeLessThan(0.05);
      expect(Math.abs(out / (stop.damping?.(depth, -1) ?? 0) - 1)).toBeLessThan(0.05);
    }
    expect(found.damping).toHaveLength(5);
  });
});

describe("what cannot be read is refused in a sentence that names the cause", () => {
  it.each(refusedFiles.map((each) => [each.name, each] as const))("%s", async (_, refused) => {
    const { file, cause } = refused;
    const named = new File([typeof file === "string" ? file : file.slice().buffer], "test.csv");
    const read = await importFile(named, {}, () => undefined);
    if (read.ok) throw new Error("was read");
    expect(inModelUnits(read.fault.sentence)).toMatch(cause);
  });
});
