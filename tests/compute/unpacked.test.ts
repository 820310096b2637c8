import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { Unpacked } from "../../src/compute/unpack.ts";
import { unpacked } from "../../src/compute/unpacker.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { sourcesOfFiles } from "../../src/screens/desk/sources.ts";
import { shareLink } from "../../src/sharing/shareLink.ts";
import { demoRecord } from "../support/demoRecords.ts";

const record = demoRecord("arm-fits");
const json = JSON.stringify(record);

async function all(...files: File[]): Promise<Unpacked[]> {
  const found: Unpacked[] = [];
  for await (const source of unpacked(sourcesOfFiles(files))) found.push(source);
  return found;
}

function zip(files: { [name: string]: string }): File {
  const content = Object.fromEntries(
    Object.entries(files).map(([name, text]) => [name, strToU8(text)]),
  );
  return new File([zipSync(content) as BlobPart], "checks.zip");
}

const boundary = "part-of-mail";
function mail({
  body = "See the attachment.",
  attachment = json,
  name = "check.json",
} = {}): string {
  return [
    'From: "Robin Hale" <robin@hale.example>',
    "To: desk@haldenlane.example",
    "Date: Sat, 02 May 2026 09:30:00 +0000",
    "Subject: My check",
    "MIME-Version: 1.0",
    `Content-Type: multipart/mixed; boundary="${boundary}"`,
    "",
    `--${boundary}`,
    "Content-Type: text/plain; charset=utf-8",
    "",
    body,
    `--${boundary}`,
    `Content-Type: application/json; name="${name}"`,
    "Content-Transfer-Encoding: base64",
    `Content-Disposition: attachment; filename="${name}"`,
    "",
    Buffer.from(attachment).toString("base64").replace(/.{76}/g, "$&\r\n"),
    `--${boundary}--`,
    "",
  ].join("\r\n");
}

describe("what is chosen is taken apart", () => {
  it("a plain file stays as it is", async () => {
    const file = new File([json], "check.json");
    expect(await all(file)).toEqual([{ kind: "file", file }]);
  });

  it("a zip gives its files, those in folders too, and nothing that a system put beside them", async () => {
    const archive = zip({
      "a.json": json,
      "in/b.json": json,
      "__MACOSX/a.json": "x",
      "in/.b": "x",
    });
    const found = await all(archive);
    expect(found.map((each) => (each.kind === "file" ? each.file.name : each.kind))).toEqual([
      "a.json",
      "b.json",
    ]);
    const [first] = found;
    expect(first?.kind === "file" && (await first.file.text())).toBe(json);
  });

  it("a mail gives its attachment, with whom it is from and when", async () => {
    const [found, ...more] = await all(new File([mail()], "mail.eml"));
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      kind: "text",
      way: "file",
      text: json,
      from: "Robin Hale <robin@hale.example>",
      sentAt: "2026-05-02T09:30:00.000Z",
    });
  });

  it("a mail with a link gives the link, once", async () => {
    const link = shareLink(record, "https://app.example/");
    if (!link.ok) throw new Error(link.fault.code);
    const text = mail({ body: link.value.address, name: "picture.png" }).replaceAll(
      "application/json",
      "image/png",
    );
    const found = await all(new File([text], "mail.eml"));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ kind: "text", way: "link", from: expect.any(String) });
  });

  it("mails in a zip are opened; an archive in an archive is refused in a sentence", async () => {
    const found = await all(zip({ "mail.eml": mail() }));
    expect(found[0]).toMatchObject({ kind: "text", from: "Robin Hale <robin@hale.example>" });
    const inner = zipSync({ "a.json": strToU8(json) });
    const outer = new File([zipSync({ "inner.zip": inner }) as BlobPart], "outer.zip");
    const refused = (await all(outer)).map((each) =>
      each.kind === "refused" ? inModelUnits(each.fault.sentence) : each.kind,
    );
    expect(refused).toEqual([expect.stringContaining("archive in an archive")]);
  });

  it("what is too large or too many is refused before it is unpacked, and the rest comes", async () => {
    const large = new File([zipSync({ "a.json": strToU8(json) }) as BlobPart], "large.zip");
    Object.defineProperty(large, "size", { value: 200_000_001 });
    const many = Object.fromEntries(
      Array.from({ length: 10_001 }, (_, at) => [`${at}.json`, new Uint8Array()]),
    );
    const huge = zipSync({ "a.json": strToU8(json), "b.json": new Uint8Array(40_000_001) });
    const words = async (file: File) =>
      (await all(file)).map((each) =>
        each.kind === "refused" ? inModelUnits(each.fault.sentence) : each.kind,
      );
    expect(await words(large)).toEqual([expect.stringContaining("too large an archive")]);
    expect(await words(new File([zipSync(many) as BlobPart], "many.zip"))).toEqual([
      expect.stringContaining("holds too many files"),
    ]);
    expect(await words(new File([huge as BlobPart], "huge.zip"))).toEqual([
      expect.stringContaining("holds a file that is too large"),
      "file",
    ]);
  });

  it("a mail's attachment is held to what any file is: no message of millions of letters", async () => {
    const found = await all(new File([mail({ attachment: "x".repeat(2_000_001) })], "mail.eml"));
    expect(found).toMatchObject([{ kind: "refused", name: "check.json" }]);
  });

  it("what is damaged, or holds no check, is refused in a sentence and nothing throws", async () => {
    const whole = new Uint8Array(zipSync({ "a.json": strToU8(json) }));
    const damaged = new File([whole.slice(0, whole.length - 30)], "cut.zip");
    const none = new File(
      [mail({ attachment: "x", name: "a.pdf" }).replace("application/json", "application/pdf")],
      "m.eml",
    );
    for (const source of await all(damaged, none)) {
      expect(source.kind).toBe("refused");
      if (source.kind === "refused") expect(inModelUnits(source.fault.sentence)).toMatch(/“.*”/);
    }
  });
});
