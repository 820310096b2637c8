// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const bringBackWhatWas: string = "Bring back what was cleared";
export const clear: string = "Clear";
export const phonesKeyboard: string = "The phone's keyboard";
export const nextField: string = "Next field";
export const doneHideKeypad: string = "Done, hide the keypad";
export const next: string = "Next";
export const field: string = "field";
export const done: string = "Done";
export const keysFor = (d: { label: string | number }): string => "Keys for " + d.label;
export const plusOrMinus: string = "Plus or minus";
export const point: string = "Point";
export const takeBackLast: string = "Take back the last";
