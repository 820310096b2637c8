/* The kinematics' door: wheel travel from the stop's closing and back, and the lever ratio, for every layout. */

export { kinematicsOf } from "./kinematics.ts";
export { layoutAtHeight } from "./layoutAtHeight.ts";
export { linkageUncertainty } from "./linkageDoubt.ts";
