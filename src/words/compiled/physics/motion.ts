// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const atWhichZIs: string = "α at which z is z_asked, found by search; the lines below show it";
