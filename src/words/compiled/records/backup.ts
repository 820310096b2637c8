/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../../message.ts";
export const lineOfBackup = (values: { number: MessageValue }): Message => ({ code: "records/backup.lineOfBackup", values });
export const backupWasMadeBy = (values: { version: MessageValue }): Message => ({ code: "records/backup.backupWasMadeBy", values });
export const lineOfBackupCant = (values: { number: MessageValue }): Message => ({ code: "records/backup.lineOfBackupCant", values });
