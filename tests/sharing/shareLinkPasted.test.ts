import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { checkOfPayload } from "../../src/sharing/sharedCheck.ts";
import { findPayloads, packCheck, shareLink, wholeFrame } from "../../src/sharing/shareLink.ts";
import { demoNames, demoRecord } from "../support/demoRecords.ts";

const app = "https://stopfit.example/app/";
const demoRecords: CheckRecord[] = demoNames.map(demoRecord);

function linkOf(record: CheckRecord): string {
  const link = shareLink(record, app);
  if (!link.ok) throw new Error(inModelUnits(link.fault.sentence));
  return link.value.address;
}

describe("pasted text", () => {
  const [first, second] = demoRecords;
  if (first === undefined || second === undefined) throw new Error("no demo checks");

  it("gives every link in it once, in order", () => {
    const text = `Look: ${linkOf(first)}, and <${linkOf(second)}>. Again: ${linkOf(first)}`;
    expect(findPayloads(text).map((payload) => checkOfPayload(payload))).toEqual([
      { ok: true, value: { record: first, photosLeftOut: 0 } },
      { ok: true, value: { record: second, photosLeftOut: 0 } },
    ]);
  });

  it.each([
    ["lines", "\n"],
    ["lines of mail", "=\r\n"],
    ["quoted lines", "\r\n> "],
  ])("puts a link together that was broken into %s", (_, lineEnd) => {
    const broken = (linkOf(first).match(/.{1,72}/g) ?? []).join(lineEnd);
    const [payload = ""] = findPayloads(`See:\n${broken}\nThanks\n`);
    expect(checkOfPayload(payload)).toMatchObject({ ok: true, value: { record: first } });
  });

  it("finds nothing where there is nothing", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        if (!text.includes("#/open/")) expect(findPayloads(text)).toEqual([]);
      }),
    );
  });

  it("gives as many links as are asked for, and no more", () => {
    const text = ["2baa", "2bbb", "2baa", "2bcc"].map((payload) => `${app}#/open/${payload}`);
    expect(findPayloads(text.join(" "), 1)).toEqual(["2baa"]);
    expect(findPayloads(text.join(" "), 2)).toEqual(["2baa", "2bbb"]);
    expect(findPayloads(text.join(" "), 3)).toEqual(["2baa", "2bbb", "2bcc"]);
    expect(findPayloads(text.join(" "), 0)).toEqual([]);
  });

  const [whole = ""] = findPayloads(linkOf(first));

  it("gives exactly the payload, however deep it was quoted, and none of the words around it", () => {
    for (const lineEnd of ["\n", "=\n", " \t\r\n\t", "\n> ", "\n>> ", "\n> > > "]) {
      const broken = (linkOf(first).match(/.{1,72}/g) ?? []).join(lineEnd);
      for (const end of [`${lineEnd}Thanks`, "", ".", ") and more"]) {
        expect([lineEnd, findPayloads(`See:\n${broken}${end}`)]).toEqual([lineEnd, [whole]]);
      }
    }
  });

  it("ends a payload in digits, which has no last letter, where its length says", () => {
    const packed = packCheck(first);
    if (!packed.ok) throw new Error("not packed");
    const digits = payloadText(wholeFrame(packed.value), "digits");
    expect(findPayloads(`${app}#/open/${digits}\n5 bolts`)).toEqual([digits]);
  });

  it("ends a link that was cut off at a blank line, and one of no known kind at its line", () => {
    expect(findPayloads(`${app}#/open/2bAAAA\n\nMore words`)).toEqual(["2bAAAA"]);
    expect(findPayloads(`${app}#/open/2bAAAA`)).toEqual(["2bAAAA"]);
    const unknown = `2x${"A".repeat(50)}`;
    expect(findPayloads(`${app}#/open/${unknown}\nMore words`)).toEqual([unknown]);
  });

  it("puts no more than 2000 lines together, however many a link was broken into", () => {
    const long = `2b${Buffer.from([0, 1, 0, 0, 8, 0]).toString("base64url")}${"A".repeat(2500)}`;
    const broken = `${long.slice(0, 2)}\n${[...long.slice(2)].join("\n")}`;
    expect(findPayloads(`${app}#/open/${broken}`)).toEqual([long.slice(0, 2 + 1999)]);
  });
});
