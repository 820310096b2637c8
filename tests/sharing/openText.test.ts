import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { type Opened, openPayload, openText, tooManyLinks } from "../../src/sharing/openText.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { linkTo, replyLink, shareLink } from "../../src/sharing/shareLink.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { reply } from "../support/sampleReply.ts";

const app = "https://stopfit.example/app/";
const demo = demoRecord("arm-fits");
const [one = "", two = "", three = ""] = ["1", "2", "3"].map(
  (digit) => `00000000-0000-4000-8000-00000000000${digit}`,
);

function linkOf(id: string): string {
  const link = shareLink({ ...demo, id }, app);
  if (!link.ok) throw new Error("no link");
  return link.value.address;
}

const opened = (text: string) => openText({ what: "The text", text });
const told = (outcome: Outcome<unknown> | undefined) =>
  outcome === undefined || outcome.ok
    ? ""
    : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;

/** The kind of what opened, and of a check its id. */
function inShort(outcome: Outcome<Opened>): string {
  if (!outcome.ok) return outcome.fault.code;
  return outcome.value.kind === "check" ? outcome.value.check.record.id : outcome.value.kind;
}

const body = Uint8Array.of(1, 2, 3);
const part = { photosLeftOut: 0, parts: 2, part: 0, mark: crc32(body), body };
const partLink = linkTo(payloadText(part, "digits"), app);

describe("a text that is opened", () => {
  it("is the one check that it holds, as a file or a link", () => {
    for (const text of [JSON.stringify({ ...demo, id: one }), `See ${linkOf(one)}`]) {
      expect(opened(text).map(inShort)).toEqual([one]);
    }
  });

  it("is as many checks and replies as it has links, in their order", () => {
    const text = [linkOf(one), replyLink(reply, app), linkOf(two), linkOf(one)].join("\n\n");
    expect(opened(text).map(inShort)).toEqual([one, "reply", two]);
    expect(opened([linkOf(one), linkOf(two)].join(" ")).map(inShort)).toEqual([one, two]);
  });

  it("opens what can be opened beside a link that is damaged", () => {
    const [damaged, sound] = opened(`${linkOf(one).slice(0, -20)} ${linkOf(two)}`);
    expect(told(damaged)).toMatch(/^payloadCut: The link is cut short: \d+ of \d+ characters/);
    expect(sound && inShort(sound)).toBe(two);
  });

  it("that is a record is that alone, whatever links its notes have", () => {
    const notes = `${linkOf(two)} ${linkOf(three)}`;
    const text = JSON.stringify({ ...demo, id: one, notes });
    for (const beginning of ["", " \n", "\ufeff", "\ufeff \n"]) {
      expect(opened(beginning + text).map(inShort)).toEqual([one]);
    }
    expect(opened(`[${text}]`).map(inShort)).toEqual(["notACheck"]);
    // A message may quote something in brackets.
    expect(opened(`Two [new]: ${notes}`).map(inShort)).toEqual([two, three]);
  });

  it("with nothing in it is one sentence", () => {
    expect(opened("").map(told)).toEqual([
      "noCheckInText: The text holds no check: neither a file that Stopfit saved nor a link to one.",
    ]);
  });

  it("opens fifty links, and says so where there are more", () => {
    const links = (count: number) =>
      Array.from({ length: count }, (_, at) => linkTo(`2x${at}`, app)).join(" ");
    expect(opened(links(50))).toHaveLength(50);
    expect(opened(links(50)).every((one) => !one.ok && one.fault.code === "payloadForeign")).toBe(
      true,
    );
    const more = opened(links(53));
    expect(more).toHaveLength(51);
    expect(told(more[50])).toBe(
      "tooManyLinks: Only 50 links are opened at a time. Paste the rest after these.",
    );
    expect(told(tooManyLinks(3))).toContain("Only 3 links");
  });
});

describe("the payload of a link", () => {
  it("is a whole check, or one code of several, for the camera to go on with", () => {
    const whole = openPayload(linkOf(one).split("#/open/")[1] ?? "");
    expect(inShort(whole)).toBe(one);
    expect(openPayload(partLink.split("#/open/")[1] ?? "")).toEqual({
      ok: true,
      value: { kind: "part", frame: part },
    });
  });

  it("that holds nothing is a sentence", () => {
    expect(told(openPayload("hello"))).toBe(
      "payloadForeign: The link holds no check from Stopfit. Look whether it is the right one.",
    );
  });
});
