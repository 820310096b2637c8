// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const lineOfBackup = (d: { number: string | number }): string => "Line " + d.number + " of the backup";
export const backupWasMadeBy = (d: { version: string | number }): string => "The backup was made by a newer version of Stopfit (backup version " + d.version + "). Update Stopfit, then restore it again.";
export const lineOfBackupCant = (d: { number: string | number }): string => "Line " + d.number + " of the backup can't be read. What stands before and after it can be restored.";
