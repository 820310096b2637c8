import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { Preferences } from "../preferences.ts";
import type { Step } from "./steps.ts";

export type Change = (update: (stored: StoredCheck) => StoredCheck) => void;

export interface StepProps {
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly step: Step;
  readonly all: readonly Step[];
  readonly preferences: Preferences;
  /** To another step of this check. */
  readonly go: (step: string) => void;
  /** To the next step, as the main button does. */
  readonly next: () => void;
  /** The name of the step that waits for this one. */
  readonly waiting?: string | undefined;
}
