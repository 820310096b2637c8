export const checkFormat = "stopfit-check";
/** The version that is written; version 1 is read as this one (see `earlierVersion.ts`). */
export const checkVersion = 2;

/** What is usual at each side of a platform. */
export const platformReadings = ["rideHeight", "gap", "cornerMassKg"] as const;

/** What a picture in a record may be. */
export const pictureTypes = ["image/jpeg", "image/png", "image/webp"] as const;

/** How much of anything a record may hold: far above real use, low enough to harm nothing. */
export const recordBounds = {
  repeats: 100,
  limits: 50,
  curvePoints: 1000,
  branches: 20,
  /** Laws that a stop's test allows. */
  laws: 32,
  events: 50,
  labelCharacters: 200,
  typedCharacters: 60,
  notesCharacters: 20_000,
  photos: 24,
  /** Prescriptions that were shown. */
  advised: 12,
  /** Base64 characters of one photo: 3 MB of picture. */
  photoCharacters: 4_000_000,
  /** Characters of a whole record with its photos. */
  textCharacters: 32_000_000,
  nesting: 40,
  /** Numbers, texts, lists and groups in one file, all told: a full record has some thousands. */
  values: 500_000,
  /** Fields of one group; what was typed of a check has some hundreds. */
  fields: 2000,
  /** The greatest magnitude any number may have. */
  magnitude: 1e9,
} as const;
