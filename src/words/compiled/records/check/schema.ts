// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const mustNotBeEmpty: string = "must not be empty";
export const isNotDateAnd: string = "is not a date and time in UTC, as 2026-05-02T09:30:00Z";
