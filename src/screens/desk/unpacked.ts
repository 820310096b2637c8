import type { Address } from "postal-mime";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { notAhead } from "../../records/text/moment.ts";
import { cleanName } from "../../records/text/soundText.ts";
import { findPayloads } from "../../sharing/shareLink.ts";
import type { Source } from "./sources.ts";

/** A zip archive: all of it, and each file in it, bytes; and how many files. */
const zipBounds = { archive: 200_000_000, file: 40_000_000, files: 10_000 } as const;
const mailBytes = 60_000_000;
/** Unpacked at a time, so that memory holds no more. */
const filesAtOnce = 40;

/** What is chosen, with archives and mails taken apart: what they hold comes in their place. */
export async function* unpacked(sources: AsyncIterable<Source>): AsyncGenerator<Source> {
  for await (const source of sources) {
    if (source.kind !== "file") yield source;
    else if (await isZip(source.file)) yield* ofZip(source.file);
    else if (isMail(source.file)) yield* ofMail(source.file);
    else yield source;
  }
}

async function isZip(file: File): Promise<boolean> {
  if (file.size < 22) return false;
  const head = new Uint8Array(
    await file
      .slice(0, 4)
      .arrayBuffer()
      .catch(() => new ArrayBuffer(0)),
  );
  return head[0] === 0x50 && head[1] === 0x4b && head[2] === 3 && head[3] === 4;
}

function isMail({ name, type }: File): boolean {
  return /\.eml$/i.test(name) || type === "message/rfc822";
}

function refused(file: File, what: string): Source {
  const sentence = [`The file “${cleanName(file.name, 80)}” ${what}`];
  return { kind: "refused", name: file.name, fault: { code: "notUnpacked", sentence } };
}

async function* ofZip(file: File): AsyncGenerator<Source> {
  if (file.size > zipBounds.archive) {
    yield refused(file, "is too large an archive. Unpack it, then drop the folder.");
    return;
  }
  const { unzipSync } = await import("fflate");
  const bytes = new Uint8Array(await file.arrayBuffer());
  const names: string[] = [];
  let tooLarge = 0;
  const listed = unpackWith(unzipSync, bytes, ({ name, originalSize }) => {
    const isFile = !name.endsWith("/") && !/(^|\/)(__MACOSX|\.)/.test(name);
    if (isFile && originalSize > zipBounds.file) tooLarge += 1;
    else if (isFile) names.push(name);
    return false;
  });
  if (!listed.ok) {
    yield refused(file, "is a zip archive that can't be read. Ask for it to be sent again.");
    return;
  }
  if (names.length > zipBounds.files) {
    yield refused(file, "holds too many files. Unpack it, then drop them in parts.");
    return;
  }
  if (tooLarge > 0) yield refused(file, `holds ${tooLarge} files that are too large to be checks.`);
  for (let at = 0; at < names.length; at += filesAtOnce) {
    const wanted = new Set(names.slice(at, at + filesAtOnce));
    const group = unpackWith(
      unzipSync,
      bytes,
      ({ name, originalSize }) => wanted.has(name) && originalSize <= zipBounds.file,
    );
    if (!group.ok) {
      yield refused(
        file,
        "is damaged: a part of it can't be unpacked. Ask for it to be sent again.",
      );
      return;
    }
    for (const [name, content] of Object.entries(group.value)) {
      const inner = new File([content as BlobPart], name.split("/").at(-1) ?? name, {
        lastModified: file.lastModified,
      });
      if (await isZip(inner)) yield refused(inner, "is an archive in an archive. Unpack it first.");
      else if (isMail(inner)) yield* ofMail(inner);
      else yield { kind: "file", file: inner };
    }
  }
}

type Unzip = typeof import("fflate").unzipSync;
type Filter = NonNullable<NonNullable<Parameters<Unzip>[1]>["filter"]>;

function unpackWith(
  unzip: Unzip,
  bytes: Uint8Array,
  filter: Filter,
): Outcome<{ [name: string]: Uint8Array }> {
  try {
    return succeed(unzip(bytes, { filter }));
  } catch {
    return fail("notUnpacked", ["The archive can't be read."]);
  }
}

/** A mail's attachments and links, with whom it says that it is from. */
async function* ofMail(file: File): AsyncGenerator<Source> {
  if (file.size > mailBytes) {
    yield refused(file, "is too large a mail. Save its attachment and choose that.");
    return;
  }
  const { default: PostalMime } = await import("postal-mime");
  const mail = await PostalMime.parse(await file.arrayBuffer()).catch(() => null);
  if (mail === null) {
    yield refused(file, "is a mail that can't be read. Save its attachment and choose that.");
    return;
  }
  const from = mailFrom(mail.from);
  const date = mail.date ? Date.parse(mail.date) : Number.NaN;
  const whence = {
    ...(from && { from }),
    ...(!Number.isNaN(date) && { sentAt: notAhead(new Date(date).toISOString()) }),
  };
  const name = cleanName(file.name, 80);
  let found = 0;
  for (const { filename, mimeType, content } of mail.attachments) {
    if (!isReadable(filename ?? "", mimeType)) continue;
    found += 1;
    const text =
      typeof content === "string" ? content : new TextDecoder().decode(content as ArrayBuffer);
    const what = `“${cleanName(filename ?? "attachment", 80)}” in the mail “${name}”`;
    yield { kind: "text", text, what, way: "file", ...whence };
  }
  const body = `${mail.text ?? ""}\n${mail.html ?? ""}`;
  // The same link stands in both forms of a mail.
  for (const payload of new Set(findPayloads(body, 50))) {
    found += 1;
    const what = `The link in the mail “${name}”`;
    yield { kind: "text", text: `#/open/${payload}`, what, way: "link", ...whence };
  }
  if (found === 0) yield refused(file, "is a mail without a check in it.");
}

function isReadable(filename: string, mimeType: string): boolean {
  return /\.(json|txt)$/i.test(filename) || mimeType === "application/json";
}

function mailFrom(from: Address | undefined): string {
  if (!from) return "";
  const name = cleanName(from.name ?? "", 120);
  const address = cleanName(from.address ?? "", 120);
  if (!address) return name;
  return name && name !== address ? `${name} <${address}>` : address;
}
