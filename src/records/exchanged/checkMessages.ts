import * as z from "zod/mini";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/exchanged.ts";
import type { CheckRecord, Photo } from "../check/checkRecord.ts";
import { photoSchema } from "../check/checkSchema.ts";
import { readCheckValue } from "../check/readCheck.ts";
import { recordBounds } from "../check/recordFormat.ts";
import { soundPhoto } from "../photo/soundPhotos.ts";
import { canonicalText } from "../text/canonicalText.ts";
import { readJsonText } from "../text/jsonText.ts";
import { contentHash } from "./contentHash.ts";
import { isPersonalPlace, type PersonalTexts, withoutPersonal } from "./personalParts.ts";

const sentFormat = "stopfit-sent";
const sentVersion = 1;

/** One part of a check on its way, whose name is the hash of its content. */
export interface Part {
  readonly hash: string;
  readonly body: string;
}

/** A check in the pieces it is sent in: what was read apart from what is somebody's. */
export interface CheckParts {
  /** Names the others by their hashes. */
  readonly readings: Part;
  /** Names, ways to answer and notes; null: there are none. */
  readonly personal: Part | null;
  readonly photos: readonly Part[];
}

async function partOf(content: object): Promise<Part> {
  const body = canonicalText({ format: sentFormat, version: sentVersion, ...content });
  return { hash: await contentHash(body), body };
}

/** The same check gives the same pieces, whenever it is taken apart. */
export async function checkParts(record: CheckRecord): Promise<CheckParts> {
  const { record: check, texts } = withoutPersonal(record);
  const personal =
    Object.keys(texts).length === 0
      ? null
      : await partOf({ kind: "personal", checkId: record.id, texts });
  const photos: Part[] = [];
  for (const photo of record.photos ?? []) {
    photos.push(await partOf({ kind: "photo", checkId: record.id, photo }));
  }
  const readings = await partOf({
    kind: "readings",
    check,
    personal: personal?.hash ?? null,
    photos: photos.map(({ hash }) => hash),
  });
  return { readings, personal, photos };
}

/** What came in of a check, read and found sound. */
export type SentPart =
  | {
      readonly kind: "readings";
      readonly record: CheckRecord;
      readonly personal: string | null;
      readonly photos: readonly string[];
    }
  | { readonly kind: "personal"; readonly checkId: string; readonly texts: PersonalTexts }
  | { readonly kind: "photo"; readonly checkId: string; readonly photo: Photo };

const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));
const checkId = z.string().check(z.regex(/^[0-9a-f-]{36}$/i));
const text = z.string().check(z.maxLength(recordBounds.notesCharacters));

const envelope = z.looseObject({
  format: z.literal(sentFormat),
  version: z.number(),
});

const sentSchema = z.discriminatedUnion("kind", [
  z.object({
    kind: z.literal("readings"),
    check: z.unknown(),
    personal: z.nullable(hash),
    photos: z.array(hash).check(z.maxLength(recordBounds.photos)),
  }),
  z.object({ kind: z.literal("personal"), checkId, texts: z.record(z.string(), text) }),
  z.object({ kind: z.literal("photo"), checkId, photo: photoSchema }),
]);

const notWhole = (): Outcome<never> => fail("sentNotWhole", [messages.somethingCameInThat]);

/** A piece that came in by the engine: bounded, of the known shape, the check itself by its own rules. */
export function readSentPart(body: string): Outcome<SentPart> {
  const json = readJsonText(body, messages.whatCameIn);
  if (!json.ok) return json;
  const outer = envelope.safeParse(json.value);
  if (!outer.success) return notWhole();
  if (outer.data.version > sentVersion) {
    return fail("newerVersion", [messages.checkCameInFrom]);
  }
  const parsed = sentSchema.safeParse(json.value);
  if (!parsed.success) return notWhole();
  const part = parsed.data;
  if (part.kind === "readings") {
    const read = readCheckValue(part.check, messages.check);
    if (!read.ok) return { ok: false, fault: read.fault };
    return succeed({
      kind: "readings",
      record: read.value,
      personal: part.personal,
      photos: part.photos,
    });
  }
  if (part.kind === "photo") {
    const photo = soundPhoto(part.photo as Photo);
    return photo === null
      ? fail("sentNoPicture", [messages.photoCameInThat])
      : succeed({ kind: "photo", checkId: part.checkId, photo });
  }
  const texts = Object.fromEntries(
    Object.entries(part.texts).filter(([place]) => isPersonalPlace(place)),
  );
  return succeed({ kind: "personal", checkId: part.checkId, texts });
}
