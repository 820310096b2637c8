import { unzipSync } from "fflate";
import PostalMime, { type Address } from "postal-mime";
import { type Fault, fail, type Outcome, succeed } from "../physics/outcome.ts";
import type { Way } from "../records/review/submission.ts";
import { notAhead } from "../records/text/moment.ts";
import { cleanName } from "../records/text/soundText.ts";
import { readFileContent } from "../sharing/receivedFile.ts";
import { findPayloads } from "../sharing/shareLink.ts";
import * as messages from "../words/compiled/compute.ts";
import type { Message, Words } from "../words/message.ts";
import { isMail, isZip } from "./packedFile.ts";

/** One thing that may hold a check: a file that is not read yet, or a text. */
export type Unpacked =
  | { readonly kind: "file"; readonly file: File; readonly from?: string }
  | {
      readonly kind: "text";
      /** What is long stays bytes. */
      readonly text: string | Blob;
      readonly what: Words;
      readonly way: Way;
      readonly from?: string;
      readonly sentAt?: string;
    }
  /** What could not be taken apart, and why. */
  | { readonly kind: "refused"; readonly name: string; readonly fault: Fault };

/** A zip archive, each file in it and all of them together, bytes; and how many files. */
const zipBounds = {
  archive: 200_000_000,
  file: 40_000_000,
  together: 2_000_000_000,
  files: 10_000,
} as const;
const mailBytes = 60_000_000;
const partsOfMail = 200;
const linksOfMail = 50;
/** Unpacked at a time, so that memory holds no more. */
const filesAtOnce = 40;
const bytesAtOnce = 40_000_000;

/** What an archive or a mail holds, in its order. Works beside the screen; what it takes is bounded. */
export async function* unpack(file: File): AsyncGenerator<Unpacked> {
  if (await isZip(file)) yield* ofZip(file);
  else yield* ofMail(file);
}

function refused(file: File, what: Message): Unpacked {
  const sentence = [messages.file({ name: cleanName(file.name, 80), what })];
  return { kind: "refused", name: file.name, fault: { code: "notUnpacked", sentence } };
}

interface InZip {
  readonly name: string;
  readonly originalSize: number;
}

async function* ofZip(file: File): AsyncGenerator<Unpacked> {
  if (file.size > zipBounds.archive) {
    yield refused(file, messages.isTooLargeArchive);
    return;
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  const listed: InZip[] = [];
  let tooLarge = 0;
  let together = 0;
  const read = unpackWith(bytes, ({ name, originalSize, size }) => {
    const isFile = !name.endsWith("/") && !/(^|\/)(__MACOSX|\.)/.test(name);
    if (!isFile) return false;
    together += originalSize;
    if (Math.max(originalSize, size) > zipBounds.file) tooLarge += 1;
    else listed.push({ name, originalSize });
    return false;
  });
  if (!read.ok) {
    yield refused(file, messages.isZipArchiveThat);
    return;
  }
  if (listed.length > zipBounds.files || together > zipBounds.together) {
    yield refused(file, messages.holdsTooManyFiles);
    return;
  }
  if (tooLarge === 1) yield refused(file, messages.holdsFileThatIs);
  if (tooLarge > 1) yield refused(file, messages.holdsFilesThatAre({ tooLarge }));
  for (const group of groupsOf(listed)) {
    const unpacked = unpackWith(
      bytes,
      ({ name, originalSize }) => group.get(name) === originalSize,
    );
    if (!unpacked.ok) {
      yield refused(file, messages.isDamagedPartOf);
      return;
    }
    for (const [name, content] of Object.entries(unpacked.value)) {
      const inner = new File([content as BlobPart], name.split("/").at(-1) ?? name, {
        lastModified: file.lastModified,
      });
      if (await isZip(inner)) yield refused(inner, messages.isArchiveInArchive);
      else if (isMail(inner)) yield* ofMail(inner);
      else yield { kind: "file", file: inner };
    }
  }
}

/** The size of each file by its name. */
function* groupsOf(listed: readonly InZip[]): Generator<ReadonlyMap<string, number>> {
  let group = new Map<string, number>();
  let bytes = 0;
  for (const { name, originalSize } of listed) {
    if (group.size >= filesAtOnce || bytes + originalSize > bytesAtOnce) {
      yield group;
      group = new Map();
      bytes = 0;
    }
    group.set(name, originalSize);
    bytes += originalSize;
  }
  if (group.size > 0) yield group;
}

type Filter = NonNullable<NonNullable<Parameters<typeof unzipSync>[1]>["filter"]>;

function unpackWith(bytes: Uint8Array, filter: Filter): Outcome<{ [name: string]: Uint8Array }> {
  try {
    return succeed(unzipSync(bytes, { filter }));
  } catch {
    return fail("notUnpacked", [messages.archiveCantBeRead]);
  }
}

/** A mail's attachments and links, with whom it says that it is from. */
async function* ofMail(file: File): AsyncGenerator<Unpacked> {
  if (file.size > mailBytes) {
    yield refused(file, messages.isTooLargeMail);
    return;
  }
  const mail = await PostalMime.parse(await file.arrayBuffer()).catch(() => null);
  if (mail === null) {
    yield refused(file, messages.isMailThatCant);
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
    if (found > partsOfMail) {
      yield refused(file, messages.hasMoreThanAttachments({ partsOfMail }));
      break;
    }
    const attached = filename ?? "attachment";
    const read = await readFileContent(new File([content as BlobPart], attached));
    const what = messages.inMail({ attached: cleanName(attached, 80), name });
    if (read.ok) yield { kind: "text", text: read.value.text, what, way: "file", ...whence };
    else yield { kind: "refused", name: attached, fault: read.fault };
  }
  const body = `${mail.text ?? ""}\n${mail.html ?? ""}`;
  // The same link stands in both forms of a mail.
  for (const payload of new Set(findPayloads(body, linksOfMail))) {
    found += 1;
    const what = messages.linkInMail({ name });
    yield { kind: "text", text: `#/open/${payload}`, what, way: "link", ...whence };
  }
  if (found === 0) yield refused(file, messages.isMailWithoutCheck);
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
