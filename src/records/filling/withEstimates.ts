import {
  coilSpringRate,
  dampingFromShare,
  type Estimate,
  hitchLoad,
  steelShearModulus,
  type Toleranced,
  upToRating,
  usualReboundPerBump,
  wheelRateFromCoil,
  wheelRateFromSag,
} from "../../physics/estimates/index.ts";
import type { RideQuantity, Side } from "../../physics/fitment.ts";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/filling.ts";
import type { Message, Quantity, Say } from "../../words/message.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { type Entry, entryText } from "../entry/entry.ts";
import { withCorner } from "../entry/entryPath.ts";
import type { LengthUnit } from "../entry/units.ts";
import type { Pack } from "../pack/pack.ts";
import { setEntry, setEstimate } from "./changes.ts";
import { chosen } from "./choice.ts";
import { helperInputs, helperToleranced } from "./helperInputs.ts";
import { hasBeamAxle } from "./layoutChoices.ts";
import { packCornerMass, packRide } from "./platforms.ts";
import { rideWay, withoutRide } from "./rideWays.ts";
import { sidesOf } from "./sides.ts";
import {
  dampingShares,
  halvingTolerance,
  payloadShares,
  tyreRates,
  unsprungShares,
} from "./usualValues.ts";

/** The weight on a wheel of this axle, mean of the sides that are known. */
export function cornerMass(stored: StoredCheck): Toleranced | null {
  const readings = stored.record.corners.flatMap(({ cornerMassKg }) =>
    cornerMassKg ? [{ value: mean(cornerMassKg.values), tol: cornerMassKg.tol }] : [],
  );
  if (readings.length === 0) return null;
  return {
    value: mean(readings.map(({ value }) => value)),
    tol: Math.max(...readings.map(({ tol }) => tol)),
  };
}

function needs(words: Message): Outcome<never> {
  return fail("estimateIncomplete", [words]);
}

function scaled(base: Toleranced, share: Toleranced, how: Message): Outcome<Estimate> {
  const value = base.value * share.value;
  const tol = value * Math.hypot(base.tol / base.value, share.tol / share.value);
  return succeed({ value, tol, how });
}

function percent(share: number): Quantity {
  return { kind: "share", value: share };
}

function payload(stored: StoredCheck): Outcome<Estimate> {
  const total = helperToleranced(stored, helperInputs.payloadTotal);
  const share = payloadShares.find(({ id }) => id === chosen(stored, "payload.share"));
  if (!total) return needs(messages.typeWholeLoad);
  if (!share) return needs(messages.chooseHowMuchOf);
  return scaled(
    total,
    { value: share.value / 2, tol: 0.1 * (share.value / 2) },
    messages.halfOfOfLoad({
      percent: percent(share.value),
      total: { kind: "mass", value: total.value },
    }),
  );
}

function payloadOfHitch(stored: StoredCheck): Outcome<Estimate> {
  const tongue = helperToleranced(stored, helperInputs.tongue);
  const overhang = helperToleranced(stored, helperInputs.overhang);
  const wheelbase = helperToleranced(stored, helperInputs.wheelbase);
  if (!tongue) return needs(messages.typeWeightOnHitch);
  if (!overhang) return needs(messages.typeHowFarHitch);
  if (!wheelbase) return needs(messages.typeWheelbase);
  return hitchLoad({ tongue, overhang, wheelbase }, stored.record.axle ?? "rear");
}

function payloadToRating(stored: StoredCheck): Outcome<Estimate> {
  const rating = helperToleranced(stored, helperInputs.axleRating);
  const mass = cornerMass(stored);
  if (!rating) return needs(messages.typeAxlesRatingFrom);
  if (!mass) return needs(messages.thisNeedsWeightOn);
  return upToRating(rating, mass);
}

function unsprung(stored: StoredCheck): Outcome<Estimate> {
  const mass = cornerMass(stored);
  if (!mass) return needs(messages.thisNeedsWeightOn);
  const share = unsprungShares[hasBeamAxle(stored) ? "axle" : "independent"];
  return scaled(mass, share, messages.ofWeightOnWheel({ percent: percent(share.value) }));
}

function tyreRate(stored: StoredCheck): Outcome<Estimate> {
  const tyre = tyreRates.find(({ id }) => id === chosen(stored, "tyre.sort"));
  if (!tyre) return needs(messages.chooseSortOfTire);
  return succeed({
    value: tyre.value,
    tol: tyre.tol,
    how: messages.usualForCommonPractice({ words: tyre.words }),
  });
}

function rateFromSag(stored: StoredCheck): Outcome<Estimate> {
  const load = helperToleranced(stored, helperInputs.sagLoad);
  const sag = helperToleranced(stored, helperInputs.sag);
  if (!load) return needs(messages.typeLoadThatWas);
  if (!sag) return needs(messages.typeHowFarFender);
  return wheelRateFromSag(load, sag, null);
}

function rateFromCoil(stored: StoredCheck): Outcome<Estimate> {
  const wire = helperToleranced(stored, helperInputs.coilWire);
  const outside = helperToleranced(stored, helperInputs.coilOutside);
  const activeCoils = helperToleranced(stored, helperInputs.coilActive);
  const ratio = helperToleranced(stored, helperInputs.coilRatio);
  if (!wire) return needs(messages.typeWiresThickness);
  if (!outside) return needs(messages.typeCoilsOutsideDiameter);
  if (!activeCoils) return needs(messages.countCoilsThatAre);
  const meanCoil = {
    value: outside.value - wire.value,
    tol: Math.hypot(outside.tol, wire.tol),
  };
  const coil = { wire, meanCoil, activeCoils, shearModulus: steelShearModulus };
  if (ratio) return wheelRateFromCoil(coil, ratio);
  const alone = coilSpringRate(coil);
  return alone.ok ? needs(messages.typeSpringsLeverRatio) : alone;
}

function damping(stored: StoredCheck): Outcome<{ bump: Estimate; rebound: Estimate }> {
  const share = dampingShares.find(({ id }) => id === chosen(stored, "damping.share"));
  const { ride } = stored.record;
  const mass = cornerMass(stored);
  if (!share) return needs(messages.chooseHowShocksFeel);
  if (ride?.wheelRateNPerMm === undefined) {
    return needs(messages.thisNeedsRideSprings);
  }
  if (!mass) return needs(messages.thisNeedsWeightOn);
  const unsprungMass = ride.unsprungMassKg ?? 0;
  const sprung = {
    value: mass.value - unsprungMass,
    tol: Math.hypot(mass.tol, ride.tolerances?.unsprungMassKg ?? 0),
  };
  const rate = { value: ride.wheelRateNPerMm, tol: ride.tolerances?.wheelRateNPerMm ?? 0 };
  return dampingFromShare(share, rate, sprung, usualReboundPerBump);
}

/** What each estimated quantity comes to, or what it still needs. Null: it is not estimated. */
export function estimateOf(
  stored: StoredCheck,
  name: RideQuantity,
  pack: Pack,
): Outcome<Estimate> | null {
  const way = rideWay(stored, name === "damperReboundNsPerMm" ? "damperBumpNsPerMm" : name);
  if (way === "pack") {
    const inPack = packRide(stored, name, pack);
    return inPack ? succeed(inPack) : needs(messages.partsLibraryHasNo);
  }
  switch (name) {
    case "payloadPerCornerKg":
      if (way === "hitch") return payloadOfHitch(stored);
      if (way === "rating") return payloadToRating(stored);
      return way === "total" ? payload(stored) : null;
    case "unsprungMassKg":
      return way === "share" ? unsprung(stored) : null;
    case "tyreRateNPerMm":
      return way === "usual" ? tyreRate(stored) : null;
    case "wheelRateNPerMm":
      if (way === "sag") return rateFromSag(stored);
      return way === "coil" ? rateFromCoil(stored) : null;
    case "damperBumpNsPerMm":
    case "damperReboundNsPerMm": {
      if (way !== "share") return null;
      const both = damping(stored);
      if (!both.ok) return both;
      return succeed(name === "damperBumpNsPerMm" ? both.value.bump : both.value.rebound);
    }
  }
}

const estimateOrder: readonly RideQuantity[] = [
  "payloadPerCornerKg",
  "unsprungMassKg",
  "tyreRateNPerMm",
  "wheelRateNPerMm",
  "damperBumpNsPerMm",
  "damperReboundNsPerMm",
];

/** The weight on each wheel that has no scale reading of its own: half of the axle's, or the pack's. */
function withCornerMasses(stored: StoredCheck, pack: Pack): StoredCheck {
  const axle = helperToleranced(stored, helperInputs.axleMass);
  const half = axle && {
    value: axle.value / 2,
    tol: Math.hypot(axle.tol / 2, halvingTolerance * (axle.value / 2)),
  };
  const reference = packCornerMass(stored, pack);
  const usual = reference && { value: mean(reference.values), tol: reference.tol };
  return sidesOf(stored).reduce((current: StoredCheck, side: Side) => {
    const id = `${side}.cornerMassKg` as const;
    const way = chosen(current, `${id}.way`);
    if (way !== "axle" && way !== "pack") return current;
    const mass = way === "axle" ? half : usual;
    const entry: Entry = {
      texts: [mass ? entryText(mass.value, "mass", "kg") : ""],
      unit: "kg",
      tol: mass ? entryText(round(mass.tol), "mass", "kg") : "",
    };
    const old = current.entries[id];
    const same = old && old.texts[0] === entry.texts[0] && old.tol === entry.tol;
    if (same) return current;
    const source = way === "axle" ? "estimated" : "pack";
    return changeRecord(setEntry(current, id, entry), (record) =>
      withCorner(record, side, (corner) =>
        corner.cornerMassKg === undefined
          ? corner
          : { ...corner, cornerMassKg: { ...corner.cornerMassKg, source } },
      ),
    );
  }, stored);
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}

/**
 * The check with every estimate made anew from what it is made of, so that none is left over from
 * readings that have changed since. The very same check where nothing changes. `say` writes how each was
 * come by, for the record.
 */
export function withEstimates(
  stored: StoredCheck,
  unit: LengthUnit,
  pack: Pack,
  say: Say,
): StoredCheck {
  return estimateOrder.reduce(
    (current, name) => {
      const outcome = estimateOf(current, name, pack);
      if (outcome === null) return current;
      const { ride } = current.record;
      if (!outcome.ok) return ride?.[name] === undefined ? current : withoutRide(current, name);
      const { value, tol } = outcome.value;
      const how = say(outcome.value.how);
      const same =
        ride?.[name] === value && ride.tolerances?.[name] === tol && ride.estimated?.[name] === how;
      return same ? current : setEstimate(current, name, { value, tolerance: tol, how }, unit);
    },
    withCornerMasses(stored, pack),
  );
}
