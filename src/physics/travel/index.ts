/* The travel's door: a corner moved through its travel, where its parts stand and what its stop does. */

export { type CornerTravel, cornerTravel, type TravelMoment } from "./cornerTravel.ts";
