import * as termNames from "../../../words/compiled/physics/terms.ts";
import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import type { TriangleContact } from "../../motion/contact/triangleContact.ts";
import { type StrutPath, strutFormulas } from "../../motion/path/strutPath.ts";
import { step } from "../step.ts";
import { degrees, degreesIn, inDegrees, mm, quantity } from "../workedFigure.ts";
import { type ContactWorking, triangleWorking } from "./contactWorking.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";
import { carrierWorking, type PathWorking, slopeWorking } from "./pathWorking.ts";

/** A strut and the arm below it: its contact, and the wheel that turns with its axis. */
export function strutWorking(
  terms: MeasuredTerms,
  contact: TriangleContact,
  path: StrutPath,
): { readonly contact: ContactWorking; readonly path: PathWorking } {
  const a = mm(terms.length("lowerArmLength", "a", messages.lengthOfLowerArm));
  const φ0 = degrees(terms.angle("lowerArmAngle", "φ0", messages.lowerArmBelowHorizontal));
  const lean = terms.angle("stopLean", "βs", messages.leanOfStrutTop);
  const βs = degrees(lean);
  const L0 = mm(terms.length("jointToTop", "L0", messages.lowerJointToTop));
  const β = degrees(terms.angle("jointToTopLean", "β", messages.leanOfThatLine, lean));
  const p = mm(path.aside);
  const out = terms.length("tyreOffset", "e", messages.lowerJointOutTo);
  const above = terms.length("wheelCentreAbove", "v", messages.wheelCenterAboveLower);
  const given = { a, φ0, L0, β, βs, p };
  const slope = () => {
    const whole = { ...given, e: mm(out), "dδ/dα": quantity("count", 0) };
    const { value } = slopeWorking(path, strutFormulas.slope, whole);
    const stand = path.stand;
    const turning = quantity("count", stand.carrierSlope);
    return {
      value,
      steps: [
        step(
          strutFormulas.carrierSlope,
          { ...given, X: mm(stand.across), W: mm(stand.along) },
          turning,
        ),
        step(strutFormulas.slope, { ...whole, "dδ/dα": turning }, mm(value)),
      ],
    };
  };
  return {
    contact: triangleWorking(contact, given),
    path: carrierWorking(
      path,
      [step(strutFormulas.aside, given, p)],
      slope,
      { out, above },
      (turn) => {
        const stand = path.stand;
        const carrier = inDegrees(path.joined().carrier);
        return {
          lowerRise: stand.jointRise,
          carrier: degreesIn(path.joined().carrier),
          steps: [
            step(strutFormulas.jointRise, { ...given, α: degrees(turn) }, mm(stand.jointRise)),
            step(
              strutFormulas.carrier,
              {
                ...given,
                leanOfTheLineToTheTop: {
                  name: termNames.leanOfTheLineToTheTop,
                  value: messages.atan2({ mm: mm(stand.inward), mm2: mm(stand.up) }),
                },
                D: mm(stand.distance),
              },
              carrier,
            ),
          ],
        };
      },
    ),
  };
}
