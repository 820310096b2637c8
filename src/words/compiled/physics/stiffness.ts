// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const noDesignEventIs: string = "No design event is set, so the stiffness cannot be judged. Set a bump or a landing.";
