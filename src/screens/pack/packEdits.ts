import type { Fault } from "../../physics/outcome.ts";
import type { Pack, PackStop, Platform } from "../../records/pack/pack.ts";
import { readPackValue } from "../../records/pack/readPack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { type Kept, keepReferencePack, referencePack } from "../referencePack.ts";

interface Step {
  /** "Deleted: Tall firm". */
  readonly words: string;
  readonly before: Pack;
}

const mostSteps = 100;
let steps: readonly Step[] = [];

/** A pack of this phone that another tab has overtaken: it waits to be merged. */
let overtaken: Pack | null = null;

export function takeOvertaken(): Pack | null {
  const pack = overtaken;
  overtaken = null;
  return pack;
}

export type Changed =
  | { readonly kind: "changed"; readonly kept: Kept }
  | { readonly kind: "refused"; readonly faults: readonly Fault[] };

async function keep(pack: Pack): Promise<Kept> {
  const kept = await keepReferencePack(pack);
  if (kept.kind === "changedElsewhere") overtaken = kept.mine;
  return kept;
}

/** Puts a changed pack to use where it holds by the rules of a pack's file; it can be undone. */
export async function changePack(next: Pack, words: string): Promise<Changed> {
  const read = readPackValue(next);
  if (!read.ok) return { kind: "refused", faults: read.faults };
  const before = referencePack();
  const kept = await keep(next);
  if (kept.kind !== "changedElsewhere") {
    steps = [...steps.slice(-mostSteps + 1), { words, before }];
  }
  return { kind: "changed", kept };
}

/** What “Undo” would take back; null where there is nothing. */
export function undoWords(): string | null {
  return steps.at(-1)?.words ?? null;
}

export async function undoPackChange(): Promise<Kept | null> {
  const step = steps.at(-1);
  if (step === undefined) return null;
  steps = steps.slice(0, -1);
  return keep(step.before);
}

export function forgetPackSteps(): void {
  steps = [];
  overtaken = null;
}

/** An id made of the name, that none of these has. */
export function freeId(name: string, taken: readonly string[]): string {
  const base =
    name
      .normalize("NFKD")
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 60) || "item";
  for (let count = 1; ; count += 1) {
    const id = count === 1 ? base : `${base}-${count}`;
    if (!taken.includes(id)) return id;
  }
}

export function withStop(pack: Pack, stop: PackStop): Pack {
  const known = pack.stops.some(({ id }) => id === stop.id);
  return {
    ...pack,
    stops: known
      ? pack.stops.map((each) => (each.id === stop.id ? stop : each))
      : [...pack.stops, stop],
  };
}

export function withPlatform(pack: Pack, platform: Platform): Pack {
  const known = pack.platforms.some(({ id }) => id === platform.id);
  return {
    ...pack,
    platforms: known
      ? pack.platforms.map((each) => (each.id === platform.id ? platform : each))
      : [...pack.platforms, platform],
  };
}

/** Without a stop; platforms that had it as their usual one then have none. */
export function withoutStop(pack: Pack, id: string): Pack {
  return {
    ...pack,
    stops: pack.stops.filter((stop) => stop.id !== id),
    platforms: pack.platforms.map((platform) =>
      platform.usualStop === id ? { ...platform, usualStop: null } : platform,
    ),
  };
}

export function withoutPlatform(pack: Pack, id: string): Pack {
  return { ...pack, platforms: pack.platforms.filter((platform) => platform.id !== id) };
}

/** A copy is another part: it has no part number until it is given one. */
export function copiedStop(pack: Pack, stop: PackStop): PackStop {
  const name = messages.copy2({ name: stop.name });
  const { partNumber: _part, revision: _revision, ...figures } = stop;
  return {
    ...figures,
    name,
    id: freeId(
      name,
      pack.stops.map(({ id }) => id),
    ),
  };
}

export function copiedPlatform(pack: Pack, platform: Platform): Platform {
  const label = messages.copy3({ label: platform.label });
  return {
    ...platform,
    label,
    id: freeId(
      label,
      pack.platforms.map(({ id }) => id),
    ),
  };
}
