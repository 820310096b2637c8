import type { JobDialogProps } from "../job/JobDialog.tsx";
import { later } from "../parts/later.tsx";
import type { BringYourChecksProps } from "../saved/BringYourChecks.tsx";
import type { SavedReminderProps } from "../saved/SavedReminder.tsx";
import type { ContinueLineProps } from "./ContinueLine.tsx";
import type { DeletedChecksProps } from "./DeletedChecks.tsx";
import type { KeepDialogProps } from "./KeepDialog.tsx";
import type { RenameDialogProps } from "./RenameDialog.tsx";
import type { SetAsideRowProps } from "./SetAsideRow.tsx";
import type { UndoBarProps } from "./UndoBar.tsx";

/* What of the list is fetched once it is wanted. */

export const KeepDialog = later<KeepDialogProps>(
  async () => (await import("./KeepDialog.tsx")).KeepDialog,
  { quiet: true },
);

export const RenameDialog = later<RenameDialogProps>(
  async () => (await import("./RenameDialog.tsx")).RenameDialog,
  { quiet: true },
);

export const JobDialog = later<JobDialogProps>(
  async () => (await import("../job/JobDialog.tsx")).JobDialog,
  { quiet: true },
);

export const DeletedChecks = later<DeletedChecksProps>(
  async () => (await import("./DeletedChecks.tsx")).DeletedChecks,
  { quiet: true },
);

export const SetAsideRow = later<SetAsideRowProps>(
  async () => (await import("./SetAsideRow.tsx")).SetAsideRow,
);

export const BringYourChecks = later<BringYourChecksProps>(
  async () => (await import("../saved/BringYourChecks.tsx")).BringYourChecks,
  { quiet: true },
);

export const SavedReminder = later<SavedReminderProps>(
  async () => (await import("../saved/SavedReminder.tsx")).SavedReminder,
  { quiet: true },
);

export const ContinueLine = later<ContinueLineProps>(
  async () => (await import("./ContinueLine.tsx")).ContinueLine,
  { quiet: true },
);

export const UndoBar = later<UndoBarProps>(async () => (await import("./UndoBar.tsx")).UndoBar, {
  quiet: true,
});
