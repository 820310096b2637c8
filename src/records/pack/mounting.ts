import type { LayoutKind } from "../../physics/fitment.ts";
import { length, type Message } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { threadText } from "./thread.ts";

/** How a stop is held: threaded stud, one bolt through it, two bolts, slid on the shock rod, pressed into a cup. */
export const mountingWays = ["stud", "bolt", "twoBolts", "rod", "cup"] as const;
export type MountingWay = (typeof mountingWays)[number];

/** How a stop is held, or what holds one on a platform; what is absent is not known. All mm. */
export interface Mounting {
  readonly way: MountingWay;
  /** Thread of the stud or bolt, bore over the rod, diameter of the cup. */
  readonly sizeMm?: number;
  readonly pitchMm?: number;
  /** Between two bolts. */
  readonly spacingMm?: number;
  /** Across the stop's foot; on a platform across the room for it. */
  readonly seatMm?: number;
  /** On a platform only: how wide across a stop may be there. */
  readonly roomMm?: number;
  /** Where it can stand; on a stop only. */
  readonly layouts?: readonly LayoutKind[];
}

/** What of a stop is held against a place. */
export interface Mounted {
  readonly mount?: Mounting;
  readonly outerDiameterMm?: number;
}

/** yes: it mounts there; check: something of it is not known; no: it does not. */
export type Mountable = "yes" | "check" | "no";

/** Lengths of a mounting that differ by less are the same, mm. Common practice. */
const same = { sizeMm: 0.3, pitchMm: 0.1, spacingMm: 1, roomMm: 0.3 } as const;

export function isThreaded(way: MountingWay): boolean {
  return way === "stud" || way === "bolt" || way === "twoBolts";
}

/** Can a stop be mounted on such a layout where this is what holds it? What is not known is no yes. */
export function mountable(
  { mount: stop, outerDiameterMm }: Mounted,
  place: Mounting | null,
  kind: LayoutKind,
): Mountable {
  if (stop?.layouts !== undefined && !stop.layouts.includes(kind)) return "no";
  if (stop === undefined || place === null) return "check";
  if (stop.way !== place.way) return "no";
  let known = true;
  for (const name of ["sizeMm", "pitchMm", "spacingMm"] as const) {
    const own = stop[name];
    const there = place[name];
    if (own !== undefined && there !== undefined && Math.abs(own - there) >= same[name])
      return "no";
    if ((own === undefined) !== (there === undefined)) known = false;
  }
  for (const [across, room] of [
    [stop.seatMm, place.seatMm],
    [outerDiameterMm, place.roomMm],
  ] as const) {
    if (room === undefined) continue;
    if (across === undefined) known = false;
    else if (across > room + same.roomMm) return "no";
  }
  return known && stop.sizeMm !== undefined ? "yes" : "check";
}

export const wayWords: Readonly<Record<MountingWay, Message>> = {
  stud: messages.threadedStud,
  bolt: messages.oneBoltThroughIt,
  twoBolts: messages.twoBolts,
  rod: messages.onShockRod,
  cup: messages.pressedIntoCup,
};

/** "threaded stud M10 × 1.5", "two bolts M8, 60 mm apart". */
export function mountingText(mounting: Mounting): Message {
  const { spacingMm } = mounting;
  const sized = sizedText(mounting);
  return spacingMm === undefined
    ? sized
    : messages.apart({ mounting: sized, spacingMm: length(spacingMm) });
}

function sizedText({ way, sizeMm, pitchMm }: Mounting): Message {
  const words = wayWords[way];
  if (sizeMm === undefined) return words;
  if (!isThreaded(way)) return messages.mountingOfSize({ way: words, size: length(sizeMm) });
  const thread = threadText({ sizeMm, ...(pitchMm !== undefined && { pitchMm }) });
  return messages.mountingThread({ way: words, thread });
}
