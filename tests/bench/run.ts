import { timeAssessments } from "./assessments.ts";
import { compareIntegrators } from "./integrators.ts";
import { compareMonteCarlo } from "./monteCarlo.ts";

console.log(`Node ${process.version}, one thread.`);
compareIntegrators();
timeAssessments();
compareMonteCarlo();
