import { describe, expect, it } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import {
  heightsOf,
  isOffered,
  openPack,
  type Pack,
  type PackStop,
  packVersion,
  replacementOf,
  stopOf,
} from "../../../src/records/pack/pack.ts";
import { prescribable, stopOfPart } from "../../../src/records/pack/packCandidates.ts";
import { readPackValue } from "../../../src/records/pack/readPack.ts";
import { similarStops, similarText } from "../../../src/records/pack/similarStops.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import { demoFitment } from "../../physics/demoFitments.ts";

function stop(id: string): PackStop {
  const found = stopOf(demoPack, id);
  if (found === null) throw new Error(id);
  return found;
}

function changed(change: Partial<Pack>): string[] {
  const read = readPackValue(JSON.parse(JSON.stringify({ ...demoPack, ...change })));
  return read.ok ? [] : read.faults.map(({ sentence }) => inModelUnits(sentence));
}

describe("a part", () => {
  it("is found by its number however it is typed, and by its revision where that is told", () => {
    expect(stopOfPart(demoPack, { partNumber: "hl 1052" })?.id).toBe("arm-block");
    expect(stopOfPart(demoPack, { partNumber: "HL-1052", revision: "A" })?.id).toBe(
      "arm-block-first-run",
    );
    expect(stopOfPart(demoPack, { partNumber: "HL-1052", revision: "Z" })?.id).toBe("arm-block");
    expect(stopOfPart(demoPack, { partNumber: "HL-9999" })).toBeNull();
  });

  it("that is discontinued or replaced is no longer prescribed", () => {
    const fitment = demoFitment("arm-fits");
    const check = { ...fitment, vehicle: { platformId: null } };
    const ids = (pack: Pack) => prescribable(pack, check, fitment).map(({ id }) => id);
    const usable = ids(demoPack);
    expect(usable).toContain("arm-block");
    expect(usable).not.toContain("arm-block-first-run");
    const gone = {
      ...demoPack,
      stops: demoPack.stops.map((each) =>
        each.id === "arm-block" ? { ...each, replacedBy: "HL-1048" } : each,
      ),
    };
    expect(ids(gone)).not.toContain("arm-block");
  });

  it("leads to what took its place, also over two changes, and not in a circle", () => {
    expect(replacementOf(demoPack, stop("arm-block-first-run"))?.id).toBe("low-arm-block");
    const twice = {
      ...demoPack,
      stops: demoPack.stops.map((each) =>
        each.id === "low-arm-block" ? { ...each, replacedBy: "HL-1072" } : each,
      ),
    };
    expect(replacementOf(twice, stop("arm-block-first-run"))?.id).toBe("tall-arm-block");
    const circle = {
      ...twice,
      stops: twice.stops.map((each) =>
        each.id === "tall-arm-block" ? { ...each, replacedBy: "HL-1048" } : each,
      ),
    };
    expect(replacementOf(circle, stop("arm-block-first-run"))?.id).toBe("tall-arm-block");
  });

  it("is offered in the heights of its build", () => {
    expect(heightsOf(demoPack, stop("arm-block"))).toEqual([48, 52, 72]);
    expect(heightsOf(demoPack, stop("hard-block"))).toEqual([60]);
  });
});

describe("similar stops", () => {
  it("come nearest first, none of another duty, none that can't be ordered, never itself", () => {
    const wanted = stop("arm-block-first-run");
    const found = similarStops(demoPack, wanted, 30);
    expect(found[0]?.stop.id).toBe("arm-block");
    expect(found.every((each) => each.stop.duty === "impact" && isOffered(each.stop))).toBe(true);
    expect(found.map((each) => each.stop.id)).not.toContain(wanted.id);
  });

  it("say how far they are", () => {
    const [nearest] = similarStops(demoPack, stop("arm-block-first-run"));
    if (!nearest) throw new Error("none");
    expect(withPlainSpaces(sentenceText(similarText(nearest), "mm"))).toMatch(
      /^1\.0 mm taller, [\d.]+ classes? (stiffer|softer), 1\.1 mm more usable, mounts the same way$/,
    );
    const [unknown] = similarStops(demoPack, { freeHeight: { values: [50], tol: 1 } });
    expect(unknown && sentenceText(similarText(unknown), "mm")).toContain("check the thread");
  });
});

describe("a pack of an earlier version", () => {
  it("is read as one of today, and its text is not altered", () => {
    const old = { ...JSON.parse(JSON.stringify(demoPack)), version: 1 };
    const read = readPackValue(old);
    if (!read.ok) throw new Error(inModelUnits(read.fault.sentence));
    expect(read.value).toEqual(demoPack);
    expect(old.version).toBe(1);
    expect(openPack(old).version).toBe(packVersion);
  });

  it("of a later one is refused in a sentence", () => {
    expect(changed({ version: 3 as never })).toEqual([
      "The library was made by a newer version of Stopfit (pack version 3); this one reads up to version 2. Update Stopfit, then open it again.",
    ]);
  });
});

it("a part number with its revision belongs to one stop, and a maker's code is short", () => {
  const [first, second] = demoPack.stops;
  if (!first || !second) throw new Error("no stops");
  expect(changed({ stops: [first, { ...second, partNumber: first.partNumber ?? "" }] }).at(0)).toBe(
    "The part number “HL-1060” belongs to more than one stop of the library with the same revision.",
  );
  const maker = { name: "Halden", code: "no good" };
  expect(changed({ maker }).join()).toContain("2 to 12 capital letters or digits");
});
