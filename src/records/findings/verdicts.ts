import type { CheckId, State } from "../../physics/fitment.ts";
import { isReadingId, type ReadingId } from "../../physics/readings/index.ts";
import type { Message } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/findings.ts";
import { type PackPlatforms, platformOf } from "../pack/pack.ts";
import { platformTitle } from "../pack/platformTold.ts";
import type { FindingSubject } from "./subject.ts";

export interface PlatformVerdicts {
  /** Of the pack; null: checks that name none, or one the pack has not. */
  readonly platformId: string | null;
  readonly label: Message;
  readonly count: number;
  readonly verdicts: { readonly [Each in State]: number };
  /** Checks in which this was missed on a side at least. */
  readonly missed: { readonly [Each in CheckId]?: number };
}

/** Verdicts and missed limits by platform, those with most checks first. Only what was computed counts. */
export function verdictsByPlatform(
  subjects: readonly FindingSubject[],
  pack: PackPlatforms,
): PlatformVerdicts[] {
  const rows = new Map<string, PlatformVerdicts>();
  /** Of rows with as many checks, by vehicle; what is of none comes last. */
  const places = new Map<string | null, string>([[null, "\uffff"]]);
  for (const { record, assessment } of subjects) {
    if (assessment === null) continue;
    const platform = platformOf(pack, record.vehicle.platformId);
    const key = platform?.id ?? "";
    if (platform) places.set(platform.id, JSON.stringify([platform.label, platform.axle]));
    const before: PlatformVerdicts = rows.get(key) ?? {
      platformId: platform?.id ?? null,
      label: platform ? platformTitle(platform) : messages.noVehicleOfLibrary,
      count: 0,
      verdicts: { ok: 0, care: 0, no: 0, unsure: 0 },
      missed: {},
    };
    const missed: { [Each in CheckId]?: number } = { ...before.missed };
    for (const id of new Set(
      assessment.corners.flatMap(({ checks }) =>
        checks.filter(({ state }) => state === "no").map((check) => check.id),
      ),
    )) {
      missed[id] = (missed[id] ?? 0) + 1;
    }
    const { verdict } = assessment;
    rows.set(key, {
      ...before,
      count: before.count + 1,
      verdicts: { ...before.verdicts, [verdict]: before.verdicts[verdict] + 1 },
      missed,
    });
  }
  const placeOf = ({ platformId }: PlatformVerdicts) => places.get(platformId) ?? "";
  return [...rows.values()].sort((a, b) => b.count - a.count || (placeOf(a) < placeOf(b) ? -1 : 1));
}

export interface DecidingReading {
  /** Without its side. */
  readonly reading: string;
  /** One of those that count here, side and all: it has a name. */
  readonly example: ReadingId;
  readonly count: number;
  /** Of all checks that anything decided. */
  readonly share: number;
}

/**
 * Which reading decides most often: of each check's worst sides, the reading that the worst of their checks
 * names. A check that fits everywhere is decided by none; one counts once a reading.
 */
export function decidingReadings(subjects: readonly FindingSubject[]): DecidingReading[] {
  const counts = new Map<string, { example: ReadingId; count: number }>();
  let decided = 0;
  for (const { assessment } of subjects) {
    if (assessment === null || assessment.verdict === "ok") continue;
    const named = new Map<string, ReadingId>();
    for (const { checks } of assessment.corners) {
      for (const { state, reading } of checks) {
        if (state !== assessment.verdict || !reading || !isReadingId(reading)) continue;
        named.set(withoutSide(reading), reading);
      }
    }
    if (named.size > 0) decided += 1;
    for (const [reading, example] of named) {
      const count = (counts.get(reading)?.count ?? 0) + 1;
      counts.set(reading, { example, count });
    }
  }
  return [...counts]
    .map(([reading, { example, count }]) => ({ reading, example, count, share: count / decided }))
    .sort((a, b) => b.count - a.count || (a.reading < b.reading ? -1 : 1));
}

function withoutSide(reading: string): string {
  return reading
    .split(".")
    .filter((part) => part !== "left" && part !== "right")
    .join(".");
}
