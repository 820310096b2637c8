/* The full-travel check's door: what was found by hand beside what was computed. */

export {
  type ComparedContact,
  type ComparedCorner,
  compareFullTravel,
} from "./compareFullTravel.ts";
export { type MetPart, touchedParts } from "./fullTravelCheck.ts";
export {
  fullTravelLine,
  hardContacts,
  likeliest,
  likeliestSentence,
  suspectName,
} from "./fullTravelSentences.ts";
