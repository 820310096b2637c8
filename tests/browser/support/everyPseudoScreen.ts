import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { stepsOf } from "../../../src/screens/guide/steps.ts";
import { demoNames, demoRecord } from "../../support/demoRecords.ts";
import { everyScreen } from "./everyScreen.ts";

type NamedAddress = readonly [name: string, address: string];

const place = (check: string, step: string): NamedAddress => [
  `${check} ${step}`,
  `#/check/${demoRecord(check).id}/${step}`,
];

const stepsIn = (check: string) =>
  stepsOf(storedFromRecord(demoRecord(check))).map(({ id }) => place(check, id));

const answers = demoNames.map((check) => place(check, "answer"));
const half = Math.ceil(answers.length / 2);
const isNoAnswer = ([, address]: NamedAddress) => !address.endsWith("/answer");

/** Everything that an address of the app shows with the demo checks there, on a phone in mm and on one in inches. */
export const inMillimeters: readonly NamedAddress[] = [
  ...everyScreen.filter(isNoAnswer),
  ["a new stop of the library", "#/pack/stop/new"],
  ["a new vehicle of the library", "#/pack/platform/new"],
  ["tests of a stop", "#/pack/tests/long-arm-bumper"],
  ["report of a test", "#/pack/report/long-arm-bumper/long-arm-bumper-bench"],
  ["library to hand over", "#/send-pack"],
  ["findings without checks", "#/desk/findings"],
  ["an answer after a change", "#/check/6f6c1c9e-0000-4000-8000-000000000018/answer"],
  place("few-readings", "again"),
  place("checked-by-hand", "fullTravel"),
  ...stepsIn("arm-fits"),
  ...answers.slice(0, half),
];

export const inInches: readonly NamedAddress[] = [
  ["settings", "#/settings"],
  ["a stop of the library", "#/pack/stop/tall-firm"],
  ["a vehicle of the library", "#/pack/platform/tern-hatch-front"],
  ["requirements of the library", "#/pack/rules"],
  ["report of a test", "#/pack/report/damped-rod-stop/damped-rod-stop-bench"],
  place("arm-needs-taller", "stops"),
  place("arm-needs-taller", "explain"),
  place("axle-towing-early", "fitted"),
  place("axle-towing-early", "second"),
  place("axle-towing-early", "fullTravel"),
  ...stepsIn("axle-towing-early"),
  place("strut-and-arm", "linkage"),
  ...answers.slice(half),
];
