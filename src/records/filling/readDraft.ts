import * as z from "zod/mini";
import { isReadingId, sideOf } from "../../physics/readings/readingId.ts";
import type { PartialCheckRecord } from "../check/checkRecord.ts";
import { checkSchema } from "../check/checkSchema.ts";
import { recordBounds } from "../check/recordFormat.ts";
import { changeRecord, newStoredCheck, type StoredCheck } from "../check/storedCheck.ts";
import type { Entry } from "../entry/entry.ts";
import type { Pack } from "../pack/pack.ts";
import { readJsonText } from "../text/jsonText.ts";
import { chooseLayout, chooseRightGeometry, setEntry } from "./changes.ts";
import { withEvents, withHouseNumbers } from "./rules.ts";
import { withTestedAtSpeed } from "./testedAtSpeed.ts";
import { withEstimates } from "./withEstimates.ts";

const text = (most: number) => z.string().check(z.maxLength(most));

const entrySchema = z.object({
  texts: z.array(text(20_000)).check(z.maxLength(3 * recordBounds.curvePoints)),
  unit: z.enum([
    "mm",
    "in",
    "kg",
    "lb",
    "N",
    "lbf",
    "N/mm",
    "lbf/in",
    "N·s/mm",
    "lbf·s/in",
    "deg",
    "",
  ]),
  tol: text(recordBounds.typedCharacters),
  tool: z.optional(text(recordBounds.labelCharacters)),
  reach: z.optional(text(recordBounds.labelCharacters)),
});

const draftSchema = z.object({
  format: z.literal("stopfit-check"),
  version: z.literal([1, 2]),
  createdAt: z.iso.datetime(),
  author: z.optional(
    z.object({
      role: z.enum(["installer", "customer", "support"]),
      name: z.optional(text(recordBounds.labelCharacters)),
      contact: z.optional(text(recordBounds.labelCharacters)),
    }),
  ),
  vehicle: z.optional(
    z.object({
      label: z.optional(text(recordBounds.labelCharacters)),
      platformId: z.optional(z.nullable(text(recordBounds.labelCharacters))),
      use: z.optional(z.enum(["daily", "towing", "offroad"])),
    }),
  ),
  axle: z.optional(z.enum(["front", "rear"])),
  layout: z.optional(z.object({ kind: z.optional(z.enum(["arm", "damper", "strut", "axle"])) })),
  corners: z
    .array(
      z.object({
        side: z.enum(["left", "right"]),
        limits: z
          .array(
            z.object({
              kind: z.enum(["tyre", "damper", "spring", "metal", "other"]),
              at: z.enum(["wheel", "stop", "arm"]),
            }),
          )
          .check(z.maxLength(recordBounds.limits)),
      }),
    )
    .check(z.maxLength(2)),
  stop: z.optional(
    z.object({
      name: z.optional(text(recordBounds.labelCharacters)),
      duty: z.optional(z.enum(["impact", "carry"])),
      testedAtSpeed: z.optional(z.boolean()),
    }),
  ),
  rules: z.optional(z.object({ roadClass: z.optional(z.enum(["A", "B", "C", "D", "E"])) })),
  reference: checkSchema.shape.reference,
  photos: checkSchema.shape.photos,
  notes: z.optional(text(recordBounds.notesCharacters)),
  draft: z.object({
    name: text(recordBounds.labelCharacters),
    entries: z.record(text(80), entrySchema),
    progress: z.object({
      step: text(80),
      skipped: z.array(text(80)).check(z.maxLength(200)),
      rightGeometry: z.nullable(z.enum(["same", "own"])),
    }),
  }),
});

type Draft = z.infer<typeof draftSchema>;

/** Zod gives an absent optional field as undefined; a record has no such field at all. */
function withoutUndefined<Shape extends object>(
  shape: Shape,
): { [Name in keyof Shape]: Exclude<Shape[Name], undefined> } {
  return Object.fromEntries(Object.entries(shape).filter(([, value]) => value !== undefined)) as {
    [Name in keyof Shape]: Exclude<Shape[Name], undefined>;
  };
}

function storedFromDraft(draft: Draft, pack: Pack): StoredCheck {
  const fresh = newStoredCheck(draft.draft.name);
  const { vehicle, author, axle, stop, rules, reference, photos, notes, corners, createdAt } =
    draft;
  let stored = changeRecord(fresh, (record) => ({
    ...record,
    ...withoutUndefined({
      createdAt,
      axle,
      notes,
      reference: reference as PartialCheckRecord["reference"],
      photos: photos as PartialCheckRecord["photos"],
      author: author && withoutUndefined(author),
      stop: stop && withoutUndefined({ name: stop.name, duty: stop.duty }),
      rules: rules?.roadClass && { roadClass: rules.roadClass },
    }),
    vehicle: { ...record.vehicle, ...withoutUndefined(vehicle ?? {}) },
    corners,
  }));
  const entries = Object.fromEntries(
    Object.entries(draft.draft.entries).map(([id, entry]) => [id, withoutUndefined(entry)]),
  ) as { [id: string]: Entry };
  stored = { ...stored, createdAt, entries };
  for (const [id, entry] of Object.entries(stored.entries)) {
    if (isReadingId(id) && !isOfAnotherSide(id, draft)) stored = setEntry(stored, id, entry);
  }
  if (draft.layout?.kind) stored = chooseLayout(stored, draft.layout.kind);
  const { rightGeometry, step, skipped } = draft.draft.progress;
  if (rightGeometry) stored = chooseRightGeometry(stored, rightGeometry);
  if (stop?.testedAtSpeed !== undefined) stored = withTestedAtSpeed(stored, stop.testedAtSpeed);
  // Cautions and standing the vehicle are asked anew: another person may go on with it.
  return withEstimates(
    withEvents(withHouseNumbers({ ...stored, progress: { ...stored.progress, step, skipped } })),
    "mm",
    pack,
  );
}

function isOfAnotherSide(id: string, draft: Draft): boolean {
  const side = sideOf(id);
  return side !== null && !draft.corners.some((corner) => corner.side === side);
}

/** A check that was saved before it was complete, as a new check of this phone; null: it is none. */
export function readDraftText(fileText: string, pack: Pack): StoredCheck | null {
  const json = readJsonText(fileText, "The file");
  if (!json.ok) return null;
  const parsed = draftSchema.safeParse(json.value);
  if (!parsed.success) return null;
  const sides = parsed.data.corners.map(({ side }) => side);
  return new Set(sides).size === sides.length ? storedFromDraft(parsed.data, pack) : null;
}
