import type { CornerAssessment, Interval } from "../../../physics/fitment.ts";
import * as messages from "../../../words/compiled/screens/answer/ladder.ts";
import { limitWords } from "../../travelView/travelMarks.ts";

type RungId = "contact" | "fullStop" | "hardLimit";

/** One mark of the travel ladder; wheel travel in mm from the measured ride height. */
export interface Rung {
  readonly id: RungId;
  /** In a sentence: "shock closed". */
  readonly words: string;
  readonly travelMm: number;
  readonly band: Interval | null;
}

export interface Ladder {
  readonly rungs: readonly Rung[];
  /** Where the loaded vehicle stands; null where that is not known. */
  readonly sagMm: number | null;
  readonly greatestMm: number;
  readonly leastMm: number;
}

export function ladderOf(assessed: CornerAssessment): Ladder {
  const { intervals } = assessed;
  const rungs: Rung[] = [
    {
      id: "contact",
      words: messages.contact,
      travelMm: assessed.wheelTravelToContactMm,
      band: intervals.wheelTravelToContactMm,
    },
    {
      id: "fullStop",
      words: messages.fullyCompressed,
      travelMm: assessed.wheelTravelToFullStopMm,
      band: intervals.wheelTravelToFullStopMm,
    },
  ];
  if (assessed.wheelTravelToHardLimitMm !== null) {
    const words = limitWords[assessed.hardLimit ?? "other"];
    rungs.push({
      id: "hardLimit",
      words,
      travelMm: assessed.wheelTravelToHardLimitMm,
      band: intervals.wheelTravelToHardLimitMm,
    });
  }
  const sagMm = assessed.loadedSagMm;
  const ends = rungs.flatMap(({ travelMm, band }) => [travelMm, ...(band ?? [])]);
  return {
    rungs,
    sagMm,
    greatestMm: Math.max(...ends),
    leastMm: Math.min(0, sagMm ?? 0, ...ends),
  };
}
