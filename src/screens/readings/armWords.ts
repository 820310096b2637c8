import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { lowerPositive } from "../layouts/lowerPositive.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { angleView, outerEnd, stopPoint } from "./places.ts";

const straightEdge = "Lay a straight edge along the centers of both pivot bolts.";
const notFromABolt =
  "Taken from one bolt, full compression comes out up to 1 3/4 in (43 mm) wrong, on the unsafe side.";

export const armWords = {
  pivotToStop: (layout: WordedLayout): ReadingWords => ({
    name: "Pivot line to stop",
    how: `${straightEdge} Tape square from it (A) to ${layout.stopOn === "arm" ? "the tip of the stop" : "the middle of the patch the stop lands on"} (B).`,
    wrong: notFromABolt,
    a: "pivot line",
    b: stopPoint(layout),
    ...(layout.stopOn === "arm" && { note: "No stop there? Measure to its seat." }),
  }),
  pivotToMount: (): ReadingWords => ({
    name: "Pivot line to shock mount",
    how: `${straightEdge} Tape square from it (A) to the center of the shock's lower bolt (B).`,
    wrong: notFromABolt,
    a: "pivot line",
    b: "lower shock bolt",
  }),
  pivotToOuter: (layout: WordedLayout): ReadingWords => ({
    name: `Pivot line to ${outerEnd(layout)}`,
    how: `${straightEdge} Tape square from it (A) to the center of the ${layout.armRole === "carriesWheel" ? "wheel" : "outer joint"} (B).`,
    wrong: notFromABolt,
    a: "pivot line",
    b: `${outerEnd(layout)}${layout.armRole === "carriesWheel" ? "" : ", center"}`,
  }),
  damperLength: (): ReadingWords => ({
    name: "Shock length, eye to eye",
    how: "From the center of the lower bolt (A) to the center of the upper one (B), as the vehicle stands.",
    wrong: "Measured at full droop or with a wheel off the ground it is too long.",
    a: "lower bolt, center",
    b: "upper bolt, center",
    note: "Upper end a stud: to the middle of its rubber.",
  }),
  armAngle: (layout: WordedLayout): ReadingWords => ({
    name: "Arm angle",
    how: `${angleView(layout)}: between level and the line from the pivot line (A) to the ${outerEnd(layout)} (B).`,
    wrong: "Not along the arm's edge, which is often bent.",
    a: "pivot line",
    b: outerEnd(layout),
    note: lowerPositive,
  }),
  stopLineAngle: (layout: WordedLayout): ReadingWords => ({
    name: "Offset angle of the stop",
    how: `Only if ${stopPoint(layout)} (B) sits above or below the arm's own line. ${angleView(layout)}: between level and the line from the pivot line (A) to B.`,
    wrong: "Not the arm's own angle where the pad stands above or below the arm.",
    a: "pivot line",
    b: stopPoint(layout),
    note: lowerPositive,
    skipped: "Skip it and the arm angle is used.",
  }),
  mountLineAngle: (layout: WordedLayout): ReadingWords => ({
    name: "Offset angle of shock mount",
    how: `Only if the shock's lower bolt (B) sits off the arm's own line. ${angleView(layout)}: between level and the line from the pivot line (A) to B.`,
    wrong: "Not the arm's own angle where the bolt stands above or below the arm.",
    a: "pivot line",
    b: "lower shock bolt",
    note: lowerPositive,
    skipped: "Skip it and the arm angle is used.",
  }),
  stopLean: (layout: WordedLayout): ReadingWords => layoutsOnScreen[layout.kind].words.lean(layout),
} as const;
