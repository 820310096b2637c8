/* The uncertainty's door: means, ± and draws of readings. */

export { conformityFormulas } from "./cornerDraws.ts";
export { intervalFormulas } from "./coverageIntervals.ts";
export { drawnReading, standardUncertainty, uncertaintyFormulas } from "./drawnReading.ts";
export { mean, meanOf } from "./readingMean.ts";
