// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const stopfit: string = "Stopfit";
export const allChecks: string = "All checks";
export const thisScreenCantBe: string = "This screen can't be shown";
export const somethingInStopfitWent: string = "Something in Stopfit went wrong here. What you typed before is saved on this phone. Go to all checks and open the check again.";
export const buttonButtonButtonWide = (d: { look: string | number; isWide: boolean }): string => "button button-" + d.look + select(d.isWide, { true: " button-wide", other: "" });
export const fieldFieldBigField: string = "field field-big field-long";
export const fieldFieldBig: string = "field field-big";
export const m73H: string = "M7 3h7l4 4v14H7zM14 3v4h4";
export const m99H: string = "M9 9h11v11H9zM5 15H4V4h11v1";
export const m420L: string = "M4 20l1-4L16 5l3 3L8 19zM14 7l3 3";
export const m95H: string = "M9 5h12v14H9l-6-7zM12 9.5l5 5M17 9.5l-5 5";
export const m36H: string = "M3 6h18v12H3zM7 10h.01M12 10h.01M17 10h.01M8 14.5h8";
export const m38H: string = "M3 8h4l2-3h6l2 3h4v11H3zM12 10a3.5 3.5 0 100 7 3.5 3.5 0 000-7";
export const m38H18: string = "M3 8h18v8H3zM7 8v3M11 8v4M15 8v3M19 8v4";
export const m45H: string = "M4 5h16v14H4zM4 12h16M10 8.5h4M10 15.5h4";
export const moreFor = (d: { name: string | number }): string => "More for " + d.name;
export const warning: string = "Warning:";
export const wrong: string = "Wrong:";
export const notSure: string = "Not sure:";
export const oneMoment: string = "One moment …";
export const printWord: string = "Print";
export const stopfit2 = (d: { what: string | number }): string => "Stopfit " + d.what;
export const save = (d: { what: string | number }): string => "Save the " + d.what;
export const thisPartOfStopfit: string = "This part of Stopfit could not be loaded. Find a signal, then try again.";
export const tryAgain: string = "Try again";
