import * as messages from "../../words/compiled/physics/worked.ts";
import type { EventResult } from "../fitment.ts";
import { closingSpeedFormula } from "../impact/closingSpeed.ts";
import { runFormulas } from "../impact/impact.ts";
import { peakFormulas } from "../impact/impactPeaks.ts";
import { roadFormulas, startFormulas, timeOver, touchDownSpeed } from "../impact/roadProfile.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { Message, QuantityKind, Words } from "../sentence.ts";
import { standardGravity } from "../standardGravity.ts";
import { simulatedStops } from "../stop/beyondTest.ts";
import {
  curveAtRest,
  losesEnergy,
  type StopAtSpeed,
  staticOnly,
  stopAtSpeed,
} from "../stop/stopAtSpeed.ts";
import { staticFormulas, stopCurve } from "../stop/stopCurve.ts";
import type { CornerContext } from "./cornerContext.ts";
import { meanOf, originOf } from "./measured.ts";
import { sagWorking } from "./payloadSag.ts";
import { type FormulaStep, step, told } from "./step.ts";
import { type FormulaSymbol, mm, quantity, type WorkedFigure } from "./workedFigure.ts";

export type EventFigure = Exclude<keyof EventResult, "kind" | "fullStop" | "hardContact">;

const formulas: Readonly<Record<EventFigure, Message>> = {
  ...peakFormulas,
  ...runFormulas,
  closingSpeedMmPerS: closingSpeedFormula,
};

const kinds: Readonly<Record<EventFigure, QuantityKind>> = {
  peakWheelTravelMm: "length",
  peakCompressionMm: "length",
  peakStopForceN: "force",
  peakAccelerationG: "acceleration",
  energyInJ: "energy",
  energyOutJ: "energy",
  leaveSpeedMmPerS: "speed",
  closingSpeedMmPerS: "speed",
  tyreOffMs: "count",
  bodyRiseMm: "length",
};

/** What tests at speed show of the stop, or that there are none. */
function partsOf({ fitment }: CornerContext): StopAtSpeed {
  const parts = stopAtSpeed(fitment.stop);
  return parts.ok ? parts.value : staticOnly;
}

function lossWords(context: CornerContext): Message {
  const { dashpot, restLoss, branches } = partsOf(context);
  const found = [
    ...(dashpot === null ? [] : [messages.dampingC]),
    ...(restLoss > 0 ? [messages.restLossH] : []),
    ...(branches.length > 0 ? [messages.fadingPartsQ] : []),
  ];
  if (found.length > 0) return messages.ofStopFromIts({ found: listed(found) });
  return context.fitment.stop.testedAtSpeed ? messages.itsTestsAtSpeed : messages.stopHasNoTest;
}

function listed([first = "", ...others]: readonly Words[]): Words {
  return others.length === 0 ? first : messages.oneAndMore({ first, rest: listed(others) });
}

export function impactAssumptions(context: CornerContext): readonly Message[] {
  return [
    layoutRegistry[context.fitment.layout.kind].joinsWheels
      ? messages.bothWheelsOfAxle
      : messages.oneCornerAloneLoaded,
    messages.linearRideSpringAnd,
    lossWords(context),
    messages.landingBeginsWithWheels,
    messages.wheelMayHangLower,
    messages.eventAndLimitsAre,
    simulatedStops,
  ];
}

export function impactFigure(
  context: CornerContext,
  eventIndex: number,
  name: EventFigure,
): WorkedFigure | undefined {
  const event = context.rules.events[eventIndex];
  const result = context.assessed.events?.[eventIndex];
  const { ride } = context.fitment;
  const mass = context.corner.cornerMassKg;
  const sag = sagWorking(context);
  if (!event || !result || !ride || !mass || !sag) return undefined;
  const total = meanOf(mass) + (ride.payloadPerCornerKg ?? 0);
  const unsprung = ride.unsprungMassKg ?? 0;

  const symbols: FormulaSymbol[] = [
    {
      symbol: "ms",
      meaning: messages.sprungMassAtThis,
      value: quantity("mass", total - unsprung),
      origin: messages.plusPayloadLessUnsprung({ originOf: originOf(mass) }),
    },
    {
      symbol: "mu",
      meaning: messages.unsprungMass,
      value: quantity("mass", unsprung),
      origin: messages.rideData,
    },
    {
      symbol: "kw",
      meaning: messages.wheelRate,
      value: quantity("rate", ride.wheelRateNPerMm ?? 0),
      origin: messages.rideData,
    },
    {
      symbol: "kt",
      meaning: messages.tireRate,
      value: quantity("rate", ride.tyreRateNPerMm ?? 0),
      origin: messages.rideData,
    },
    {
      symbol: "c",
      meaning: messages.dampingAtWheelIn,
      value: quantity("damping", ride.damperBumpNsPerMm ?? 0),
      origin: messages.rideData,
    },
    {
      symbol: "c",
      meaning: messages.dampingAtWheelInRebound,
      value: quantity("damping", ride.damperReboundNsPerMm ?? 0),
      origin: messages.rideData,
    },
    {
      symbol: "W",
      meaning: messages.weightOnThisWheel,
      value: quantity("force", total * standardGravity),
      origin: messages.massTimesStandardGravity({ standardGravity }),
    },
    context.gapSymbol,
  ];
  const steps: FormulaStep[] = [
    ...sag.steps,
    event.kind === "landing"
      ? step(
          startFormulas.touchDown,
          { gₙ: `${standardGravity}`, h: quantity("count", event.heightM) },
          quantity("speed", 1000 * touchDownSpeed(event.heightM)),
        )
      : step(
          startFormulas.timeOver,
          {
            L: [quantity("count", event.lengthM), " m"],
            V: ["(", quantity("count", event.speedKmPerH), " / 3.6) m/s"],
          },
          quantity("count", timeOver(event)),
          messages.mHigh({
            heightM: quantity("count", event.heightM),
            kind: roadFormulas[event.kind],
          }),
        ),
    ...staticCheck(context, result, name),
    told(formulas[name], [messages.msZSSusp], quantity(kinds[name], result[name])),
  ];
  return {
    symbols,
    steps,
    source: messages.quarterCarWithStop,
    assumed: impactAssumptions(context),
  };
}

/** Without loss, the force and the energy taken follow from the static curve alone. */
function staticCheck(
  context: CornerContext,
  result: EventResult,
  name: EventFigure,
): readonly FormulaStep[] {
  const parts = partsOf(context);
  const whole = stopCurve(context.fitment.stop);
  if (losesEnergy(parts) || !whole.ok) return [];
  const curve = curveAtRest(whole.value, parts);
  const depth = result.peakCompressionMm;
  if (name === "peakStopForceN") {
    return [
      told(
        staticFormulas.force,
        [messages.staticCurveAt({ mm: mm(depth) })],
        quantity("force", curve.force(depth)),
      ),
    ];
  }
  if (name === "energyInJ" && result.peakCompressionMm > 0) {
    return [
      told(
        staticFormulas.energy,
        [messages.staticCurveFrom0({ mm: mm(depth) })],
        quantity("energy", curve.energy(depth) / 1000),
      ),
    ];
  }
  return [];
}
