import type { ReadingId } from "../../physics/readings/index.ts";
import { type Message, type Sentence, semicolonList, type Words } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/check.ts";
import { adviceWords } from "../review/adviceWords.ts";
import { quantityKindOf, readingsOf } from "../review/oddReadings.ts";
import { canonicalText } from "../text/canonicalText.ts";
import { isPlainObject } from "../text/plainObject.ts";
import { isSameAdvice } from "./advised.ts";
import type { CheckRecord, TypedReading } from "./checkRecord.ts";

/** One thing that differs between two versions of a check; null: not there. */
export interface Difference {
  readonly what: Words;
  readonly before: Sentence | null;
  readonly after: Sentence | null;
}

/** What is told as readings, and what no person has to compare. */
const toldElsewhere = new Set([
  "layout.readings",
  "corners",
  "stop.freeHeight",
  "photos",
  "advised",
  "reference",
]);

function readingSentence(id: ReadingId, reading: TypedReading): Sentence {
  const kind = quantityKindOf(id);
  return [
    messages.once({
      meanOf: { kind, value: meanOf(reading) },
      tol: { kind, value: reading.tol },
      values: reading.values.length,
    }),
  ];
}

function fieldsOf(value: unknown, path: string, found: Map<string, string>): void {
  if (toldElsewhere.has(path)) return;
  if (isPlainObject(value)) {
    for (const [name, inner] of Object.entries(value)) {
      fieldsOf(inner, path === "" ? name : `${path}.${name}`, found);
    }
    return;
  }
  if (value !== undefined) found.set(path, plainText(value));
}

function plainText(value: unknown): string {
  const text = typeof value === "string" ? value : canonicalText(value);
  return text.length > 200 ? `${text.slice(0, 200)} …` : text;
}

/** "ride.wheelRateNPerMm" → "ride: wheel rate N per mm". */
function fieldWords(path: string): string {
  return path
    .split(".")
    .map((name) => name.replace(/([a-z])([A-Z])/g, "$1 $2").replace(/ [A-Z][a-z]/g, lowered))
    .join(": ");
}

function lowered(text: string): string {
  return text.toLowerCase();
}

/** Everything in which `after` differs from `before`, readings first. */
export function recordDifferences(before: CheckRecord, after: CheckRecord): Difference[] {
  const differences: Difference[] = [];
  const old = new Map(readingsOf(before).map((each) => [each.id, each]));
  const now = new Map(readingsOf(after).map((each) => [each.id, each]));
  for (const id of new Set([...now.keys(), ...old.keys()])) {
    const [was, is] = [old.get(id), now.get(id)];
    if (was && is && canonicalText(was.reading) === canonicalText(is.reading)) continue;
    differences.push({
      what: is?.name ?? was?.name ?? id,
      before: was ? readingSentence(id, was.reading) : null,
      after: is ? readingSentence(id, is.reading) : null,
    });
  }
  const [fields, fieldsNow] = [new Map<string, string>(), new Map<string, string>()];
  fieldsOf(before, "", fields);
  fieldsOf(after, "", fieldsNow);
  for (const path of new Set([...fieldsNow.keys(), ...fields.keys()])) {
    const [was, is] = [fields.get(path), fieldsNow.get(path)];
    if (was === is) continue;
    differences.push({
      what: fieldWords(path),
      before: was === undefined ? null : [was],
      after: is === undefined ? null : [is],
    });
  }
  const [advice, adviceNow] = [before.advised?.at(-1), after.advised?.at(-1)];
  if (adviceNow && (!advice || !isSameAdvice(advice, adviceNow))) {
    differences.push({
      what: messages.prescribedByApp,
      before: advice ? [adviceWords(advice)] : null,
      after: [adviceWords(adviceNow)],
    });
  }
  const [photos, photosNow] = [before.photos ?? [], after.photos ?? []];
  if (canonicalText(photos) !== canonicalText(photosNow)) {
    const words = (count: number) => messages.photoCount({ count });
    differences.push({
      what: messages.photos,
      before: [words(photos.length)],
      after:
        photos.length === photosNow.length
          ? [messages.photosNotSame({ photos: words(photosNow.length) })]
          : [words(photosNow.length)],
    });
  }
  const perWheel = (record: CheckRecord) =>
    canonicalText(
      record.corners.map(({ side, limits }) => [
        side,
        limits.map(({ kind, at, perWheel: closing }) => [kind, at, closing ?? 1]),
      ]),
    );
  if (perWheel(before) !== perWheel(after)) {
    differences.push({
      what: messages.clearances,
      before: [limitsText(before)],
      after: [limitsText(after)],
    });
  }
  return differences;
}

function limitsText({ corners }: CheckRecord): Words {
  return corners
    .map(({ side, limits }): Message => {
      const words = limits.map(({ kind, at, perWheel = 1 }) => messages.at({ kind, at, perWheel }));
      const told = words.length === 0 ? messages.noneWord : semicolonList(words);
      return messages.limitsOfSide({ side, limits: told });
    })
    .reduceRight(
      (rest: Words, first) => (rest === "" ? first : messages.sentences({ first, rest })),
      "",
    );
}
