/* The uncertainty's door: means, ± and draws of readings. */

export { drawnReading, standardUncertainty } from "./drawnReading.ts";
export { mean, meanOf } from "./readingMean.ts";
