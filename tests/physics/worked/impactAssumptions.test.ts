import { expect, it } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import type { Stop } from "../../../src/physics/fitment.ts";
import { cornerContext, impactAssumptions } from "../../../src/physics/worked/index.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { said } from "../../../src/saying/texts.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const damping = [[10, 0.2, 0.2]] as const;
const branches = [{ tauS: 0.05, share: 0.1 }];

it.each<[string, Partial<Stop>, string]>([
  ["one part", { restLoss: 0.05 }, "Of the stop from its tests at speed: rest loss h."],
  [
    "every part",
    { damping, restLoss: 0.05, branches },
    "Of the stop from its tests at speed: damping c, rest loss h, fading parts q.",
  ],
])("a stop's losses are named in a list, here %s", (_, loss, words) => {
  const base = fitmentOf(demoRecord("arm-fits"));
  const fitment = { ...base, stop: { ...base.stop, testedAtSpeed: true, ...loss } };
  const outcome = assessFitment(fitment, { samples: 1000 });
  const corner = outcome.ok ? outcome.value.corners[0] : undefined;
  const context = corner && cornerContext(fitment, corner);
  expect(context && impactAssumptions(context).map(said)).toContain(words);
});
