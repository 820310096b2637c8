// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const newtonPerMillimeter: string = "newton per millimeter";
export const newtonsPerMillimeter: string = "newtons per millimeter";
export const poundPerInch: string = "pound per inch";
export const poundsPerInch: string = "pounds per inch";
export const newtonSecondPerMillimeter: string = "newton second per millimeter";
export const newtonSecondsPerMillimeter: string = "newton seconds per millimeter";
export const poundSecondPerInch: string = "pound second per inch";
export const poundSecondsPerInch: string = "pound seconds per inch";
export const kilometerPerHour: string = "kilometer per hour";
export const kilometersPerHour: string = "kilometers per hour";
export const milePerHour: string = "mile per hour";
export const milesPerHour: string = "miles per hour";
export const perKilometer: string = "per kilometer";
export const over = (d: { numerator: string | number; denominator: string | number }): string => "" + d.numerator + " over " + d.denominator;
export const ofInch: string = "of an inch";
export const and = (d: { minus: string | number; number: string | number; said: string | number; many: string | number }): string => "" + d.minus + d.number + " and " + d.said + " " + d.many;
