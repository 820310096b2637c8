import { describe, expect, it } from "vitest";
import type { Corner, Fitment, Ride, RideQuantity } from "../../../src/physics/fitment.ts";
import { rideQuantities } from "../../../src/physics/readings/rideReadings.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { SharedDraws } from "../../../src/physics/uncertainty/sharedDraws.ts";
import {
  type RoadCornerWithCurve,
  rideInDoubt,
  WantedTravelModel,
  wantedTravels,
} from "../../../src/physics/uncertainty/wantedTravel.ts";
import { exact, ride, uprightStrut } from "../staticFitments.ts";
import { aboveRest } from "./aboveRest.ts";
import { preparedCorner } from "./preparedCorner.ts";

const rules = rulesOf("daily");
const gravity = 9.80665;
const placeOf = (name: RideQuantity) => rideQuantities.indexOf(name);

const corner: RoadCornerWithCurve = preparedCorner(uprightStrut({ gap: exact(45) })).road.corner;

describe("free travel wanted", () => {
  it("unladen is that of the road, by tyre, mass and the mean of both dampings", () => {
    const model = new WantedTravelModel(corner, ride, rules);
    expect(model.unladen()).toBeCloseTo(aboveRest(450, 220, (1.8 + 3.6) / 2), 10);
    model.set(placeOf("damperBumpNsPerMm"), 2.2);
    model.set(placeOf("tyreRateNPerMm"), 190);
    expect(model.unladen()).toBeCloseTo(aboveRest(450, 190, (2.2 + 3.6) / 2), 10);
  });

  it("laden is that of the heavier wheel and what it sinks on its spring", () => {
    const model = new WantedTravelModel(corner, ride, rules);
    expect(model.laden()).toBeCloseTo((20 * gravity) / 26 + aboveRest(470, 220, 2.7), 10);
    model.set(placeOf("payloadPerCornerKg"), 0);
    expect(model.laden()).toBe(model.unladen());
  });

  it("allows a progressive stop ten times the contacts", () => {
    const progressive = new WantedTravelModel({ ...corner, progressive: true }, ride, rules);
    expect(progressive.unladen()).toBeCloseTo(aboveRest(450, 220, 2.7, 20), 10);
  });

  it.each<[RideQuantity, number]>([
    ["tyreRateNPerMm", 0],
    ["tyreRateNPerMm", -1],
    ["damperBumpNsPerMm", -3.6],
    ["damperReboundNsPerMm", -4],
    ["tyreRateNPerMm", Number.NaN],
  ])("is no number with %s of %d", (name, value) => {
    const model = new WantedTravelModel(corner, ride, rules);
    model.set(placeOf(name), value);
    expect(model.unladen()).toBeNaN();
    expect(model.laden()).toBeNaN();
  });

  it("is no number of a wheel without mass", () => {
    for (const cornerMassKg of [0, -450]) {
      expect(new WantedTravelModel({ ...corner, cornerMassKg }, ride, rules).unladen()).toBeNaN();
    }
  });

  it("is no number laden without a spring, though a stop might hold the wheel", () => {
    const heavy = { ...ride, payloadPerCornerKg: 100 };
    for (const wheelRateNPerMm of [0, -1, Number.NaN]) {
      const model = new WantedTravelModel(corner, { ...heavy, wheelRateNPerMm }, rules);
      expect(model.laden()).toBeNaN();
    }
  });
});

function onlyCorner({ corners: [corner] }: Fitment): Corner {
  if (corner === undefined) throw new Error("no corner");
  return corner;
}

describe("ride values in doubt", () => {
  const estimated = { how: "estimate", forceShare: 0.25 };
  const fitmentWith = (values: Ride, stop: Partial<Fitment["stop"]> = {}) => {
    const plain = uprightStrut({ gap: exact(45), fitment: { ride: values } });
    return { ...plain, stop: { ...plain.stop, ...stop } };
  };

  it("are those with a ± above 0, each with its place; the stop's forces last", () => {
    const tolerances = {
      unsprungMassKg: 5,
      wheelRateNPerMm: 4,
      tyreRateNPerMm: 0,
      payloadPerCornerKg: 10,
    };
    const { gap: _, ...side } = onlyCorner(fitmentWith(ride));
    const pressed = { ...side, pressedHeight: exact(50) };
    const fitment = { ...fitmentWith({ ...ride, tolerances }, { estimated }), corners: [pressed] };
    expect(rideInDoubt(fitment)).toEqual([
      { id: "ride.unsprungMassKg", place: 0, mean: 45, halfWidth: 5, standardError: 0 },
      { id: "ride.wheelRateNPerMm", place: 1, mean: 26, halfWidth: 4, standardError: 0 },
      { id: "ride.payloadPerCornerKg", place: 5, mean: 20, halfWidth: 10, standardError: 0 },
      { id: "stop.curve", place: 6, mean: 1, halfWidth: 0.25, standardError: 0 },
    ]);
  });

  it("are none whose value is not known", () => {
    const { wheelRateNPerMm: _, ...unsprung } = ride;
    expect(rideInDoubt(fitmentWith({ ...unsprung, tolerances: { wheelRateNPerMm: 4 } }))).toEqual(
      [],
    );
  });

  it("are none of a stop made to carry, nor its forces where its ± is 0", () => {
    const tolerances = { wheelRateNPerMm: 4 };
    expect(rideInDoubt(fitmentWith({ ...ride, tolerances }, { duty: "carry", estimated }))).toEqual(
      [],
    );
    const sure = { estimated: { ...estimated, forceShare: 0 } };
    expect(rideInDoubt(fitmentWith(ride, sure))).toEqual([]);
  });

  const draws = new SharedDraws(10_000, 2);
  const travelsOf = (values: Ride) => {
    const fitment = fitmentWith(values);
    const { road } = preparedCorner(fitment);
    return {
      travels: wantedTravels(fitment, road.corner, road.travel, rules, draws),
      road: road.travel,
    };
  };

  it("make the travel wanted one of each draw", () => {
    const tolerances = { tyreRateNPerMm: 30, payloadPerCornerKg: 15 };
    const values = { ...ride, tolerances };
    const { travels } = travelsOf(values);
    const [tyre, payload] = rideInDoubt(fitmentWith(values)).map((quantity) => draws.of(quantity));
    const { laden, unladen } = travels;
    if (typeof laden !== "function" || typeof unladen !== "function") throw new Error("not drawn");
    for (const draw of [0, 1, 77, 9999]) {
      const tyreRate = tyre?.at(draw) ?? Number.NaN;
      const load = payload?.at(draw) ?? Number.NaN;
      expect(unladen(draw)).toBeCloseTo(aboveRest(450, tyreRate, 2.7), 10);
      expect(laden(draw)).toBeCloseTo(
        (load * gravity) / 26 + aboveRest(450 + load, tyreRate, 2.7),
        10,
      );
    }
  });

  it("leave it one number where there are none", () => {
    const { travels, road } = travelsOf(ride);
    expect(travels).toEqual({
      laden: road.freeTravelNeededMm,
      unladen: road.freeTravelNeededUnladenMm,
    });
    expect(travels.laden).toBeGreaterThan(Number(travels.unladen));
  });

  it("leave it unknown where it is so at the means", () => {
    const tolerances = { tyreRateNPerMm: 30 };
    const { payloadPerCornerKg: _, ...unladen } = ride;
    expect(travelsOf({ ...unladen, tolerances }).travels).toEqual({
      laden: null,
      unladen: expect.any(Function),
    });
    expect(travelsOf({ ...ride, tyreRateNPerMm: 0, tolerances }).travels).toEqual({
      laden: null,
      unladen: null,
    });
  });
});
