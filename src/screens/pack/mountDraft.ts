import { layoutKinds } from "../../physics/readings/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import {
  isThreaded,
  type Mounting,
  type MountingWay,
  mountingWays,
} from "../../records/pack/mounting.ts";
import { readThread, type Thread, threadText } from "../../records/pack/thread.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { type DraftReader, type ItemDraft, numberText, textOf } from "./itemDraft.ts";

export function wayOf(draft: ItemDraft): MountingWay | null {
  return mountingWays.find((way) => way === textOf(draft, "mount.way")) ?? null;
}

function threadOf({ sizeMm, pitchMm }: Mounting): Thread | null {
  return sizeMm === undefined ? null : { sizeMm, ...(pitchMm !== undefined && { pitchMm }) };
}

/** A mounting as texts to edit. */
export function mountTexts(mount: Mounting | undefined, unit: LengthUnit): ItemDraft["texts"] {
  if (mount === undefined) return {};
  const { way, sizeMm, spacingMm, seatMm, roomMm, layouts } = mount;
  const thread = threadOf(mount);
  return {
    "mount.way": way,
    ...(isThreaded(way)
      ? { "mount.thread": thread === null ? "" : threadText(thread) }
      : { "mount.size": numberText(sizeMm, "length", unit) }),
    "mount.spacing": numberText(spacingMm, "length", unit),
    "mount.seat": numberText(seatMm, "length", unit),
    "mount.room": numberText(roomMm, "length", unit),
    "mount.layouts": (layouts ?? []).join(" "),
  };
}

/** The mounting of a draft; what is not edited of the one before stays. */
export function mountOfDraft(
  reader: DraftReader,
  draft: ItemDraft,
  base: Mounting | undefined,
): Mounting | undefined {
  const way = wayOf(draft);
  if (way === null) return undefined;
  const size = isThreaded(way)
    ? threadOfDraft(reader, base)
    : sizeOnly(reader.number("mount.size", messages.boreOrCup, "length"));
  const spacingMm =
    way === "twoBolts"
      ? reader.number("mount.spacing", messages.betweenBolts, "length")
      : undefined;
  const seatMm = reader.number("mount.seat", messages.seatAcross, "length");
  const roomMm = reader.number("mount.room", messages.roomAcross, "length");
  const chosen = textOf(draft, "mount.layouts").split(" ");
  const given = base?.layouts ?? [];
  const layouts = [...new Set([...given, ...layoutKinds])].filter((kind) => chosen.includes(kind));
  return {
    way,
    ...size,
    ...(spacingMm !== undefined && { spacingMm }),
    ...(seatMm !== undefined && { seatMm }),
    ...(roomMm !== undefined && { roomMm }),
    ...(layouts.length > 0 && { layouts }),
  };
}

function sizeOnly(sizeMm: number | undefined): { sizeMm?: number } {
  return sizeMm === undefined ? {} : { sizeMm };
}

/** A thread left as it was keeps its digits. */
function threadOfDraft(reader: DraftReader, base: Mounting | undefined): Partial<Thread> {
  const text = reader.text("mount.thread");
  if (text === undefined) return {};
  const before = base && threadOf(base);
  if (before && threadText(before) === text) return before;
  const read = readThread(text);
  if (read.ok) return read.value;
  reader.fault("mount.thread", "Thread: ", ...read.fault.sentence);
  return {};
}
