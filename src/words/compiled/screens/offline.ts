// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const versionOfApp: string = "Version of the app";
export const newVersionIsReady: string = "A new version is ready.";
export const anotherTabTookNew: string = "Another tab took the new version. This page still works as it is.";
export const whatIsNew: string = "What is new";
export const updateNow: string = "Update now";
export const loadItHere: string = "Load it here";
export const later: string = "Later";
export const readyOffline: string = "Ready offline";
export const version = (d: { release: string | number }): string => "· version " + d.release;
export const notReadyOfflineOpen: string = "Not ready offline. Open Stopfit once more where there is a signal.";
export const thisBrowserCantSave: string = "This browser can't save Stopfit for use without a signal.";
export const gettingReadyForUse: string = "Getting ready for use offline …";
