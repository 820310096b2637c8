import type { LimitKind } from "../../physics/fitment.ts";
import * as messages from "../../words/compiled/screens/readings.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { ReadingWords, WordedLayout, WordedLimit } from "../layouts/wordedReading.ts";

/** What touches, as it is ticked. */
export const limitTitles: { readonly [Kind in LimitKind]: string } = {
  tyre: messages.tireOnFender,
  damper: messages.shockAtItsEnd,
  spring: messages.springCoilsClosed,
  metal: messages.metalOnMetal,
  other: messages.somethingElse,
};

const clearances: { readonly [Kind in LimitKind]: Omit<ReadingWords, "a" | "b"> } = {
  tyre: {
    name: messages.clearanceOverTire,
    how: messages.fromTiresTreadStraight,
    wrong: messages.turnSteeringFromLock,
  },
  damper: {
    name: messages.shockTravelLeft,
    how: messages.bareRodFromTop,
    wrong: messages.bootHidesEndOf,
  },
  spring: {
    name: messages.springTravelLeft,
    how: messages.heightNowBLess,
    wrong: messages.coilsThatTouchAlready,
  },
  metal: {
    name: messages.metalClearance,
    how: messages.fromPartThatMoves,
    wrong: messages.brakeLinesWiresAnd,
  },
  other: {
    name: messages.otherClearance,
    how: messages.fromPartThatMovesStraight,
    wrong: messages.writeDownWhatIt,
  },
};

const ends: { readonly [Kind in LimitKind]: (layout: WordedLayout) => readonly [string, string] } =
  {
    tyre: () => [messages.topOfTire, messages.whatItWouldTouch],
    damper: () => [messages.topOfBody, messages.whereRodEnds],
    spring: () => [messages.coilsTouching, messages.asItStands],
    metal: ({ kind }) => [layoutsOnScreen[kind].words.movingMetal, messages.frameAboveIt],
    other: () => [messages.movingPart, messages.whatItWouldTouch],
  };

const closings: { readonly [Kind in LimitKind]: string } = {
  tyre: messages.whenTireTouches,
  damper: messages.whenShockIsAt,
  spring: messages.whenCoilsTouch,
  metal: messages.whenMetalMeetsMetal,
  other: messages.whenTwoTouch,
};

/** Room over the tread by classes of snow chains (SAE classes S, U and W). */
const chainRoom = messages.snowChainsTakeOff;

/** A clearance by where it is measured: at the part itself over the wheel, on the arm, at the stop. */
export function limitWords({ kind, at }: WordedLimit, layout: WordedLayout): ReadingWords {
  const clearance = clearances[kind];
  if (at === "stop") {
    return {
      name: messages.atStop({ name: clearance.name }),
      how: messages.howMuchGapAt({ kind: closings[kind] }),
      wrong: messages.countFromHowIt,
      a: messages.stopsPadNow,
      b: messages.sameAtContact,
    };
  }
  const [a, b] = ends[kind](layout);
  return at === "arm"
    ? {
        ...clearance,
        a,
        b,
        note: messages.itClosesAsArm,
      }
    : { ...clearance, a, b, ...(kind === "tyre" && { note: chainRoom }) };
}

export const distanceWords: ReadingWords = {
  name: messages.whereOnArm,
  how: messages.squareFromArmsPivot,
  wrong: messages.notFromOneBolt,
  a: messages.pivotLine,
  b: messages.whereItWouldTouch,
};
