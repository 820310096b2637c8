// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const pictureOfLabel: string = "Picture of a label";
export const holdLabelSoThat: string = "Hold the label so that its code fills the frame. What the camera sees stays on this device.";
export const closeCamera: string = "Close the camera";
export const usePictureOfLabel: string = "Use a picture of the label";
export const moreSearchToSee = (d: { found: string | number }): string => "" + d.found + " more. Search to see them.";
export const partNumber: string = "Part number";
export const asOnBag: string = "As on the bag.";
export const scanLabel: string = "Scan the label";
export const findPart: string = "Find the part";
export const axle = (d: { label: string | number; axle: string | undefined }): string => "" + d.label + ", " + select(d.axle, { front: "front", other: "rear" }) + " axle";
export const searchVehicles: string = "Search the vehicles";
export const nameYearTrim: string = "Name, year, trim.";
export const ofWord = (d: { label: string | number; found: string | number; platforms: string | number }): string => "" + d.label + " (" + d.found + " of " + d.platforms + ")";
export const howToTellIt = (d: { tellApart: string | number }): string => "How to tell it: " + d.tellApart;
export const noTestSheetNearest = (d: { name: string | number }): string => "No test sheet? The nearest stop of the library is “" + d.name + "”. Its forces can stand in, in proportion to the height and with a wide ±. The answer then says that it is an estimate.";
export const takeItsForcesAs: string = "Use its forces as an estimate";
export const noStopOfThis: string = "No stop of this kind is in the parts library.";
export const choose = (d: { name: string | number }): string => "Choose " + d.name;
export const chooseThisOne: string = "Choose this one";
