import { layoutRegistry } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/screens/readings.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";

function landingOf({ kind, stopOn }: WordedLayout): string {
  const { landing, landingOfStopOnArm = landing } = layoutsOnScreen[kind].words;
  return stopOn === "arm" ? landingOfStopOnArm : landing;
}

const onARod = ({ kind }: WordedLayout): boolean => layoutRegistry[kind].onRod;

const words: { readonly [name: string]: (layout: WordedLayout) => ReadingWords } = {
  gap: (layout) =>
    onARod(layout)
      ? {
          name: messages.gap,
          how: messages.alongRodFromStops({ landingOf: landingOf(layout) }),
          wrong: messages.dustBootHidesStops,
          a: messages.endOfStop,
          b: landingOf(layout),
        }
      : {
          name: messages.gap,
          how: messages.alongStopsOwnAxis,
          wrong: messages.straightUpIsToo,
          a: messages.endOfStop,
          b: landingOf(layout),
        },
  pressedHeight: (layout) => ({
    name: messages.heightOfPressedStop,
    how: messages.stopsHeightAsIt({ landingOf: landingOf(layout) }),
    wrong: messages.studAndSteelPlate,
    a: messages.seatOfStop,
    b: landingOf(layout),
  }),
  seatToPad: (layout) => ({
    name: messages.seatToPadWithout,
    how: messages.alongStopsAxisFrom({ landingOf: landingOf(layout) }),
    wrong: messages.notStraightUpWhere,
    a: messages.seatOfStop,
    b: landingOf(layout),
  }),
  rideHeight: () => ({
    name: messages.rideHeight,
    how: messages.toCompareLeftWith,
    wrong: messages.tiltedFloorMakesOne,
    a: messages.wheelCenter,
    b: messages.edgeOfFender,
    skipped: messages.itCanBeSkipped,
  }),
  cornerMassKg: () => ({
    name: messages.weightOnThisWheel,
    how: messages.wheelScaleUnderThis,
    wrong: messages.withOneWheelLifted,
    a: "",
    b: "",
  }),
  "stop.freeHeight": () => ({
    name: messages.freeHeightOfStop,
    how: messages.heightOfRubberAlone,
    wrong: messages.studAndSteelPlateAre,
    a: messages.baseOfStop,
    b: messages.tipOfStop,
  }),
  "stop.usableCompressionMm": () => ({
    name: messages.usableCompression,
    how: messages.howFarStopCan,
    wrong: messages.notWholeHeightStop,
    a: messages.tipPressed,
    b: messages.tipFree,
  }),
};

/** A reading that is no geometry, by its name without the side; undefined: no screen asks for it. */
export function cornerWords(name: string, layout: WordedLayout): ReadingWords | undefined {
  return Object.hasOwn(words, name) ? words[name]?.(layout) : undefined;
}
