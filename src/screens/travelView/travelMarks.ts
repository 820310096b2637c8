import type { CornerAssessment, LimitKind } from "../../physics/fitment.ts";
import { capital } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/screens/travelView.ts";

export const limitWords: Record<LimitKind, string> = {
  tyre: messages.tireTouches,
  damper: messages.shockClosed,
  spring: messages.springBound,
  metal: messages.metalTouches,
  other: messages.hardContact,
};

type MarkId = "ride" | "loaded" | "touch" | "full" | "hits";

/** A place of the travel that has a name, mm of wheel travel from the measured ride height. */
export interface TravelMark {
  readonly id: MarkId;
  readonly words: string;
  readonly travelMm: number;
}

export interface TravelSpan {
  readonly from: number;
  readonly to: number;
  /** Within the span, in the order of travel. */
  readonly marks: readonly TravelMark[];
  /** Where the travel ends before the stop has done its work. */
  readonly fullNotReached: boolean;
}

/** Under this a load has not moved the vehicle, mm. */
const noSag = 0.5;

/** From ride to the hard limit, or to where the stop is fully compressed if none was measured. */
export function travelSpan(assessed: CornerAssessment): TravelSpan {
  const {
    wheelTravelToContactMm: touch,
    wheelTravelToFullStopMm: full,
    wheelTravelToHardLimitMm: hits,
    loadedSagMm: sag,
  } = assessed;
  const marks: TravelMark[] = [
    { id: "ride", words: messages.ride, travelMm: 0 },
    ...(sag !== null && Math.abs(sag) >= noSag
      ? [{ id: "loaded", words: messages.loaded, travelMm: sag } as const]
      : []),
    { id: "touch", words: messages.stopTouches, travelMm: touch },
    { id: "full", words: messages.fullyCompressed, travelMm: full },
    ...(hits === null
      ? []
      : [{ id: "hits", words: hitWords(assessed.hardLimit), travelMm: hits } as const]),
  ];
  const to = Math.max(hits ?? full, 1);
  const from = Math.min(0, touch, sag ?? 0);
  return {
    from,
    to,
    marks: marks
      .filter(({ travelMm }) => travelMm <= to + 1e-9)
      .sort((one, other) => one.travelMm - other.travelMm),
    fullNotReached: hits !== null && full > hits,
  };
}

function hitWords(kind: LimitKind | null): string {
  return capital(limitWords[kind ?? "other"]);
}

/** The mark that a thumb near it means: within a fiftieth of the span. */
export function nearMark({ from, to, marks }: TravelSpan, travelMm: number): TravelMark | null {
  const reach = (to - from) / 50;
  const near = marks.filter((mark) => Math.abs(mark.travelMm - travelMm) <= reach);
  const [first] = near.sort(
    (one, other) => Math.abs(one.travelMm - travelMm) - Math.abs(other.travelMm - travelMm),
  );
  return first ?? null;
}

/** The next mark beyond a travel in a direction, or the end of the span. */
export function nextMark(
  { from, to, marks }: TravelSpan,
  travelMm: number,
  direction: 1 | -1,
): number {
  const beyond = marks
    .map((mark) => mark.travelMm)
    .filter((travel) => direction * (travel - travelMm) > 1e-6);
  if (beyond.length === 0) return direction === 1 ? to : from;
  return direction === 1 ? Math.min(...beyond) : Math.max(...beyond);
}
