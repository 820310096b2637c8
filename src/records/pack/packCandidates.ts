import type { Fitment, LayoutKind } from "../../physics/fitment.ts";
import {
  type Candidate,
  type SearchOptions,
  scaledBuilds,
  spacersByInch,
  spacersByMm,
  travelMadeWith,
} from "../../physics/prescription/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { LengthUnit } from "../entry/units.ts";
import { type Mountable, type Mounting, mountable } from "./mounting.ts";
import {
  isOffered,
  type Pack,
  type PackStop,
  platformOf,
  recordStop,
  type TakenFromPack,
} from "./pack.ts";

/** As much of a check as says what mounts on its vehicle. */
export interface MountedCheck {
  readonly vehicle?: { readonly platformId?: string | null } | undefined;
  readonly stop?:
    | { readonly name?: string; readonly partNumber?: string; readonly revision?: string }
    | undefined;
  readonly layout?: { readonly kind?: LayoutKind } | undefined;
  readonly reference?: TakenFromPack | undefined;
}

/** The stop of the check as the pack has it: by part number and revision where both have one, else by name. */
export function fittedInPack(pack: Pack, { stop }: MountedCheck): PackStop | null {
  if (stop === undefined) return null;
  const { name, partNumber, revision } = stop;
  return (
    (partNumber === undefined ? null : stopOfPart(pack, { partNumber, revision })) ??
    pack.stops.find((each) => each.name === name) ??
    null
  );
}

/** A part number without what people leave out or write otherwise. */
export function plainNumber(partNumber: string | undefined): string | undefined {
  return partNumber?.replace(/[\s-]+/g, "").toLowerCase();
}

/** The stop of this part number: of this revision where there is one, else the latest that is listed. */
export function stopOfPart(
  pack: Pick<Pack, "stops">,
  { partNumber, revision }: { readonly partNumber: string; readonly revision?: string | undefined },
): PackStop | null {
  const wanted = plainNumber(partNumber);
  const named = pack.stops.filter((each) => plainNumber(each.partNumber) === wanted);
  return (
    named.find((each) => revision !== undefined && each.revision === revision) ??
    named.filter(isOffered).at(-1) ??
    named.at(-1) ??
    null
  );
}

/**
 * What holds a stop on this vehicle: the platform's, else that of the stop that is fitted, whose foot says
 * nothing of the room there is; null: not known.
 */
function mountingPlace(pack: Pack, check: MountedCheck): Mounting | null {
  const platform = check.reference?.platform ?? platformOf(pack, check.vehicle?.platformId ?? null);
  if (platform?.mount) return platform.mount;
  const fitted = fittedInPack(pack, check)?.mount;
  if (fitted === undefined) return null;
  const { seatMm: _, ...place } = fitted;
  return place;
}

/** Can a stop be mounted on the check's vehicle? The one that is fitted is. */
export function mountsHere(pack: Pack, check: MountedCheck): (stop: PackStop) => Mountable {
  const fitted = fittedInPack(pack, check)?.id;
  const place = mountingPlace(pack, check);
  const kind = check.layout?.kind;
  return (stop) => {
    if (fitted === stop.id) return "yes";
    return kind === undefined ? "check" : mountable(stop, place, kind);
  };
}

/** The stops of a pack that can be ordered, beside the one that is fitted, by whether they mount on a vehicle. */
export interface StopsByMounting {
  readonly mounting: readonly PackStop[];
  /** It is not known whether they mount. */
  readonly unclear: readonly PackStop[];
  readonly elsewhere: readonly PackStop[];
}

export function stopsByMounting(pack: Pack, check: MountedCheck): StopsByMounting {
  const fitted = fittedInPack(pack, check)?.id;
  const mounts = mountsHere(pack, check);
  const of = (wanted: Mountable): readonly PackStop[] =>
    pack.stops.filter((stop) => stop.id !== fitted && isOffered(stop) && mounts(stop) === wanted);
  return { mounting: of("yes"), unclear: of("check"), elsewhere: of("no") };
}

/** What the list of stops tries beside the fitted one: all that mount, and all that may. */
export function triedCandidates({ mounting, unclear }: StopsByMounting): readonly Candidate[] {
  return [...mounting, ...unclear].map(packCandidate);
}

/** The spacers that can be bought: the pack's, else those of the person's unit. mm above 0, rising. */
export function spacersOf(
  pack: Pick<Pack, "spacersMm"> | null,
  unit: LengthUnit,
): readonly number[] {
  const own = pack?.spacersMm;
  if (own !== undefined) return [...new Set(own)].sort((one, other) => one - other);
  return unit === "in" ? spacersByInch : spacersByMm;
}

function packCandidate(stop: PackStop): Candidate {
  return {
    id: stop.id,
    stop: recordStop(stop),
    ...(stop.spacersMm && { spacersMm: [...stop.spacersMm].sort((a, b) => a - b) }),
  };
}

/**
 * What may be prescribed beside the fitted stop: every stop of the pack that is offered and mounts there; without a
 * pack, or where it has none that is known to, the fitted build in every other stiffness class.
 */
export function prescribable(
  pack: Pack | null,
  check: MountedCheck,
  fitment: Fitment,
): readonly Candidate[] {
  if (pack === null) return scaledBuilds(fitment.stop);
  const { mounting } = stopsByMounting(pack, check);
  return mounting.length > 0 ? mounting.map(packCandidate) : scaledBuilds(fitment.stop);
}

/** The travel to contact that the vehicle was made with, where a platform of the pack says so. */
function madeWith(
  pack: Pack | null,
  check: MountedCheck,
  fitment: Fitment,
): ReturnType<typeof travelMadeWith> {
  const own = check.reference?.platform;
  const platform = own ?? (pack && platformOf(pack, check.vehicle?.platformId ?? null));
  return platform?.gap && travelMadeWith(fitment, platform.layout, meanOf(platform.gap));
}

/** What a search goes by for one check: spacers that can be bought, and the travel it was made with. */
export function searchOptionsOf(
  pack: Pack | null,
  check: MountedCheck,
  fitment: Fitment,
  unit: LengthUnit,
): SearchOptions {
  const made = madeWith(pack, check, fitment);
  return { spacersMm: spacersOf(pack, unit), ...(made && { madeWith: made }) };
}
