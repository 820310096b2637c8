// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const threadGoesWithStud: string = "a thread goes with stud, bolt or two bolts only.";
export const boreGoesWithRod: string = "a bore goes with rod or cup only.";
export const isNoneOf = (d: { text: string | number; tableWords: string | number }): string => "“" + d.text + "” is none of " + d.tableWords + ".";
export const thisTableHasOne: string = "this table has one row only.";
export const layoutOfKindHas = (d: { kind: string | number }): string => "a layout of kind " + d.kind + " has no such reading.";
export const nothingIsEntered: string = "nothing is entered.";
export const itLiesBeforeFirst: string = "it lies before the first year.";
export const partIsNotAmong = (d: { text: string | number }): string => "the part “" + d.text + "” is not among the stops.";
export const dampingNeedsBothDirections: string = "damping needs both directions, in and out.";
export const standsInRowAlready = (d: { partNumber: string | number; line: string | number }): string => "“" + d.partNumber + "” stands in row " + d.line + " already. Give one of them another number or revision.";
export const thereAreRowsOf = (d: { curveFile: string | number; part: string | number; noRevision: boolean; revision: string | number | undefined; file: string | number }): string => "" + d.curveFile + ": there are rows of “" + d.part + "”" + select(d.noRevision, { true: "", other: ", revision " + d.revision }) + ", but " + d.file + " has no such part.";
export const thereAreNoRows = (d: { partNumber: string | number; curveFile: string | number }): string => "there are no rows of “" + d.partNumber + "” in " + d.curveFile + ".";
export const hasNoRowsBelow = (d: { file: string | number }): string => "" + d.file + " has no rows below its headings.";
export const headingIsNotKnown = (d: { file: string | number; isTolerance: string | number; name: string | number }): string => "" + d.file + ": the heading “" + d.isTolerance + d.name + "” is not known. See the template for the headings there are.";
export const row = (d: { file: string | number; line: string | number; column: string | number; sentence: string | number }): string => "" + d.file + ", row " + d.line + ", “" + d.column + "”: " + d.sentence;
export const row2 = (d: { file: string | number; line: string | number; sentence: string | number }): string => "" + d.file + ", row " + d.line + ": " + d.sentence;
export const columnIsMissing: string = "the column is missing.";
export const textIsLongerThan: string = "the text is longer than 200 characters.";
export const isNoneOf2 = (d: { text: string | number; values: string | number }): string => "“" + d.text + "” is none of " + d.values + ".";
export const isNoPercentageBelow = (d: { text: string | number }): string => "“" + d.text + "” is no percentage below 100.";
export const isNoYearSuch = (d: { text: string | number }): string => "“" + d.text + "” is no year such as 2021.";
export const or: string = " or ";
export const unitOfHeadingIs = (d: { heading: string | number; those: string | number }): string => "the unit “" + d.heading + "” of the heading is not " + d.those + ".";
