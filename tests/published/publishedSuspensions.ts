import type { Layout } from "../../src/physics/fitment.ts";
import { kinematicsOf } from "../../src/physics/kinematics/kinematics.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import geometry from "../vectors/geometry.json" with { type: "json" };
import { type PublishedSource, publishedSource } from "./support/published.ts";

/*
 * Suspensions whose hard points are published, by repository, path and the commit of the file. On each some
 * stops were placed and solved in three dimensions by another program; tests/vectors/geometry.json has the
 * hard points, the readings as a person would take them there, and how far each stop closes at a wheel
 * travel. Compared: the wheel travel that those readings give for the closing at 85 mm.
 */
const sourceOf: Readonly<Record<string, string>> = {
  truck_A_front:
    "projectchrono/chrono, data/vehicle/hmmwv/suspension/HMMWV_DoubleWishboneFront.json, 7e2cd4fd1439a57e642fbd480a51a4ce84c70014",
  sedan_C:
    "projectchrono/chrono, data/vehicle/sedan/suspension/Sedan_DoubleWishbone.json, f13f320c97faaf69c214819475c3d0cdfde2b574",
  generic_G_strut:
    "projectchrono/chrono, data/vehicle/generic/suspension/MacPhersonStrut.json, af4c5861d25e5f303c9d2d77d70844907c009aa5",
  utility_I:
    "projectchrono/chrono, src/chrono_models/vehicle/gator/Gator_SingleWishbone.cpp, e25bfa12cb74cfc187779c422ff2a9f6dc85d3c9",
  axle_L_generic:
    "projectchrono/chrono, data/vehicle/generic/suspension/SolidAxle.json, 3e14d9443c7e5f1e904de91a4052800603e6cf41",
};

export type PublishedStop = (typeof geometry)[number];

export const publishedStops: readonly PublishedStop[] = geometry;

const wheelTravel = 85;

/** How the wheel travels of a planar linkage may differ from three dimensions at 85 mm of travel, mm. */
const tolerances = {
  fourBar: 0.015 * wheelTravel + 0.5,
  instantCentre: 0.02 * wheelTravel + 0.5,
  strutArm: 0.02 * wheelTravel + 0.5,
  underStrut: 0.02 * wheelTravel + 0.5,
  axle: 0.03 * wheelTravel + 0.5,
  carriesWheel: 0.1,
  prior: 5,
};

/** The layout of a stop's readings, without some of them. */
export function publishedLayout(stop: PublishedStop, without: readonly string[] = []): Layout {
  const kept = Object.entries(stop.layout.readings).filter(([name]) => !without.includes(name));
  return { ...stop.layout, readings: Object.fromEntries(kept) } as Layout;
}

interface Way {
  readonly words: string;
  readonly without: readonly string[];
  readonly tolerance: number;
}

function waysOf({ layout }: PublishedStop): readonly Way[] {
  const role = "armRole" in layout ? layout.armRole : undefined;
  const whole = (words: string, tolerance: number): Way => ({ words, without: [], tolerance });
  if (layout.kind === "axle") return [whole("axle", tolerances.axle)];
  if (layout.kind === "strut") return [whole("strut with its arm", tolerances.strutArm)];
  if (role === "carriesWheel") return [whole("arm carries the wheel", tolerances.carriesWheel)];
  if (role === "underStrut") return [whole("arm under a strut", tolerances.underStrut)];
  const alone: Way = {
    words: `${role} arm alone`,
    without: ["otherArmAngle", "otherArmLength"],
    tolerance: tolerances.prior,
  };
  const centre: Way = {
    words: "instant centre",
    without: ["otherArmLength"],
    tolerance: tolerances.instantCentre,
  };
  const both = whole("four-bar", tolerances.fourBar);
  return role === "lower" ? [both, centre, alone] : [both, alone];
}

export const publishedSuspensions: readonly PublishedSource[] = Object.entries(sourceOf).map(
  ([name, source]) =>
    publishedSource(`Published geometry ${name}: ${source}`, "met", (published) => {
      for (const stop of publishedStops.filter((one) => one.geometry === name)) {
        const closing = stop.closingMm[stop.wheelTravelMm.indexOf(wheelTravel)] ?? Number.NaN;
        for (const { words, without, tolerance } of waysOf(stop)) {
          published(
            `${stop.stop}, ${words}: wheel travel at the closing of 85 mm, mm`,
            wheelTravel,
            () =>
              unwrapped(
                unwrapped(kinematicsOf(publishedLayout(stop, without))).wheelTravel(closing),
              ),
            tolerance,
          );
        }
      }
    }),
);
