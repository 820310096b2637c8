import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { RideQuantity } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { rideQuantities } from "../../../src/physics/readings/rideReadings.ts";
import { roadTravel } from "../../../src/physics/road/roadTravel.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import {
  type RoadCornerWithCurve,
  WantedTravelModel,
} from "../../../src/physics/uncertainty/wantedTravel.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const rides = fc.record({
  unsprungMassKg: number(20, 90),
  wheelRateNPerMm: number(8, 120),
  tyreRateNPerMm: number(100, 400),
  damperBumpNsPerMm: number(0.3, 6),
  damperReboundNsPerMm: number(0.3, 9),
  payloadPerCornerKg: number(0, 500),
});

describe("free travel wanted, as the draws take it", () => {
  it("is what the road figures give, whatever the stop carries", () => {
    let tried = 0;
    let carrying = 0;
    fc.assert(
      fc.property(
        fc.constantFrom("arm-fits", "damper-shaft", "axle-towing-early" as const),
        rides,
        number(0, 60),
        number(0, 3000),
        fc.constantFrom("daily", "towing", "offroad" as const),
        (name, values, gapMm, heldAtRideN, use) => {
          tried++;
          const fitment = demoFitment(name);
          const kinematics = unwrapped(kinematicsOf(fitment.layout));
          const corner: RoadCornerWithCurve = {
            kinematics,
            stop: unwrapped(stopCurve(fitment.stop)),
            gapMm,
            heldAtRideN,
            travelToContactMm: unwrapped(kinematics.wheelTravel(gapMm)),
            progressive: false,
            cornerMassKg: 500,
            wheelRateNPerMm: values.wheelRateNPerMm,
            tyreRateNPerMm: values.tyreRateNPerMm,
            damperBumpNsPerMm: values.damperBumpNsPerMm,
            damperReboundNsPerMm: values.damperReboundNsPerMm,
            payloadKg: values.payloadPerCornerKg,
          };
          const rules = rulesOf(use);
          const road = roadTravel(corner, rules);
          // Set value by value on a model made for another ride, as the draws do.
          const model = new WantedTravelModel(corner, {}, rules);
          for (const [quantity, value] of Object.entries(values)) {
            model.set(rideQuantities.indexOf(quantity as RideQuantity), value);
          }
          if (road.freeTravelNeededMm === null || road.freeTravelNeededUnladenMm === null) {
            expect(road.faults.length).toBeGreaterThan(0);
            return;
          }
          if (Number(road.loadedSagMm) > corner.travelToContactMm) carrying++;
          expect(Math.abs(model.laden() - road.freeTravelNeededMm)).toBeLessThan(1e-7);
          expect(Math.abs(model.unladen() - Number(road.freeTravelNeededUnladenMm))).toBeLessThan(
            1e-9,
          );
        },
      ),
      { numRuns: 500 },
    );
    expect(carrying / tried).toBeGreaterThan(0.13);
  });

  it("is nothing that could pass for a number where a value is not above 0", () => {
    const fitment = demoFitment("arm-fits");
    const model = new WantedTravelModel(
      {
        heldAtRideN: 0,
        progressive: false,
        cornerMassKg: 500,
      },
      fitment.ride ?? {},
      rulesOf("daily"),
    );
    expect(model.laden()).toBeGreaterThan(0);
    model.set(rideQuantities.indexOf("damperBumpNsPerMm"), -9);
    expect(model.unladen()).toBeNaN();
  });
});
