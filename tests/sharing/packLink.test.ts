import { describe, expect, it } from "vitest";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { addCode, type CodeCollection, readCode } from "../../src/sharing/codeCollection.ts";
import { codesOfPacked } from "../../src/sharing/codeSeries.ts";
import { checkOnly, sharedOfFrame, sharedOfPayload } from "../../src/sharing/sharedCheck.ts";
import { findPayloads, linkOfPacked, packLibrary } from "../../src/sharing/shareLink.ts";
import { largePack } from "../support/largePack.ts";

const app = "https://stopfit.example/app/";
const small = {
  ...demoPack,
  stops: demoPack.stops.slice(0, 5),
  platforms: demoPack.platforms.slice(0, 1).map((each) => ({ ...each, usualStop: null })),
};

describe("a parts library", () => {
  it("goes whole in a link", () => {
    const link = linkOfPacked(packLibrary(demoPack), app);
    if (!link.ok) throw new Error(link.fault.code);
    const [payload = ""] = findPayloads(`Our parts:\n${link.value.address}\n`);
    expect(sharedOfPayload(payload)).toEqual({ ok: true, value: { kind: "pack", pack: demoPack } });
  });

  it("goes in codes, which are put together in any order", () => {
    const series = codesOfPacked(packLibrary(small), app);
    if (!series.ok) throw new Error(series.fault.code);
    let collection: CodeCollection | null = null;
    let found: ReturnType<typeof sharedOfFrame> | null = null;
    for (const { address, digits } of [...series.value.codes].reverse()) {
      const frame = readCode(`${address}${digits}`);
      if (!frame.ok) throw new Error(frame.fault.code);
      const added = addCode(collection, frame.value);
      if (!added.ok) throw new Error(added.fault.code);
      collection = added.value.collection;
      if (added.value.whole) found = sharedOfFrame(added.value.whole);
    }
    expect(found).toEqual({ ok: true, value: { kind: "pack", pack: small } });
  });

  it("too large for either is a sentence that names the file", () => {
    const link = linkOfPacked(packLibrary(largePack()), app);
    expect(link.ok ? "" : inModelUnits(link.fault.sentence)).toBe(
      "This library is too large for a link or a code. Hand it over as a file.",
    );
  });

  it("where only a check has a place is told from one", () => {
    const told = checkOnly({ ok: true, value: { kind: "pack", pack: demoPack } }, "The link");
    expect(told.ok ? "" : inModelUnits(told.fault.sentence)).toContain(
      "is a parts library, no check",
    );
  });
});
