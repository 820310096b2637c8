// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const hitchStandsBehindRear: string = "The hitch stands behind the rear axle by less than the wheelbase. Check both lengths and the tongue weight.";
export const noneTongueWeightOf = (d: { words: string | number; words2: string | number }): string => "none: a tongue weight of " + d.words + " lifts " + d.words2 + " off each front wheel";
export const halfOfWhichTongue = (d: { words: string | number; words2: string | number }): string => "half of " + d.words + ", which a tongue weight of " + d.words2 + " puts on the rear axle by its lever";
export const axlesRatingMustBe: string = "The axle's rating must be above 0. Read the label again.";
export const thisAxleWeighsNow = (d: { corner: string | number }): string => "This axle weighs " + d.corner + " now, more than its rating. Unload it, or check the label and the weight.";
export const mostThatAxlesRating = (d: { inModelUnits: string | number }): string => "the most that the axle's rating of " + d.inModelUnits + " leaves, an upper bound";
export const wireCoilDiameterNumber: string = "Wire, coil diameter, number of coils and shear modulus must all be above 0. Re-measure.";
export const wireCannotBeAs: string = "The wire cannot be as thick as the coil is wide. Re-measure both.";
export const fromCoilWireMean = (d: { wire: string | number; meanCoil: string | number; activeCoils: string | number }): string => "from the coil: wire " + d.wire + ", mean diameter " + d.meanCoil + ", " + d.activeCoils + " active coils";
export const springsLeverRatioWheel: string = "The spring's lever ratio, wheel travel per spring travel, must be above 0. Re-measure it.";
export const atLeverRatioOf = (d: { leverRatio: string | number }): string => "at a lever ratio of " + d.leverRatio;
export const shareOfCriticalDamping: string = "The share of critical damping must be above 0. So must the wheel rate, the sprung mass and the ratio of rebound to bump. Check them.";
export const ofCriticalReboundBump = (d: { share: string | number; reboundPerBump: string | number }): string => "" + d.share + " of critical, rebound " + d.reboundPerBump + " × bump";
export const estimateHoldsForHardness: string = "The estimate holds for a hardness of 20 to 80 Shore A. Re-measure the hardness; a harder block has to be tested.";
export const diameterAndHeightOf: string = "The diameter and height of the block must be above 0. Re-measure them.";
export const estimateFromShoreDiameter = (d: { shoreA: string | number; diameter: string | number; height: string | number }): string => "estimate from " + d.shoreA + " Shore A, diameter " + d.diameter + ", height " + d.height;
export const loadOnThisCorner: string = "The load on this corner must be above 0. Weigh it again.";
export const rideHeightMustFall: string = "The ride height must fall under the load. Measure it without and with the load.";
export const withOfSagStop = (d: { sag: string | number }): string => "With " + d.sag + " of sag the stop already carries part of the load. Re-measure with a smaller load.";
export const fromOfSagUnder = (d: { sag: string | number; load: string | number }): string => "from " + d.sag + " of sag under " + d.load;
