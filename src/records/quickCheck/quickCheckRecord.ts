import type { LayoutKind, LimitKind, Reading, Ride, Use } from "../../physics/fitment.ts";
import { layoutAtHeight } from "../../physics/kinematics/index.ts";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import {
  capital,
  length,
  type Message,
  type Say,
  type Sentence,
  small,
} from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/quickCheck.ts";
import type {
  CheckLayout,
  CheckLimit,
  CheckRecord,
  CheckStop,
  TypedReading,
} from "../check/checkRecord.ts";
import { checkFormat, checkVersion } from "../check/recordFormat.ts";
import { usualPayload } from "../entry/payloadWords.ts";
import {
  type Pack,
  type Platform,
  platformOf,
  recordStop,
  stopFromPack,
  stopOf,
  takenFrom,
} from "../pack/pack.ts";
import { shortened } from "../text/jsonText.ts";
import {
  bodyLift,
  type DoubtedReading,
  groundToArch,
  inchesForMm,
  notBelieved,
} from "./quickCheckDoubts.ts";
import {
  type MeasuredName,
  measuredNames,
  type QuickCheckQuestion,
  type QuickCheckReadings,
} from "./quickCheckQuestion.ts";

export interface QuickCheckRecord {
  readonly record: CheckRecord;
  /** What it takes from the platform or assumes, in plain words. */
  readonly assumed: readonly Sentence[];
  /** What was measured on the vehicle itself. */
  readonly measured: readonly MeasuredName[];
  /** A reading that does not go with another; null where they go together. */
  readonly doubted: DoubtedReading | null;
}

/** How the vehicle stands against the platform's usual height, mm; positive = higher. */
interface Standing {
  readonly raisedMm: number;
  readonly tol: number;
}

/**
 * An ordinary check record from a customer's few readings and the platform of the pack: what was
 * measured as it was typed, the rest from the platform with its tolerances, turned to the ride height
 * that was measured. One corner. To be kept, sent, assessed (`fitmentOf`) and carried on as a full check.
 * `say` writes what was assumed, for the record.
 *
 * Errors: "platformNotKnown", "stopNotKnown", "gapNotKnown", "heightOutOfReach", "gapNotBelievable",
 * "limitNotBelievable".
 */
export function quickCheckRecord(
  pack: Pack,
  question: QuickCheckQuestion,
  say: Say,
): Outcome<QuickCheckRecord> {
  const platform = platformOf(pack, question.platformId);
  if (platform === null) {
    return fail("platformNotKnown", [messages.thisVehicleIsNot]);
  }
  const usual = stopOf(pack, platform.usualStop);
  if (usual === null) {
    return fail("stopNotKnown", [messages.partsLibraryDoesNot({ label: platform.label })]);
  }
  const { readings } = question;
  const assumed: Sentence[] = [[messages.geometryMassesRatesAnd({ label: platform.label })]];
  const standing = standingOf(platform, readings, assumed);
  const arch = groundToArch(platform, readings);
  if (arch !== null) return fail("rideHeightNotBelievable", arch.sentence, arch.reading);
  const odd = notBelieved(readings);
  if (odd !== null) return fail("notBelieved", odd.sentence, odd.reading);
  const placed = layoutAtHeight(platform.layout, standing.raisedMm, standing.tol);
  if (!placed.ok) return placed;
  const part = stopOf(pack, question.part?.stopId ?? null);
  const { batch } = question.part ?? {};
  const known =
    part === null
      ? { stop: stopFromPack(usual), words: messages.usualOne({ name: usual.name }) }
      : {
          stop: { ...stopFromPack(part), ...(batch !== undefined && { batch }) },
          words: messages.byItsPartNumber({ name: part.name }),
        };
  const stop = fittedStop(known, readings.stopHeight, assumed, say);
  const { openedMm, openedPerMm } = placed.value;
  const doubt = openedPerMm * standing.tol;
  const gap = gapOf(platform, readings, openedMm, doubt, recordStop(usual), stop, assumed);
  if (!gap.ok) return gap;
  const limits = limitsOf(platform, readings, standing, openedMm, doubt, assumed);
  if (!limits.ok) return limits;
  const use: Use =
    readings.payload === "trailer" && question.use === "daily" ? "towing" : question.use;
  if (use !== question.use) assumed.push([messages.withTrailerOnHitch]);
  const { rideHeight = platform.rideHeight } = readings;
  const rules = pack.rules?.[use];
  const reference = takenFrom(pack, { platform, rules, stop: part?.id });
  const record: CheckRecord = {
    format: checkFormat,
    version: checkVersion,
    id: question.id,
    createdAt: question.createdAt,
    author: { role: "customer" },
    vehicle: {
      label: question.label ?? platform.label,
      platformId: platform.id,
      liftMm: Math.round(10 * standing.raisedMm) / 10,
      use,
    },
    axle: platform.axle,
    layout: packLayout(placed.value.layout as CheckLayout),
    corners: [
      {
        side: question.side ?? "left",
        gap: gap.value,
        ...(rideHeight === undefined
          ? {}
          : { rideHeight: readings.rideHeight ?? fromPack(rideHeight) }),
        ...(platform.cornerMassKg === undefined
          ? {}
          : { cornerMassKg: fromPack(platform.cornerMassKg) }),
        limits: limits.value,
      },
    ],
    stop,
    ride: rideOf(platform, readings, assumed, say),
    ...(rules === undefined ? {} : { rules }),
    ...(reference === undefined ? {} : { reference }),
    notes: assumed.map((sentence) => say(sentence)).join("\n"),
  };
  return succeed({
    record,
    assumed,
    measured: measuredNames.filter((name) => readings[name] !== undefined),
    doubted:
      inchesForMm(platform, meanOf(usual.freeHeight), readings) ?? bodyLift(platform, readings),
  });
}

/** What comes from the pack is never shown as read by the person. */
function fromPack<Own extends Reading>(reading: Own): Own {
  return { ...reading, source: "pack" };
}

function packLayout(layout: CheckLayout): CheckLayout {
  const readings = Object.fromEntries(
    Object.entries(layout.readings).map(([name, reading]) => [name, fromPack(reading)]),
  );
  return { ...layout, readings } as CheckLayout;
}

function standingOf(
  platform: Platform,
  { rideHeight }: QuickCheckReadings,
  assumed: Sentence[],
): Standing {
  if (rideHeight === undefined) {
    assumed.push([messages.rideHeightWasNot]);
    return { raisedMm: 0, tol: 0 };
  }
  if (platform.rideHeight === undefined) {
    assumed.push([messages.libraryHasNoUsual]);
    return { raisedMm: 0, tol: 0 };
  }
  const raisedMm = meanOf(rideHeight) - meanOf(platform.rideHeight);
  assumed.push([
    messages.itStandsLower({
      raisedMm: length(Math.abs(raisedMm)),
      isRaisedMm: raisedMm < 0,
    }),
  ]);
  return { raisedMm, tol: Math.hypot(rideHeight.tol, platform.rideHeight.tol) };
}

/**
 * The stop that is known to be there, at the height that was measured. Where that is another stop's height by more than both
 * ± allow, one of the same build: compressions and forces in proportion, so that its stiffness class
 * stays; of its damping nothing is known (common practice, no source).
 */
function fittedStop(
  { stop: known, words }: { readonly stop: CheckStop; readonly words: Message },
  measured: TypedReading | undefined,
  assumed: Sentence[],
  say: Say,
): CheckStop {
  if (measured === undefined) {
    assumed.push([messages.stopIsTakenAs({ words })]);
    return { ...known, freeHeight: fromPack(known.freeHeight) };
  }
  const height = meanOf(measured);
  const usualHeight = meanOf(known.freeHeight);
  if (Math.abs(height - usualHeight) <= measured.tol + known.freeHeight.tol) {
    assumed.push([messages.stopIsTakenAs2({ words })]);
    return { ...known, freeHeight: measured };
  }
  const growth = height / usualHeight;
  assumed.push([
    messages.stopIsTaller({
      height: length(Math.abs(height - usualHeight)),
      hasHeight: height > usualHeight,
      words,
    }),
  ]);
  // What tests at speed found holds for the tested stop alone.
  const {
    restLoss: _loss,
    staticShare: _share,
    branches: _branches,
    testDoubt: _doubt,
    partNumber: _part,
    revision: _revision,
    batch: _batch,
    usableTolMm,
    ...build
  } = known;
  return {
    ...build,
    ...(usableTolMm !== undefined && { usableTolMm: growth * usableTolMm }),
    name: say(
      messages.taller({ name: shortened(known.name, 180), hasHeight: height > usualHeight }),
    ),
    freeHeight: measured,
    usableCompressionMm: growth * known.usableCompressionMm,
    curve: known.curve.map(([depth, force]) => [growth * depth, growth * force] as const),
    damping: null,
    testedAtSpeed: false,
  };
}

function gapOf(
  platform: Platform,
  readings: QuickCheckReadings,
  openedMm: number,
  doubt: number,
  usual: CheckStop,
  stop: CheckStop,
  assumed: Sentence[],
): Outcome<TypedReading> {
  if (readings.gap !== undefined) return succeed(readings.gap);
  if (platform.gap === undefined) {
    return fail("gapNotKnown", [messages.libraryDoesNotKnow]);
  }
  const taller = meanOf(stop.freeHeight) - meanOf(usual.freeHeight);
  const heightTol = readings.stopHeight === undefined ? 0 : readings.stopHeight.tol;
  const gap: Reading = {
    source: "pack",
    values: [meanOf(platform.gap) + openedMm - taller],
    tol: Math.hypot(platform.gap.tol, doubt, heightTol),
  };
  if (meanOf(gap) <= 0) {
    return fail("gapNotBelievable", [messages.byTheseReadingsStop]);
  }
  assumed.push([messages.gapWasNotMeasured({ meanOf: length(meanOf(gap)) })]);
  return succeed(gap);
}

const limitWords: { readonly [Kind in LimitKind]: Message } = {
  tyre: messages.clearanceOverTire,
  damper: messages.rodLeftOnShock,
  spring: messages.springTravelLeft,
  metal: messages.metalToMetalClearance,
  other: messages.otherClearance,
};

function limitsOf(
  platform: Platform,
  { clearance }: QuickCheckReadings,
  standing: Standing,
  openedMm: number,
  doubt: number,
  assumed: Sentence[],
): Outcome<readonly CheckLimit[]> {
  const limits: CheckLimit[] = [];
  for (const limit of platform.limits) {
    if (limit.kind === clearance?.kind) continue;
    const perWheel = limit.perWheel ?? 1;
    const [more, tol] =
      limit.at === "wheel"
        ? [perWheel * standing.raisedMm, perWheel * standing.tol]
        : [openedMm, doubt];
    const reading: Reading = {
      source: "pack",
      values: limit.reading.values.map((value) => value + more),
      tol: Math.hypot(limit.reading.tol, tol),
    };
    if (meanOf(reading) <= 0) {
      return fail("limitNotBelievable", [
        messages.atThisRideHeight({ kind: limitWords[limit.kind] }),
      ]);
    }
    limits.push({ ...limit, reading });
    assumed.push([
      messages.isLibrarysAtThis({
        kind: capital(limitWords[limit.kind]),
        meanOf: length(meanOf(reading)),
        kind2: limit.kind,
      }),
    ]);
  }
  if (clearance === undefined) return succeed(limits);
  const usual = platform.limits.find(({ kind }) => kind === clearance.kind);
  const measured = usual ?? freshLimit(clearance.kind, platform.layout.kind, assumed);
  return succeed([{ ...measured, reading: clearance.reading }, ...limits]);
}

/** A kind of limit of which the pack says nothing. */
function freshLimit(
  kind: LimitKind,
  layout: LayoutKind,
  assumed: Sentence[],
): Omit<CheckLimit, "reading"> {
  if (kind === "damper" && layoutRegistry[layout].onRod) {
    return { kind, at: "stop" };
  }
  if (kind === "damper") {
    assumed.push([messages.shockIsTakenTo]);
  }
  return { kind, at: "wheel", perWheel: 1 };
}

function rideOf(
  { ride = {}, axle, label: platform }: Platform,
  { payload }: QuickCheckReadings,
  assumed: Sentence[],
  say: Say,
): Ride {
  const { label, perCornerKg } = usualPayload(payload);
  const { value, tol } = perCornerKg[axle];
  const how = say(messages.usualForCommonPractice({ label: small(label) }));
  assumed.push([messages.isTakenAsMore({ label, value: { kind: "mass", value } })]);
  const library = say(messages.partsLibrary({ platform: shortened(platform, 150) }));
  const fromPack = Object.fromEntries(
    Object.entries(ride)
      .filter(([, quantity]) => typeof quantity === "number")
      .map(([name]) => [name, library]),
  );
  return {
    ...ride,
    payloadPerCornerKg: value,
    tolerances: { ...ride.tolerances, payloadPerCornerKg: tol },
    estimated: { ...fromPack, payloadPerCornerKg: how },
  };
}
