import type { RideQuantity, UseRules } from "../../physics/fitment.ts";
import { commaList, distinctWords, type Sentence, type Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import type { CheckStop, PartialCheckRecord, Platform } from "../check/checkRecord.ts";
import { useWords } from "../check/useWords.ts";
import { entryName } from "../entry/readingCatalogue.ts";
import { type Pack, platformOf, recordStop, takenPlatform } from "./pack.ts";
import { itemDifferences } from "./packDifferences.ts";

/** What marks a value of a record as taken from a pack rather than measured. */
/** Checks of earlier versions call it the reference pack. */
const fromPack = /^(reference pack|parts library)|from the (reference pack|parts library)/i;

/**
 * What a check holds of a pack that the pack in use has otherwise: its stop, by name, what it took of
 * its platform, and the house rules of its use. The check's own copy counts for its answer; these
 * sentences say that the two differ, and in what. What was measured on the vehicle is no difference.
 */
export function packSince(record: PartialCheckRecord, pack: Pack): readonly Sentence[] {
  return [...stopSince(record, pack), ...platformSince(record, pack), ...rulesSince(record, pack)];
}

/** What the pack's stop of the check's name has otherwise than the check; null: nothing, or none there. */
export function stopDifferences(stop: Partial<CheckStop>, pack: Pack): readonly Words[] | null {
  const named = pack.stops.filter(({ name }) => name === stop.name);
  const differing = named.map((each) => {
    const theirs = figuresOf(recordStop(each));
    const mine = figuresOf(stop);
    // A height that a person typed was measured on the part itself.
    const measured = stop.freeHeight?.typed !== undefined;
    return namesOf(mine, measured ? { ...theirs, freeHeight: mine.freeHeight } : theirs);
  });
  const least = differing.sort((a, b) => a.length - b.length)[0];
  return least === undefined || least.length === 0 ? null : least;
}

/** What it is called and which part of which batch it is, is no figure. */
function figuresOf(stop: Partial<CheckStop>): Partial<CheckStop> {
  const { partNumber: _part, revision: _revision, batch: _batch, ...figures } = stop;
  return untyped(figures);
}

/** What was typed beside a number, and who said it, does not matter for what a thing is. */
function untyped<Shape extends object>(value: Shape): Shape {
  return JSON.parse(
    JSON.stringify(value, (name, each: unknown) =>
      name === "typed" || name === "source" ? undefined : each,
    ),
  ) as Shape;
}

function namesOf(mine: object, theirs: object): readonly Words[] {
  return distinctWords(itemDifferences(mine, theirs).map(({ name }) => name));
}

function stopSince({ stop }: PartialCheckRecord, pack: Pack): readonly Sentence[] {
  const names = stop && stopDifferences(stop, pack);
  return names
    ? [[messages.libraryInUseHas({ name: stop.name ?? "", names: commaList(names) })]]
    : [];
}

function platformSince(record: PartialCheckRecord, pack: Pack): readonly Sentence[] {
  const platform = platformOf(pack, record.vehicle?.platformId ?? null);
  if (platform === null) return [];
  const taken = record.reference?.platform;
  if (taken?.id !== platform.id) return rideSince(record, platform);
  const names = namesOf(untyped(taken), untyped(takenPlatform(platform)));
  return names.length === 0
    ? []
    : [[messages.libraryInUseHasOtherwise({ label: platform.label, names: commaList(names) })]];
}

/** For a check without a copy of its platform: the ride data that say that they came from the pack. */
function rideSince({ ride }: PartialCheckRecord, platform: Platform): readonly Sentence[] {
  return Object.entries(ride?.estimated ?? {}).flatMap(([name, how]): Sentence[] => {
    if (typeof how !== "string" || !fromPack.test(how)) return [];
    const mine = ride?.[name as RideQuantity];
    const theirs = platform.ride?.[name as RideQuantity];
    if (mine === undefined || theirs === undefined || mine === theirs) return [];
    return [[messages.cameFromLibraryWhich({ entryName: entryName(name) })]];
  });
}

function rulesSince({ vehicle, reference }: PartialCheckRecord, pack: Pack): readonly Sentence[] {
  const use = vehicle?.use;
  if (use === undefined) return [];
  const taken: Partial<UseRules> = reference?.rules ?? {};
  const names = namesOf(taken, pack.rules?.[use] ?? {});
  return names.length === 0
    ? []
    : [
        [
          reference?.rules === undefined
            ? messages.libraryInUseHasRequirements({ use: useWords[use], names: commaList(names) })
            : messages.requirementsOfLibraryIn({ use: useWords[use], names: commaList(names) }),
        ],
      ];
}
