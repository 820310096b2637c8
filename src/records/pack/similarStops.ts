import { commaList, length, type Message, type Words } from "../../physics/sentence.ts";
import { secantRate, stopCurve } from "../../physics/stop/index.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import type { CheckStop } from "../check/checkRecord.ts";
import { type Mountable, type Mounted, mountable } from "./mounting.ts";
import { isOffered, type Pack, type PackStop } from "./pack.ts";

/** What is looked for: a stop of a pack, or as much as is known of one. */
export type WantedStop = Partial<CheckStop> & Mounted;

/** A stop and how far it is from the one that is looked for; null where that is not known of either. */
export interface SimilarStop {
  readonly stop: PackStop;
  /** By how much it is taller, mm; below 0: shorter. */
  readonly tallerMm: number | null;
  /** By how many R5 classes it is stiffer, in tenths; below 0: softer. */
  readonly classesStiffer: number | null;
  /** By how much more it may be pressed, mm. */
  readonly moreUsableMm: number | null;
  /** Is it mounted as the other one is? */
  readonly mounts: Mountable;
}

/** One step of nearness in each respect. Common practice, no source. */
const step = { heightMm: 5, classes: 1, usableMm: 5, mounting: 2 } as const;

function heightOf({ freeHeight }: Partial<CheckStop>): number | null {
  return freeHeight === undefined || freeHeight.values.length === 0
    ? null
    : mean(freeHeight.values);
}

/** R5 classes, of which five are a decade: 5·log10 of the secant rate, N/mm. */
function classPlace(stop: Partial<CheckStop>): number | null {
  const { freeHeight, usableCompressionMm, curve: points } = stop;
  if (freeHeight === undefined || usableCompressionMm === undefined || points === undefined) {
    return null;
  }
  const curve = stopCurve({
    name: "",
    duty: "impact",
    freeHeight,
    usableCompressionMm,
    curve: points,
    damping: null,
    testedAtSpeed: false,
  });
  if (!curve.ok) return null;
  const place = 5 * Math.log10(secantRate(curve.value));
  return Number.isFinite(place) ? place : null;
}

function less(one: number | null, other: number | null): number | null {
  return one === null || other === null ? null : one - other;
}

/** How far it is, in steps; what is not known counts as one. */
function distance({ tallerMm, classesStiffer, moreUsableMm, mounts }: SimilarStop): number {
  const steps = (value: number | null, size: number) =>
    value === null ? 1 : Math.abs(value) / size;
  const mounting = mounts === "yes" ? 0 : mounts === "check" ? 1 : step.mounting;
  return (
    steps(tallerMm, step.heightMm) +
    steps(classesStiffer, step.classes) +
    steps(moreUsableMm, step.usableMm) +
    mounting
  );
}

/**
 * The stops of the pack that can be ordered, nearest first by height, stiffness class, usable
 * compression and mounting; of the same duty, and not the very one.
 */
export function similarStops(
  pack: Pack,
  wanted: WantedStop & { readonly id?: string },
  most = 5,
): readonly SimilarStop[] {
  const height = heightOf(wanted);
  const place = classPlace(wanted);
  const room = wanted.mount && (({ seatMm: _, ...rest }) => rest)(wanted.mount);
  return pack.stops
    .filter(
      (stop) => isOffered(stop) && stop.id !== wanted.id && stop.duty === (wanted.duty ?? "impact"),
    )
    .map((stop): SimilarStop => {
      const kind = stop.mount?.layouts?.find((each) => room?.layouts?.includes(each) ?? true);
      return {
        stop,
        tallerMm: less(heightOf(stop), height),
        classesStiffer: less(classPlace(stop), place),
        moreUsableMm: less(stop.usableCompressionMm, wanted.usableCompressionMm ?? null),
        mounts: mountable(stop, room ?? null, kind ?? room?.layouts?.[0] ?? "arm"),
      };
    })
    .sort((one, other) => distance(one) - distance(other))
    .slice(0, most);
}

const mountsWords: { readonly [Each in Mountable]: Message } = {
  yes: messages.mountsSameWay,
  check: messages.checkThread,
  no: messages.mountsDifferently,
};

/** "5.0 mm taller, 1 class stiffer, 2.0 mm less usable, mounts the same way". */
export function similarText(similar: SimilarStop): Words {
  const told = (value: number | null, same: Message, words: (it: number) => Message) =>
    value === null ? [] : [Math.abs(value) < leastTold ? same : words(value)];
  const { tallerMm, classesStiffer, moreUsableMm, mounts } = similar;
  const classes = (value: number) => {
    const count = Math.round(10 * Math.abs(value)) / 10;
    return messages.classesStiffer({ count, isStiffer: value > 0 });
  };
  return commaList([
    ...told(tallerMm, messages.sameHeight, (mm) =>
      messages.taller({ mm: length(Math.abs(mm)), hasMm: mm > 0 }),
    ),
    ...told(classesStiffer, messages.sameStiffness, classes),
    ...told(moreUsableMm, messages.sameUsableCompression, (mm) =>
      messages.more({ mm: length(Math.abs(mm)), hasMm: mm > 0 }),
    ),
    mountsWords[mounts],
  ]);
}

/** What differs by less is told as the same, mm or classes. */
const leastTold = 0.05;
