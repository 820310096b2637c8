import type { Reading, RideQuantity } from "../../physics/fitment.ts";
import {
  isGeometryReadingName,
  type ReadingId,
  withoutSide,
} from "../../physics/readings/index.ts";
import type { Message, Sentence } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/filling.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { withField } from "../entry/entryPath.ts";
import { catalogueEntry } from "../entry/readingCatalogue.ts";
import {
  type Pack,
  type Platform,
  platformOf,
  platformReading,
  takenFrom,
  takenPlatform,
} from "../pack/pack.ts";
import { same } from "../pack/packDifferences.ts";
import { chooseLayout } from "./changes.ts";

/** The copy that the check took when it was put on its platform; null where it has none. */
function ownCopy({ record }: StoredCheck): Platform | null {
  const copy = record.reference?.platform;
  return copy && copy.id === record.vehicle?.platformId ? copy : null;
}

/**
 * The platform that this check is on, as the pack had it when it was chosen; where the check has no copy,
 * as the pack has it now. Null where there is none.
 */
export function platformOfCheck(stored: StoredCheck, pack: Pack): Platform | null {
  return ownCopy(stored) ?? platformOf(pack, stored.record.vehicle?.platformId ?? null);
}

/** Every platform to choose from: those of the pack in use, and the check's own where that one is gone. */
export function platformChoices(stored: StoredCheck, pack: Pack): readonly Platform[] {
  const { platforms } = pack;
  const own = ownCopy(stored);
  return own && !platforms.some(({ id }) => id === own.id) ? [...platforms, own] : platforms;
}

/** What became of the check's platform in the pack since it was chosen; null: it is as it was. */
export function platformSince(stored: StoredCheck, pack: Pack): "changed" | "gone" | null {
  const own = ownCopy(stored);
  if (!own) return null;
  const now = platformOf(pack, own.id);
  if (!now) return "gone";
  return same(takenPlatform(now), own) ? null : "changed";
}

/** The layout as the pack has it: which arm it is and what turns are the platform's, not the readings. */
function withLayoutOf(stored: StoredCheck, { layout }: Platform): StoredCheck {
  const { kind, readings: _, ...said } = layout;
  return changeRecord(chooseLayout(stored, kind), (record) => ({
    ...record,
    layout: { ...record.layout, ...said },
  }));
}

/** The check on this platform. Axle, layout and name are filled in where they are still open. */
export function withPlatform(
  stored: StoredCheck,
  platform: Platform | null,
  pack: Pack,
): StoredCheck {
  const marked = changeRecord(stored, (record) =>
    withField(
      { ...record, vehicle: { ...record.vehicle, platformId: platform?.id ?? null } },
      "reference",
      takenFrom(pack, { ...record.reference, platform }),
    ),
  );
  if (!platform) return marked;
  const { record } = marked;
  const named = record.vehicle?.label?.trim()
    ? marked
    : {
        ...changeRecord(marked, (before) => ({
          ...before,
          vehicle: { ...before.vehicle, label: platform.label },
        })),
        name: marked.name || platform.label,
      };
  const placed = record.axle
    ? named
    : changeRecord(named, (before) => ({ ...before, axle: platform.axle }));
  return record.layout?.kind ? placed : withLayoutOf(placed, platform);
}

function platformName({ label, axle }: Platform): Message {
  return messages.axle({ label, axle });
}

/** A ride quantity of the platform with its ±; null where the pack does not give it. */
export function packRide(
  stored: StoredCheck,
  name: RideQuantity,
  pack: Pack,
): { readonly value: number; readonly tol: number; readonly how: Message } | null {
  const platform = platformOfCheck(stored, pack);
  const value = platform?.ride?.[name];
  if (!platform || value === undefined) return null;
  return {
    value,
    tol: platform.ride?.tolerances?.[name] ?? 0,
    how: messages.partsLibrary({ platformName: platformName(platform) }),
  };
}

export function packCornerMass(stored: StoredCheck, pack: Pack): Reading | null {
  return platformOfCheck(stored, pack)?.cornerMassKg ?? null;
}

/** How far a distance or angle may be from the pack's before it is asked again. */
const farShare = 0.15;
const farDegrees = 6;

function packReading(stored: StoredCheck, name: string, pack: Pack): Reading | null {
  const platform = platformOfCheck(stored, pack);
  if (!platform) return null;
  if (isGeometryReadingName(name)) {
    return platformReading(platform, stored.record.layout?.kind ?? "arm", name);
  }
  if (name === "gap") return platform.gap ?? null;
  return name === "rideHeight" ? (platform.rideHeight ?? null) : null;
}

/** What the parts library has in this place, and whether the reading is far from it. */
export function packRemark(
  stored: StoredCheck,
  id: ReadingId,
  reading: Reading | null,
  pack: Pack,
): { readonly tone: "info" | "unsure"; readonly sentence: Sentence } | null {
  const name = withoutSide(id);
  const reference = packReading(stored, name, pack);
  if (!reference) return null;
  const angle = catalogueEntry(id).kind === "angle";
  const kind = angle ? "angle" : "length";
  const usual = meanOf(reference);
  if (!isGeometryReadingName(name)) {
    return {
      tone: "info",
      sentence: [messages.partsLibraryAtStandard({ usual: { kind, value: usual } })],
    };
  }
  const far = angle ? farDegrees : farShare * usual;
  if (reading && Math.abs(meanOf(reading) - usual) > Math.max(far, reference.tol + reading.tol)) {
    return {
      tone: "unsure",
      sentence: [messages.partsLibraryHasHere({ usual: { kind, value: usual } })],
    };
  }
  return {
    tone: "info",
    sentence: [messages.partsLibrary2({ usual: { kind, value: usual } })],
  };
}
