import type { FaultNoticeProps } from "../parts/FaultNotice.tsx";
import { later } from "../parts/later.tsx";
import type { BringYourChecksProps } from "../saved/BringYourChecks.tsx";
import type { SavedReminderProps } from "../saved/SavedReminder.tsx";
import type { ContinueLineProps } from "./ContinueLine.tsx";
import type { DeletedChecksProps } from "./DeletedChecks.tsx";
import type { KeepDialogProps } from "./KeepDialog.tsx";
import type { NotSavedHereProps } from "./NotSavedHere.tsx";
import type { RowDeedProps } from "./RowDeed.tsx";
import type { SetAsideRowProps } from "./SetAsideRow.tsx";

/* What of the list is fetched once it is wanted. */

export const KeepDialog = later<KeepDialogProps>(
  async () => (await import("./KeepDialog.tsx")).KeepDialog,
  { quiet: true },
);

/** Beside the sentences of all messages, which the list itself does without. */
export const FaultNotice = later<FaultNoticeProps>(
  async () => (await import("../parts/FaultNotice.tsx")).FaultNotice,
);

export const NotSavedHere = later<NotSavedHereProps>(
  async () => (await import("./NotSavedHere.tsx")).NotSavedHere,
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

export const RowDeed = later<RowDeedProps>(async () => (await import("./RowDeed.tsx")).RowDeed, {
  quiet: true,
});
