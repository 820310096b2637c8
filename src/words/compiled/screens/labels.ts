// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { en } from "@messageformat/runtime/lib/cardinals";
import { plural } from "@messageformat/runtime";
export const toPartsLibrary: string = "To the parts library";
export const labels: string = "Labels";
export const printLabels: string = "Print labels";
export const printLabel = (d: { count: string | number; count2: string | number }): string => "Print " + d.count + " label" + d.count2;
export const labelsForParts: string = "Labels for parts";
export const putOneOnEach: string = "Put one on each bag. Its code chooses the stop in a check, in the short question and at \"Fitted\", with revision and batch.";
export const stopHas = (d: { without: number }): string => "" + d.without + " " + plural(d.without, 0, en, { one: "stop has", other: "stops have" }) + " no part number, so no label.";
export const batch: string = "Batch";
export const onEveryLabelOf: string = "On every label of this sheet. Empty: none.";
export const labelsOfEachPart: string = "Labels per part";
export const wholeNumberFrom1 = (d: { mostCopies: string | number }): string => "A whole number from 1 to " + d.mostCopies + ".";
export const labelsAreAskedFor = (d: { asked: string | number; mostLabels: string | number }): string => "" + d.asked + " labels are asked for, and " + d.mostLabels + " are printed at a time. Print the rest after these, with fewer parts ticked.";
export const search: string = "Search";
export const partNumberName: string = "Part number, name.";
export const tickAllThatAre: string = "Tick all that are offered";
export const tickNone: string = "Tick none";
export const notOfferedAnyMore: string = ", not offered any more";
export const sheetOfLabels: string = "Sheet of labels";
export const partNumberIsToo = (d: { partNumber: string | number }): string => "The part number “" + d.partNumber + "” is too long for a label. Shorten it in the library.";
export const codeOf = (d: { part: string | number }): string => "Code of " + d.part;
export const revision = (d: { revision: string | number }): string => "Revision " + d.revision;
export const batch2 = (d: { batch: string | number }): string => "Batch " + d.batch;
export const high = (d: { meanOf: string | number }): string => "" + d.meanOf + " high";
