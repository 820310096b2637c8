import type { GeometryReadingName, LayoutKind } from "../../physics/fitment.ts";
import { neededReadings } from "../../physics/readings/index.ts";
import type { PartialCorner } from "../../records/check/checkRecord.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import {
  askedGeometry,
  askedLinkage,
  askedRightGeometry,
  hasLinkageQuestion,
  wantsLinkage,
} from "../../records/filling/askedGeometry.ts";
import { chosen } from "../../records/filling/choice.ts";
import { isLayoutSaid } from "../../records/filling/layoutChoices.ts";
import { isLimitPlaced } from "../../records/filling/limitPlace.ts";
import { readingMadeOf } from "../../records/filling/makings.ts";
import { standOf, standReading } from "../../records/filling/stand.ts";
import * as messages from "../../words/compiled/screens/guide.ts";
import { readingWords, wordedLayout } from "../readings/readingWords.ts";
import { type Draft, ofReading, type Section } from "./step.ts";

export function layoutDrafts(stored: StoredCheck): Draft[] {
  const { axle, corners } = stored.record;
  return [
    {
      id: "axle",
      section: messages.layout,
      name: messages.whichAxleWhichSides,
      done: Boolean(axle) && corners.length > 0,
    },
    {
      id: "layout",
      section: messages.layout,
      name: messages.howStopSits,
      done: isLayoutSaid(stored),
    },
  ];
}

/** The steps of every side: the geometry once, where it is the same; gap and clearances on each. */
export function sideDrafts(stored: StoredCheck, kind: LayoutKind): Draft[] {
  return stored.record.corners.flatMap((corner, place) => {
    const section: Section = corner.side === "left" ? messages.leftSide : messages.rightSide;
    const geometry =
      place === 0
        ? [
            ...geometryDrafts(stored, kind, section, askedGeometry(stored), null),
            ...linkageDrafts(stored, kind, section),
          ]
        : rightGeometryDrafts(stored, kind, section);
    return [...geometry, ...cornerDrafts(stored, corner, section)];
  });
}

function geometryDrafts(
  stored: StoredCheck,
  kind: LayoutKind,
  section: Section,
  names: readonly GeometryReadingName[],
  side: "right" | null,
): Draft[] {
  const readings =
    side === null
      ? stored.record.layout?.readings
      : stored.record.corners.find((corner) => corner.side === "right")?.geometry;
  return names.map((name) => ({
    ...ofReading(side === null ? name : `${side}.${name}`),
    section,
    name: readingWords(name, wordedLayout(stored.record)).name,
    needed: neededReadings[kind].includes(readingMadeOf(stored, name) ?? name),
    done: readings?.[name] !== undefined,
    ...(name === "pivotToOuter" && side === null && { typedHere: ["layout.wheelPerOuter"] }),
  }));
}

/** Whether the other arm is measured too, and its readings where it is. */
function linkageDrafts(stored: StoredCheck, kind: LayoutKind, section: Section): Draft[] {
  if (!hasLinkageQuestion(stored)) return [];
  return [
    {
      id: "linkage",
      section,
      name: messages.wantItMoreExact,
      needed: false,
      done: wantsLinkage(stored) !== null,
    },
    ...geometryDrafts(stored, kind, section, askedLinkage(stored), null),
  ];
}

function rightGeometryDrafts(stored: StoredCheck, kind: LayoutKind, section: Section): Draft[] {
  return [
    {
      id: "right.geometry",
      section,
      name: messages.sameGeometryAsLeft,
      done: stored.progress.rightGeometry !== null,
    },
    ...(stored.progress.rightGeometry === "own"
      ? geometryDrafts(stored, kind, section, askedRightGeometry(stored), "right")
      : []),
  ];
}

function cornerDrafts(stored: StoredCheck, corner: PartialCorner, section: Section): Draft[] {
  const { side } = corner;
  const stand = standReading(side, standOf(stored, side));
  const layout = wordedLayout(stored.record);
  return [
    {
      ...ofReading(stand),
      section,
      name: readingWords(stand, layout).name,
      done:
        corner.gap !== undefined ||
        corner.pressedHeight !== undefined ||
        corner.seatToPad !== undefined,
    },
    {
      ...ofReading(`${side}.rideHeight`),
      section,
      name: messages.rideHeight,
      needed: false,
      done: corner.rideHeight !== undefined,
    },
    {
      id: `${side}.limits`,
      section,
      name: messages.whatCouldHitFirst,
      done: corner.limits.length > 0 || chosen(stored, `${side}.limits`) === "none",
    },
    ...corner.limits.map((limit, index) => ({
      ...ofReading(`${side}.limits.${index}`),
      section,
      name: readingWords(`${side}.limits.${index}`, layout, limit).name,
      done: limit.reading !== undefined && isLimitPlaced(stored, side, index),
      typedHere: [`${side}.limits.${index}.perWheel`, `${side}.limits.${index}.distance`],
    })),
  ];
}
