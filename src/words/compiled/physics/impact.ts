// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const greatestAsStopIs: string = "greatest ẋ as the stop is met, x > 0";
export const greatestAsWheelLeaves: string = "greatest −ż as the wheel leaves the stop";
export const impactCouldNotBe: string = "The impact could not be worked out: a rate or a damping is far stiffer than the masses allow. Check the stop's curve, the rates and the damping.";
export const inThisEventWheel: string = "In this event the wheel would rise farther than the layout can move. Measure what limits its travel, or check the arm's readings.";
export const impactCouldNotBeWorked: string = "The impact could not be worked out from these values. Check the masses, rates and damping.";
export const greatestZSUpward: string = "greatest z̈s, upward, in g";
export const greatestZsAboveIts: string = "greatest zs above its rest";
export const cornerWeightMustBe: string = "The corner weight must be more than the unsprung mass. Check both.";
export const stiffnessOrHeightTo: string = "The stiffness or height to try is not a usable number.";
export const impactsCannotBeWorked = (d: { readingName: string | number }): string => "Impacts cannot be worked out without " + d.readingName + ". Enter it, or estimate it.";
export const cannotHaveThisValue = (d: { readingName: string | number }): string => "" + d.readingName + " cannot have this value. Check it.";
export const heightOfLandingMust: string = "The height of the landing must be 0 or more. Correct it.";
export const bumpNeedsHeightOf: string = "The bump needs a height of 0 or more, and a length and a speed above 0. Correct them.";
export const speedBumpMustBe: string = "The speed bump must be less than half as high as it is long. Correct its height or length.";
export const greatestXSZ: string = "greatest x = s(z) − g";
export const fDtWhile0: string = "∫ F·ẋ dt while ẋ > 0";
export const fDtWhile02: string = "−∫ F·ẋ dt while ẋ < 0";
export const timeInRunWith: string = "time in the run with kt·(zu − road) ≥ W, ms";
export const greatestZZuZs: string = "greatest z = zu − zs";
export const greatestFMax0: string = "greatest F = max(0, F_static(x)·(e + h·σ) + Σq + c_stop·ẋ)";
export const speedAtTouchDown: string = "speed at touch-down = √(2·gₙ·h)";
export const timeOverObstacleL: string = "time over the obstacle = L/V, s";
