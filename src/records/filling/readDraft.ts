import * as z from "zod/mini";
import { isReadingId, layoutKinds, sideOf } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/filling.ts";
import { checkSchema, vehicleSchema } from "../check/checkSchema.ts";
import { choicesApart } from "../check/choicesAmongEntries.ts";
import { withoutTicks } from "../check/fullTravel.ts";
import { openStored } from "../check/openStored.ts";
import { checkFormat, checkVersion, recordBounds } from "../check/recordFormat.ts";
import { cornerFields, limitFields } from "../check/schema/cornerSchema.ts";
import { allMay, instantSchema, label, may } from "../check/schema/fields.ts";
import { armRoleSchema, stopOnSchema } from "../check/schema/layoutSchema.ts";
import { rulesSchema } from "../check/schema/rideSchema.ts";
import { stopSchema } from "../check/schema/stopSchema.ts";
import { changeRecord, newStoredCheck, type StoredCheck } from "../check/storedCheck.ts";
import { readJsonText } from "../text/jsonText.ts";
import { chooseLayout, chooseRightGeometry, setEntry } from "./changes.ts";
import { withEvents, withHouseNumbers } from "./rules.ts";
import { withTestedAtSpeed } from "./testedAtSpeed.ts";

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
  tool: may(label),
  reach: may(label),
  by: may(label),
});

const { advised, author, axle, fitted, fullTravel, job, notes, photos, reference, second } =
  checkSchema.shape;

/** What of a record no entry holds; everything else is read from the entries anew. */
const draftSchema = z.object({
  format: z.literal(checkFormat),
  version: z.literal([1, checkVersion]),
  createdAt: instantSchema,
  author: may(author),
  vehicle: may(
    z.object({
      ...allMay(z.pick(vehicleSchema, { platformId: true, use: true }).shape),
      label: may(label),
    }),
  ),
  axle: may(axle),
  layout: may(
    z.object({
      kind: may(z.enum(layoutKinds)),
      armRole: may(armRoleSchema),
      stopOn: may(stopOnSchema),
    }),
  ),
  corners: z
    .array(
      z.object({
        ...z.pick(cornerFields, { side: true, settleMm: true }).shape,
        limits: z
          .array(z.pick(limitFields, { kind: true, at: true }))
          .check(z.maxLength(recordBounds.limits)),
      }),
    )
    .check(z.maxLength(2)),
  stop: may(
    z.object({
      ...allMay(z.pick(stopSchema, { duty: true, testedAtSpeed: true }).shape),
      ...z.pick(stopSchema, { branches: true, partNumber: true, revision: true, batch: true })
        .shape,
      name: may(label),
    }),
  ),
  rules: may(z.pick(rulesSchema, { roadClass: true, roadKurtosis: true })),
  fullTravel,
  job,
  advised,
  fitted,
  second,
  reference,
  photos,
  notes,
  draft: z.object({
    name: label,
    entries: z.record(text(80), entrySchema),
    progress: z.object({
      step: text(80),
      skipped: z.array(text(80)).check(z.maxLength(200)),
      rightGeometry: z.nullable(z.enum(["same", "own"])),
    }),
    aside: may(z.unknown()),
  }),
});

type Draft = z.infer<typeof draftSchema>;

function storedFromDraft(given: Draft): StoredCheck {
  const { draft, format: _format, version: _version, ...typed } = given;
  const { kind, ...layout } = given.layout ?? {};
  const { testedAtSpeed, ...stop } = given.stop ?? {};
  const { name, entries, progress, aside } = draft;
  let stored = changeRecord(newStoredCheck(name), (record) => ({
    ...record,
    ...typed,
    vehicle: { ...record.vehicle, ...typed.vehicle },
    ...(given.layout && { layout }),
    ...(given.stop && { stop }),
  }));
  const held = choicesApart(withoutTicks(entries));
  stored = { ...stored, createdAt: given.createdAt, ...held };
  for (const [id, entry] of Object.entries(stored.entries)) {
    if (isReadingId(id) && !isOfAnotherSide(id, given)) stored = setEntry(stored, id, entry);
  }
  if (kind) stored = chooseLayout(stored, kind);
  const { rightGeometry, step, skipped } = progress;
  if (rightGeometry) stored = chooseRightGeometry(stored, rightGeometry);
  if (testedAtSpeed !== undefined) stored = withTestedAtSpeed(stored, testedAtSpeed);
  // All cautions and standing the vehicle are asked anew: another person may go on with it.
  const begun = { ...stored, progress: { ...stored.progress, step, skipped } };
  const filled = withEvents(withHouseNumbers(begun));
  return openStored({ ...filled, aside }) ?? filled;
}

function isOfAnotherSide(id: string, draft: Draft): boolean {
  const side = sideOf(id);
  return side !== null && !draft.corners.some((corner) => corner.side === side);
}

/**
 * A check that was saved before it was complete, as a new check of this phone; null: it is none. What was
 * estimated in it is yet to be made anew.
 */
export function readDraftText(fileText: string): StoredCheck | null {
  const json = readJsonText(fileText, messages.file);
  if (!json.ok) return null;
  const parsed = draftSchema.safeParse(json.value);
  if (!parsed.success) return null;
  const sides = parsed.data.corners.map(({ side }) => side);
  return new Set(sides).size === sides.length ? storedFromDraft(parsed.data) : null;
}
