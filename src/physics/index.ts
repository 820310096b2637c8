/*
 * The door to the calculation, for screens, workers, the command line and anyone who uses it as a library.
 *
 * Pure functions: no DOM, no storage, no package. Lengths in mm, forces in N, masses in kg, rates in N/mm,
 * damping in N·s/mm, angles of readings in degrees, times in s; wheel travel counts from the measured
 * ride height, up positive. MODEL.md tells the formulas and where they come from.
 */

/*
 * The question and its answer
 *
 * A `Fitment` is one axle with its readings, stop, rules and ride data; the assessment is all that is said of it.
 * `assessStatic` gives the answer without events, `completeAssessment` adds them, `assessFitment` does both at once.
 */
export { assessFitment, assessStatic, completeAssessment } from "./assess.ts";
/*
 * Travel budget
 *
 * The gap in each of the ways that it is known.
 */
export { gapOf, gapReadingOf } from "./budget/gap.ts";
/*
 * Estimates
 *
 * Rates and damping from what can be measured where no data sheet is at hand; each with its ±.
 */
export { coilSpringRate, steelShearModulus, wheelRateFromCoil } from "./estimates/coilSpring.ts";
export { dampingFromShare, usualReboundPerBump } from "./estimates/dampingFromShare.ts";
export type { Estimate, Toleranced } from "./estimates/estimate.ts";
export { rubberBlockCurve } from "./estimates/rubberBlock.ts";
export { wheelRateFromSag } from "./estimates/wheelRateFromSag.ts";
export type {
  Assessment,
  Check,
  CheckId,
  Corner,
  CornerAssessment,
  CurvePoint,
  DampingPoint,
  DesignEvent,
  DoubtShare,
  EstimatedCurve,
  EventResult,
  Fitment,
  FullTravelCheck,
  FullTravelCorner,
  GeometryReadingName,
  HardLimit,
  Interval,
  LayoutKind,
  LimitKind,
  Reading,
  Ride,
  RideQuantity,
  RoadClass,
  Side,
  State,
  Stop,
  TouchedPart,
  Use,
  UseRules,
} from "./fitment.ts";
/*
 * The full-travel check
 *
 * What was found by hand beside what was computed.
 */
export {
  type ComparedContact,
  type ComparedCorner,
  compareFullTravel,
} from "./fullTravel/compareFullTravel.ts";
export { type MetPart, touchedParts } from "./fullTravel/fullTravelCheck.ts";
export {
  fullTravelLine,
  hardContacts,
  likeliest,
  likeliestSentence,
  suspectName,
} from "./fullTravel/fullTravelSentences.ts";
/*
 * Impact
 *
 * A quarter car with the stop through one design event.
 */
export { type ImpactRun, simulateImpact } from "./impact/impact.ts";
export { impactSetupOf, settled, undampedTwin, unladen } from "./impact/impactSetup.ts";
export type { ImpactTrace } from "./impact/impactTrace.ts";

/*
 * Kinematics
 *
 * Wheel travel from the stop's closing and back, and the lever ratio, for every layout.
 */
export { kinematicsOf } from "./kinematics/kinematics.ts";
export { layoutAtHeight } from "./kinematics/layoutAtHeight.ts";
/*
 * Faults as values, and sentences
 *
 * Nothing here throws for what a person typed: an `Outcome` holds a value, or a fault with a sentence. A
 * sentence keeps words and numbers apart, so that a screen shows the numbers in the person's own unit.
 */
export { type Fault, fail, type Outcome, succeed } from "./outcome.ts";
/*
 * What to do
 *
 * The combination of stop and spacer that was tested, and the stops of a pack in order.
 */
export {
  type Candidate,
  fittedId,
  scaledBuilds,
  spacersByInch,
  spacersByMm,
} from "./prescription/candidates.ts";
export { fitmentWithStop } from "./prescription/fitmentWithStop.ts";
export { type Prescription, prescribeSteps } from "./prescription/prescribe.ts";
export { sitsOnStopSentence } from "./prescription/prescriptionSentences.ts";
export type { SearchOptions, SearchProgress } from "./prescription/searchSteps.ts";
export { little } from "./ranking/rankedStop.ts";
export { type RankedStop, type RankProgress, rankStops } from "./ranking/rankStops.ts";
export { limitTouches, readingName } from "./readingNames.ts";
/*
 * Readings
 *
 * What can be read on a vehicle, each defined once: its name, its sort, what is believable, what stands in for it.
 */
export { cornerReadingNames, settle, standingNames } from "./readings/cornerReadings.ts";
export { definitionOf } from "./readings/definitionOf.ts";
export { type ContactPart, contactParts } from "./readings/fullTravelReadings.ts";
export {
  type GeometryReadingOf,
  geometryNames,
  geometryRegistry,
  isGeometryReadingName,
  layoutReadingsInOrder,
  neededReadings,
} from "./readings/geometryRegistry.ts";
export { type LimitPlace, limitPlaces } from "./readings/limitReadings.ts";
export {
  isReadingId,
  limitOf,
  parseReadingId,
  type ReadingPlace,
  sideOf,
  withoutSide,
} from "./readings/readingId.ts";
export { rideQuantities, rideReadings } from "./readings/rideReadings.ts";
export { type StopReadingName, stopNumberNames } from "./readings/stopReadings.ts";
export { isBelievable, type ValueDefinition, type ValueKind } from "./readings/valueDefinition.ts";
/*
 * What to measure again
 *
 * The readings behind the doubt, in the order of what they settle.
 */
export type { RemeasureLevel } from "./remeasure/openQuestions.ts";
export {
  planRemeasureSteps,
  type RemeasureItem,
  type RemeasurePlan,
  type ToolsAtHand,
} from "./remeasure/planRemeasure.ts";
export type { BetterTool } from "./remeasure/readAgain.ts";
/*
 * Road and rest
 *
 * Roughness, travel on a road, contacts per km, where a vehicle rests, and the demands of each use.
 */
export { restingStop } from "./road/heldAtRide.ts";
export { crossingShare, levelOfShare } from "./road/levelCrossings.ts";
export { restPosition } from "./road/restPosition.ts";
export { progressiveContactFactor, type RoadCorner, roadTravel } from "./road/roadTravel.ts";
export { referenceFrequency, roadClasses, roughness } from "./road/roughness.ts";
export { defaultRules, rulesOf } from "./road/useRules.ts";
export {
  capital,
  inModelUnits,
  length,
  type Quantity,
  type QuantityKind,
  type Sentence,
} from "./sentence.ts";
export { standardGravity } from "./standardGravity.ts";
/*
 * Stiffness
 *
 * Which stiffness classes work, and the map of height by class.
 */
export {
  type CornerDynamics,
  cornerDynamicsSteps,
  type StateFailure,
} from "./stiffness/cornerDynamics.ts";
export { type CellFailure, heightClassMap, type MapCell } from "./stiffness/heightClassMap.ts";
export {
  isProgressive,
  secantRate,
  stiffnessClasses,
  stiffnessClassOf,
} from "./stop/stiffnessClass.ts";
/*
 * The stop
 *
 * Its static curve, secant rate and stiffness class, and what tests at speed show of its loss.
 */
export {
  curveAtRest,
  losesEnergy,
  type StopAtSpeed,
  staticOnly,
  stopAtSpeed,
} from "./stop/stopAtSpeed.ts";
export { stopCurve } from "./stop/stopCurve.ts";
export { usableFromTest } from "./stop/usableFromTest.ts";
/*
 * Tests of stops
 *
 * A stop's curve, loss and damping from the rows of a test machine.
 */
export { analyseRows } from "./stopTests/analyseRows.ts";
export { analyseTimed } from "./stopTests/analyseTimed.ts";
export {
  type BenchTest,
  type CyclesAnalysis,
  type Remark,
  type RowsAnalysis,
  type StaticCurve,
  staticSpeedMmPerS,
  type TestAnalysis,
  type TimedAnalysis,
} from "./stopTests/benchTest.ts";
export { type FoundStop, foundStop } from "./stopTests/foundStop.ts";
export type { FreeMassHit } from "./stopTests/freeMassHit.ts";
export { predictedHit } from "./stopTests/predictedHit.ts";
export { curveThrough } from "./stopTests/staticCurve.ts";
export type { Doubted, StopLoss } from "./stopTests/stopLoss.ts";
/*
 * Doubt
 *
 * Means and draws of readings, and what counts as sure.
 */
export { drawnReading, standardUncertainty } from "./uncertainty/drawnReading.ts";
export { mean, meanOf } from "./uncertainty/readingMean.ts";
export { sureEnough, unlikelyEnough } from "./verdict/decisions.ts";
export { believableRatio } from "./verdict/plausible.ts";
