// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const uOfE: string = "u of E";
export const payloadIsNotNumber: string = "The payload is not a number. Enter the load this corner carries in use.";
export const springsRateAtWheel: string = "The spring's rate at the wheel must be above 0. Check the wheel rate.";
export const underThisPayloadWheel = (d: { springAlone: string | number }): string => "Under this payload the wheel would move " + d.springAlone + " up, farther than this layout can move. Check the payload, the wheel rate and the arm's readings.";
export const massOnThisWheel: string = "mass on this wheel";
export const dampingAtWheel: string = "damping at the wheel";
export const tiresRate: string = "tire's rate";
export const speedOnRoad: string = "speed on the road";
export const numberOfContactsAllowed: string = "number of contacts allowed per km";
export const mustBeAbove0 = (d: { words: string | number }): string => "The " + d.words + " must be above 0. Check that value.";
export const contactsKm01000: string = "contacts/km = ν0·(1000/V)·exp(−z²/2σ²)";
export const contactsKm01000V: string = "contacts/km = ν0·(1000/V)·(1 + u)·exp(−u)";
export const uWith1U: string = "u with (1 + u)·exp(−u) = E";
export const n0KtM2: string = "ν0 = √(kt/M) / 2π, per second";
export const payloadG: string = "payload · gₙ";
export const payloadGKw = (d: { springAlone: string | number }): string => "" + d.springAlone + " = payload·gₙ / kw";
export const payloadGFRec = (d: { springAlone: string | number }): string => "" + d.springAlone + " = (payload·gₙ + F_rec) / kw";
export const fStopDsDz: string = "F_stop·ds/dz at that sag";
export const sagPayloadGKw: string = "sag = payload·gₙ / kw";
export const sagPayloadGF: string = "sag = (payload·gₙ + F_rec) / kw";
export const sagPayloadGFStop: string = "sag = (payload·gₙ − F_stop·ds/dz) / kw";
export const sagPayloadGFRec: string = "sag = (payload·gₙ + F_rec − F_stop·ds/dz) / kw";
export const zNeed2Ln = (d: { springAlone: string | number }): string => "z_need = " + d.springAlone + " + σ·√[2·ln(1/E)]";
export const zNeedU3 = (d: { springAlone: string | number }): string => "z_need = " + d.springAlone + " + σ·u/√3";
export const zZCSag: string = "z = z_c − sag";
export const zZC = (d: { restWithoutPayload: string | number }): string => "z = z_c − " + d.restWithoutPayload;
export const mostExtraHeightG: string = "most extra height = g − s(z_need)";
