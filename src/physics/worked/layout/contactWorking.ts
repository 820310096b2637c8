import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import { FlatContact, flatFormulas } from "../../motion/contact/flatContact.ts";
import { RoundContact, roundFormulas } from "../../motion/contact/roundContact.ts";
import {
  lineFormula,
  lineSlopeFormula,
  type StopContact,
} from "../../motion/contact/stopContact.ts";
import { TriangleContact, triangleFormulas } from "../../motion/contact/triangleContact.ts";
import { Turn } from "../../motion/turn.ts";
import type { Quantity, Words } from "../../sentence.ts";
import { type FormulaStep, step, type Terms } from "../step.ts";
import { degrees, degreesOf, inDegrees, mm, turnBy, type Working } from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";

/** How the stop closes as its arm turns by α, and back; s in mm, α in degrees. */
export interface ContactWorking {
  /** Steps that do not depend on how far it has turned. */
  readonly before: readonly FormulaStep[];
  /** ds/dα at ride, mm per radian. */
  slope(): Working;
  turn(closing: number, letter: string): Working;
  closing(turn: number): Working;
}

interface Letters {
  readonly [letter: string]: Quantity;
}

/** What the stop of an arm meets: round, a flat pad that turns, or a flat pad on the frame; or a damper's triangle. */
export function contactWorking(
  contact: StopContact,
  terms: MeasuredTerms,
  armAngle: number,
): ContactWorking | undefined {
  if (contact instanceof TriangleContact) {
    return triangleWorking(contact, {
      a: mm(terms.length("pivotToMount", "a", messages.pivotLineToLower)),
      φ0: degrees(terms.angle("mountLineAngle", "φ0", messages.lineToLowerMount, armAngle)),
      L0: mm(terms.length("damperLength", "L0", messages.shockEyeToEye)),
      β: degrees(terms.angle("stopLean", "β", messages.leanOfShockTop)),
    });
  }
  const a = mm(terms.length("pivotToStop", "a", messages.pivotLineToContact));
  const φ0 = degrees(terms.angle("stopLineAngle", "φ0", messages.lineToContactPatch, armAngle));
  const β = degrees(terms.angle("stopLean", "β", messages.leanOfStopTop));
  if (contact instanceof RoundContact) {
    return alongLine(contact, { a, φ0, β }, contact.line, roundFormulas, () => []);
  }
  if (!(contact instanceof FlatContact)) return undefined;
  const formulas = flatFormulas[contact.stopOn];
  const g0 =
    contact.stopOn === "arm" ? { g0: mm(terms.length("gap", "g0", messages.tipOfStopOff)) } : {};
  const given = { a, φ0, β, ...g0 };
  return alongLine(contact, given, contact.line, formulas, (closing, letters) => [
    step(formulas.level, letters, mm(contact.levelFor(closing))),
    step(formulas.across, letters, mm(contact.across)),
  ]);
}

/** Lines of a contact that lies on a line w of the arm; `towards` the turn, A and B are told. */
function alongLine(
  contact: StopContact,
  given: Letters,
  line: number,
  formulas: { readonly turn: Words; readonly closing: Words },
  towards: (closing: number, letters: Terms) => readonly FormulaStep[],
): ContactWorking {
  const w = inDegrees(line);
  const terms = { ...given, w };
  return {
    before: [step(lineFormula, given, w)],
    slope: () => slopeOf(contact, lineSlopeFormula, terms),
    turn(closing, letter) {
      const letters = { ...terms, s: { letter, value: mm(closing) } };
      const places = towards(closing, letters);
      const [A, B] = places.map(({ result }) => result);
      const alpha = turnFor(contact, closing);
      return {
        value: alpha.value,
        steps: [
          ...places,
          step(formulas.turn, { ...letters, ...(A && { A }), ...(B && { B }) }, alpha),
        ],
      };
    },
    closing(turn) {
      contact.close(turnBy(turn));
      const value = contact.closing;
      return {
        value,
        steps: [step(formulas.closing, { ...terms, α: degrees(turn) }, mm(value))],
      };
    },
  };
}

function slopeOf(contact: StopContact, formula: Words, terms: Terms): Working {
  contact.follow(turnBy(0));
  return { value: contact.slope, steps: [step(formula, terms, mm(contact.slope))] };
}

/** α of a closing; no number where it cannot be reached. */
function turnFor(contact: StopContact, closing: number): Quantity {
  const turn = new Turn();
  return degrees(contact.turnFor(closing, turn) ? degreesOf(turn) : Number.NaN);
}

/**
 * A damper's triangle, or that of the strut above its arm; p is how far the strut's axis passes the lower joint.
 */
export function triangleWorking(
  contact: TriangleContact,
  given: Letters & { readonly L0: Quantity; readonly p?: Quantity },
): ContactWorking {
  const isAside = given.p !== undefined && given.p.value !== 0;
  const shape = isAside ? "aside" : "straight";
  const q = mm(contact.top);
  const γ0 = inDegrees(contact.angle);
  const rod = mm(contact.rod);
  const terms = { ...given, q, γ0, L1: rod };
  const named = isAside ? terms : { ...terms, L1: { letter: "L0", value: rod } };
  return {
    before: [
      step(triangleFormulas.top, given, q),
      step(triangleFormulas.angle, terms, γ0),
      ...(isAside ? [step(triangleFormulas.rod, given, rod)] : []),
    ],
    slope: () => slopeOf(contact, triangleFormulas.slope, named),
    turn(closing, letter) {
      const D = mm(contact.distanceFor(closing));
      const alpha = turnFor(contact, closing);
      return {
        value: alpha.value,
        steps: [
          step(triangleFormulas.pressed[shape], { ...terms, s: { letter, value: mm(closing) } }, D),
          step(triangleFormulas.turn, { ...terms, D }, alpha),
        ],
      };
    },
    closing(turn) {
      contact.close(turnBy(turn));
      const value = contact.closing;
      const D = mm(contact.distanceFor(value));
      return {
        value,
        steps: [
          step(triangleFormulas.turned, { ...terms, α: degrees(turn) }, D),
          step(triangleFormulas.closing[shape], { ...terms, D }, mm(value)),
        ],
      };
    },
  };
}
