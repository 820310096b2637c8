import type { ArmRole } from "../../physics/fitment.ts";
import { layoutRegistry, type StopCarrier } from "../../physics/readings/index.ts";
import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { withField } from "../entry/entryPath.ts";
import { chosen, withChoice } from "./choice.ts";

/** What meets what: a round contact, a flat pad that turns with the arm, a stop that does. */
export type Meeting = "round" | StopCarrier;

export function hasArm(stored: StoredCheck): boolean {
  const kind = stored.record.layout?.kind;
  return kind !== undefined && layoutRegistry[kind].onArm;
}

/** Does one part carry both wheels? */
export function hasBeamAxle(stored: StoredCheck): boolean {
  const kind = stored.record.layout?.kind;
  return kind !== undefined && layoutRegistry[kind].joinsWheels;
}

/** Which arm it is; "unsaid": looked at, and can't be told. */
export function armRoleChoice(stored: StoredCheck): ArmRole | "unsaid" | null {
  const { layout } = stored.record;
  if (layout?.armRole !== undefined) return layout.armRole;
  return chosen(stored, "layout.armRole") === "unsaid" ? "unsaid" : null;
}

export function chooseArmRole(stored: StoredCheck, role: ArmRole | "unsaid"): StoredCheck {
  const said = withChoice(stored, "layout.armRole", role === "unsaid" ? "unsaid" : null);
  return changeRecord(said, (record) => ({
    ...record,
    layout: withField(record.layout ?? {}, "armRole", role === "unsaid" ? undefined : role),
  }));
}

export function meetingChoice(stored: StoredCheck): Meeting | null {
  const { layout } = stored.record;
  if (layout?.stopOn !== undefined) return layout.stopOn;
  return chosen(stored, "layout.stopOn") === "round" ? "round" : null;
}

export function chooseMeeting(stored: StoredCheck, meeting: Meeting): StoredCheck {
  const said = withChoice(stored, "layout.stopOn", meeting === "round" ? "round" : null);
  return changeRecord(said, (record) => ({
    ...record,
    layout: withField(record.layout ?? {}, "stopOn", meeting === "round" ? undefined : meeting),
  }));
}

/**
 * Is it said how the stop sits? A check of a file, with its readings there, need not say it again: its
 * contact is then round, and its arm's role not said.
 */
export function isLayoutSaid(stored: StoredCheck): boolean {
  const { layout } = stored.record;
  if (layout?.kind === undefined) return false;
  if (!hasArm(stored) || layout.readings?.pivotToOuter !== undefined) return true;
  const asksMeeting = layoutRegistry[layout.kind].saysStopOn;
  return armRoleChoice(stored) !== null && (!asksMeeting || meetingChoice(stored) !== null);
}
