/** The language of the catalogue: how dates and numbers are written in it. */
export const language = "en-US";
