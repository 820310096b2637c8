import type { LayoutKind, LimitKind, Reading, Ride, Use } from "../../physics/fitment.ts";
import { layoutAtHeight } from "../../physics/kinematics/index.ts";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import { capital, inModelUnits, length, type Sentence } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
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
 *
 * Errors: "platformNotKnown", "stopNotKnown", "gapNotKnown", "heightOutOfReach", "gapNotBelievable",
 * "limitNotBelievable".
 */
export function quickCheckRecord(
  pack: Pack,
  question: QuickCheckQuestion,
): Outcome<QuickCheckRecord> {
  const platform = platformOf(pack, question.platformId);
  if (platform === null) {
    return fail("platformNotKnown", [
      "This vehicle is not in the parts library. Choose another, or make a full check.",
    ]);
  }
  const usual = stopOf(pack, platform.usualStop);
  if (usual === null) {
    return fail("stopNotKnown", [
      `The parts library does not say which stop the ${platform.label} has. Make a full check.`,
    ]);
  }
  const { readings } = question;
  const assumed: Sentence[] = [
    [`Geometry, masses, rates and damping are those of the ${platform.label} in the library.`],
  ];
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
      ? { stop: stopFromPack(usual), words: `the usual one, “${usual.name}”` }
      : {
          stop: { ...stopFromPack(part), ...(batch !== undefined && { batch }) },
          words: `“${part.name}”, by its part number`,
        };
  const stop = fittedStop(known, readings.stopHeight, assumed);
  const { openedMm, openedPerMm } = placed.value;
  const doubt = openedPerMm * standing.tol;
  const gap = gapOf(platform, readings, openedMm, doubt, recordStop(usual), stop, assumed);
  if (!gap.ok) return gap;
  const limits = limitsOf(platform, readings, standing, openedMm, doubt, assumed);
  if (!limits.ok) return limits;
  const use: Use =
    readings.payload === "trailer" && question.use === "daily" ? "towing" : question.use;
  if (use !== question.use) assumed.push(["With a trailer on the hitch the use is towing."]);
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
    ride: rideOf(platform, readings, assumed),
    ...(rules === undefined ? {} : { rules }),
    ...(reference === undefined ? {} : { reference }),
    notes: assumed.map((sentence) => inModelUnits(sentence)).join("\n"),
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
    assumed.push(["The ride height was not measured: the vehicle is taken as standing as usual."]);
    return { raisedMm: 0, tol: 0 };
  }
  if (platform.rideHeight === undefined) {
    assumed.push([
      "The library has no usual ride height: the vehicle is taken as standing as usual.",
    ]);
    return { raisedMm: 0, tol: 0 };
  }
  const raisedMm = meanOf(rideHeight) - meanOf(platform.rideHeight);
  assumed.push([
    "It stands ",
    length(Math.abs(raisedMm)),
    ` ${raisedMm < 0 ? "lower" : "higher"} than usual, by its springs and not by raising the body off the frame.`,
  ]);
  return { raisedMm, tol: Math.hypot(rideHeight.tol, platform.rideHeight.tol) };
}

/**
 * The stop that is known to be there, at the height that was measured. Where that is another stop's height by more than both
 * ± allow, one of the same build: compressions and forces in proportion, so that its stiffness class
 * stays; of its damping nothing is known (common practice, no source).
 */
function fittedStop(
  { stop: known, words }: { readonly stop: CheckStop; readonly words: string },
  measured: TypedReading | undefined,
  assumed: Sentence[],
): CheckStop {
  if (measured === undefined) {
    assumed.push([`The stop is taken as ${words}, of its usual height.`]);
    return { ...known, freeHeight: fromPack(known.freeHeight) };
  }
  const height = meanOf(measured);
  const usualHeight = meanOf(known.freeHeight);
  if (Math.abs(height - usualHeight) <= measured.tol + known.freeHeight.tol) {
    assumed.push([`The stop is taken as ${words}.`]);
    return { ...known, freeHeight: measured };
  }
  const growth = height / usualHeight;
  assumed.push([
    "The stop is ",
    length(Math.abs(height - usualHeight)),
    ` ${height > usualHeight ? "taller" : "shorter"} than ${words}: it is taken as one of the same build and stiffness, without damping.`,
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
    name: `${shortened(known.name, 180)}, ${height > usualHeight ? "taller" : "shorter"}`,
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
    return fail("gapNotKnown", [
      "The library does not know this vehicle's gap. Measure it: from the stop to what it meets, along the stop.",
    ]);
  }
  const taller = meanOf(stop.freeHeight) - meanOf(usual.freeHeight);
  const heightTol = readings.stopHeight === undefined ? 0 : readings.stopHeight.tol;
  const gap: Reading = {
    source: "pack",
    values: [meanOf(platform.gap) + openedMm - taller],
    tol: Math.hypot(platform.gap.tol, doubt, heightTol),
  };
  if (meanOf(gap) <= 0) {
    return fail("gapNotBelievable", [
      "By these readings the stop would already be pressed with the vehicle standing. Measure the gap itself, from the stop to what it meets.",
    ]);
  }
  assumed.push([
    "The gap was not measured: ",
    length(meanOf(gap)),
    " follows from the library's and the ride height.",
  ]);
  return succeed(gap);
}

const limitWords: { readonly [Kind in LimitKind]: string } = {
  tyre: "the clearance over the tire",
  damper: "the rod left on the shock",
  spring: "the spring travel left",
  metal: "the metal to metal clearance",
  other: "the other clearance",
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
        `At this ride height nothing would be left of ${limitWords[limit.kind]}. Re-measure the ride height, from the wheel's center to the fender.`,
      ]);
    }
    limits.push({ ...limit, reading });
    assumed.push([
      `${capital(limitWords[limit.kind])} is the library's, at this ride height: `,
      length(meanOf(reading)),
      limit.kind === "tyre" ? ". Larger tires leave less: measure it then." : ".",
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
    assumed.push(["The shock is taken to close as fast as the wheel rises."]);
  }
  return { kind, at: "wheel", perWheel: 1 };
}

function rideOf(
  { ride = {}, axle, label: platform }: Platform,
  { payload }: QuickCheckReadings,
  assumed: Sentence[],
): Ride {
  const { label, perCornerKg } = usualPayload(payload);
  const { value, tol } = perCornerKg[axle];
  const how = `usual for “${label.toLowerCase()}”, common practice`;
  assumed.push([
    `“${label}” is taken as `,
    { kind: "mass", value },
    " more on this wheel than it stands under now.",
  ]);
  const fromPack = Object.fromEntries(
    Object.entries(ride)
      .filter(([, quantity]) => typeof quantity === "number")
      .map(([name]) => [name, `parts library, ${shortened(platform, 150)}`]),
  );
  return {
    ...ride,
    payloadPerCornerKg: value,
    tolerances: { ...ride.tolerances, payloadPerCornerKg: tol },
    estimated: { ...fromPack, payloadPerCornerKg: how },
  };
}
