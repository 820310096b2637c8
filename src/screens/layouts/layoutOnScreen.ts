import type { JSX } from "preact";
import type { LayoutKind } from "../../physics/fitment.ts";
import type { OwnReadingOf } from "../../physics/readings/index.ts";
import type { LimitPlaceChoice } from "../../records/filling/limitPlace.ts";
import type { Point } from "../shapes/geometry.ts";
import type { DrawingValues } from "./pictured.ts";
import type { SceneProps } from "./sceneParts.tsx";
import type { LayoutPoints, Skeleton, ToStand } from "./skeleton.ts";
import type { ToldReading } from "./toldReading.ts";
import type { ReadingWords, WordedLayout } from "./wordedReading.ts";

/** A layout in words. */
interface LayoutWords {
  /** To choose it by, beside its picture. */
  readonly choice: { readonly name: string; readonly hint: string };
  /** Of its picture. */
  readonly title: string;
  readonly description: string;
  /** In a list of vehicles. */
  readonly short: string;
  /** What the stop meets, where nothing else was said: 22 letters at most. */
  readonly landing: string;
  /** The same where the stop itself stands on the arm. */
  readonly landingOfStopOnArm?: string;
  /** How its stop's lean is taken. */
  lean(layout: WordedLayout): ReadingWords;
  /** What an arrow of plus says for that lean; none where the arm's pivot says it. */
  readonly plusLean?: string;
  /** What metal would hit from below: 22 letters at most. */
  readonly movingMetal: string;
  /** Where a clearance beside the stop is measured on its arm; null without an arm. */
  readonly placeOnArm: { readonly value: LimitPlaceChoice; readonly name: string } | null;
  /** Asks for the readings that sharpen how its wheel moves; null where there are none. */
  readonly closer: { readonly lead: string; readonly legend: string } | null;
}

/** How a layout is drawn where nothing is known of the vehicle. */
interface LayoutPicture {
  /** The lean of its stop, degrees. */
  readonly usualLean: number;
  /** The picture of right and wrong of that lean. */
  readonly leanPair: "stopLean" | "damperLean" | "strutLean";
  /** For its small picture: larger than life, so that the stop is found at a glance. */
  readonly values: DrawingValues;
  /** What of the layout its small picture shows; null: all of it. */
  bounds(skeleton: Skeleton): Point[] | null;
}

/** A layout as it is told and drawn: everything that screens say of it only here. */
export interface LayoutOnScreen<Kind extends LayoutKind = LayoutKind> {
  /** The readings that its physics defines. */
  readonly readings: { readonly [Name in OwnReadingOf<Kind>]: ToldReading };
  readonly words: LayoutWords;
  readonly picture: LayoutPicture;
  /** Where its parts stand. */
  points(toStand: ToStand): LayoutPoints;
  /** The layout as it stands, seen along the vehicle; `Scene` puts ground under it. */
  Scene(props: SceneProps): JSX.Element;
}
