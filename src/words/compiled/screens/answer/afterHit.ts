// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const afterHit = (d: { side: string | undefined }): string => "After the hit, " + select(d.side, { left: "left", other: "right" });
export const afterHit2 = (d: { side: string | number }): string => "" + d.side + ": after the hit";
export const thisStopWasNot: string = "This stop was not tested at speed, so what follows a hit is unknown. It is worked out undamped.";
export const riseAndTireOff: string = "Rise and tire off the ground are upper estimates: nothing in the model stops the wheel from hanging down.";
export const thisStop: string = "this stop";
export const whatItsTestLeaves = (d: { side: string | undefined }): string => "What its test leaves open, " + select(d.side, { left: "left", other: "right" });
export const fromItsTest = (d: { side: string | number }): string => "" + d.side + ": ± from its test";
export const eventWord: string = "Event";
export const figure: string = "Figure";
export const predicted: string = "Predicted";
export const eachHolds95Of: string = "Each ± holds 95 % of what the test of this stop allows, and counts speeds beyond the test.";
export const leavesStopAt: string = "Leaves the stop at";
export const tireOffGround: string = "Tire off the ground";
export const bodyRises: string = "Body rises";
export const energyTakenUpBy: string = "Energy taken up by the stop";
export const itKeepsOfWhat = (d: { text: string | number; ownText: string | number; undampedText: string | number }): string => "It keeps " + d.text + " of what it takes up, and the body rises " + d.ownText + " after the hit, undamped " + d.undampedText + ".";
export const stopPressedBy: string = "Stop pressed by";
export const stopForce: string = "Stop force";
export const bodyAcceleration: string = "Body acceleration";
export const energyBackOut: string = "Energy back out";
export const itClosesStopAt = (d: { text: string | number; number: string | number }): string => "It closes the stop at " + d.text + ", " + d.number + " times as fast as its test went. What lies between is foretold, not tested.";
export const under = (d: { least: string | number }): string => "under " + d.least;
export const withAllThatIts: string = "With all that its test allows, the stop fails an event, loaded or as measured.";
export const withOfWhatIts = (d: { percent: string | number }): string => "With " + d.percent + " % of what its test allows, the stop fails an event, loaded or as measured.";
export const undamped: string = "undamped";
