import { timeAssessments } from "./assessments.ts";
import { compareIntegrators } from "./integrators.ts";
import { compareLossyStops } from "./lossyStops.ts";
import { compareMonteCarlo } from "./monteCarlo.ts";

console.log(`Node ${process.version}, one thread.`);
compareIntegrators();
timeAssessments();
compareLossyStops();
compareMonteCarlo();
