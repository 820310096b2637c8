import type {
  Assessment,
  Check,
  CornerAssessment,
  DoubtFromTest,
  EstimatedCurve,
  EventResult,
  State,
} from "../physics/fitment.ts";
import type { Prescription } from "../physics/prescription/index.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import { inModelUnits } from "../saying/modelUnits.ts";
import { type PrintedPrescription, printedPrescription } from "./prescriptionJson.ts";

type PrintedCheck = Pick<Check, "id" | "state" | "probability" | "side" | "reading"> & {
  readonly message: string;
};

/** One corner as record.md says it is printed, and no more. */
interface PrintedCorner
  extends Omit<
    CornerAssessment,
    | "events"
    | "undampedEvents"
    | "fromTest"
    | "stopItselfPasses"
    | "intervals"
    | "checks"
    | "doubt"
    | "missing"
  > {
  readonly events: readonly PrintedEvent[] | null;
  /** Only where the stop's test says what it leaves open: ± of the events' figures, 95 %. */
  readonly fromTest?: DoubtFromTest;
  readonly intervals: Pick<
    CornerAssessment["intervals"],
    "wheelTravelToContactMm" | "wheelTravelToFullStopMm" | "reserveMm"
  >;
  readonly checks: readonly PrintedCheck[];
}

export interface PrintedAssessment {
  readonly id: string;
  readonly verdict: State;
  /** Only where the force curve of the stop was not tested: how it was come by, and its ± as a share. */
  readonly stopEstimate?: EstimatedCurve;
  readonly corners: readonly PrintedCorner[];
  readonly prescription: PrintedPrescription;
}

export interface PrintedError {
  readonly file: string;
  readonly error: string;
}

/** The speed onto the stop is told by `fromTest`, as times of its fastest test. */
type PrintedEvent = Omit<EventResult, "closingSpeedMmPerS">;

function printedEvent(event: EventResult): PrintedEvent {
  return {
    kind: event.kind,
    peakWheelTravelMm: event.peakWheelTravelMm,
    peakCompressionMm: event.peakCompressionMm,
    peakStopForceN: event.peakStopForceN,
    peakAccelerationG: event.peakAccelerationG,
    energyInJ: event.energyInJ,
    energyOutJ: event.energyOutJ,
    leaveSpeedMmPerS: event.leaveSpeedMmPerS,
    tyreOffMs: event.tyreOffMs,
    bodyRiseMm: event.bodyRiseMm,
    fullStop: event.fullStop,
    hardContact: event.hardContact,
  };
}

function printedCheck({ id, state, probability, side, reading, sentence }: Check): PrintedCheck {
  return {
    id,
    state,
    ...(probability === undefined ? {} : { probability }),
    ...(side === undefined ? {} : { side }),
    ...(reading === undefined ? {} : { reading }),
    message: inModelUnits(sentence),
  };
}

function printedCorner(corner: CornerAssessment): PrintedCorner {
  const { oneWheel, loadedCompressionMm } = corner;
  return {
    side: corner.side,
    leverRatio: corner.leverRatio,
    wheelTravelToContactMm: corner.wheelTravelToContactMm,
    wheelTravelToFullStopMm: corner.wheelTravelToFullStopMm,
    wheelTravelToHardLimitMm: corner.wheelTravelToHardLimitMm,
    hardLimit: corner.hardLimit,
    freeShare: corner.freeShare,
    reserveMm: corner.reserveMm,
    spacerMm: corner.spacerMm,
    tallerMm: corner.tallerMm,
    secantRateNPerMm: corner.secantRateNPerMm,
    stopRateClass: corner.stopRateClass,
    progressive: corner.progressive,
    linkage: corner.linkage,
    leverRatioAtFullStop: corner.leverRatioAtFullStop,
    ...(oneWheel === undefined
      ? {}
      : {
          oneWheel: {
            leverRatio: oneWheel.leverRatio,
            wheelTravelToContactMm: oneWheel.wheelTravelToContactMm,
            wheelTravelToFullStopMm: oneWheel.wheelTravelToFullStopMm,
          },
        }),
    roadTravelSigmaMm: corner.roadTravelSigmaMm,
    contactsPerKm: corner.contactsPerKm,
    loadedSagMm: corner.loadedSagMm,
    loadedTravelToContactMm: corner.loadedTravelToContactMm,
    loadedContactsPerKm: corner.loadedContactsPerKm,
    freeTravelNeededMm: corner.freeTravelNeededMm,
    freeTravelNeededUnladenMm: corner.freeTravelNeededUnladenMm,
    mostExtraHeightMm: corner.mostExtraHeightMm,
    events: corner.events === null ? null : corner.events.map(printedEvent),
    ...(corner.fromTest && { fromTest: corner.fromTest }),
    classesThatWork: corner.classesThatWork,
    classWindow: corner.classWindow,
    intervals: {
      wheelTravelToContactMm: corner.intervals.wheelTravelToContactMm,
      wheelTravelToFullStopMm: corner.intervals.wheelTravelToFullStopMm,
      reserveMm: corner.intervals.reserveMm,
    },
    clearanceProbability: corner.clearanceProbability,
    earlyContactProbability: corner.earlyContactProbability,
    ...(loadedCompressionMm === undefined ? {} : { loadedCompressionMm }),
    checks: corner.checks.map(printedCheck),
  };
}

/** One assessed check as `assess --json` prints it; numbers in full precision. */
export function printedAssessment(
  { id, stop: { estimated } }: Pick<CheckRecord, "id" | "stop">,
  assessment: Assessment,
  prescription: Prescription,
): PrintedAssessment {
  return {
    id,
    verdict: assessment.verdict,
    ...(estimated && {
      stopEstimate: { how: estimated.how, forceShare: estimated.forceShare },
    }),
    corners: assessment.corners.map(printedCorner),
    prescription: printedPrescription(prescription),
  };
}
