import type { Side } from "../../physics/fitment.ts";
import {
  closerReadings,
  geometryRegistry,
  isGeometryReadingName,
  isReadingId,
  limitOf,
  ruleValueNames,
  sideOf,
  standingNames,
  withoutSide,
} from "../../physics/readings/index.ts";
import { recordFaults } from "../../records/check/recordRules.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { EntryKey } from "../../records/entry/entry.ts";
import { entryOutcome } from "../../records/entry/entryPath.ts";
import { chosen } from "../../records/filling/choice.ts";
import type { WayQuantity } from "../../records/filling/rideWays.ts";
import { stopSource } from "../../records/filling/stopSources.ts";
import * as messages from "../../words/compiled/screens/guide.ts";
import { layoutDrafts, sideDrafts } from "./sideSteps.ts";
import { standingSteps } from "./standing.ts";
import { type Draft, leftSide, ofReading, rightSide, type Section, type Step } from "./step.ts";

export { type Step, sections } from "./step.ts";

/** The address of the full-travel check, which is no step of the walk. */
export const fullTravelStep = "fullTravel";

/** Screens of a check that come after its answer. */
export const fittedStep = "fitted";
export const secondStep = "second";
export const explainStep = "explain";

const rideSteps = [
  { id: "ride.payloadPerCornerKg", name: messages.payloadOnThisAxle },
  { id: "ride.unsprungMassKg", name: messages.unsprungMass },
  { id: "ride.wheelRateNPerMm", name: messages.wheelRate },
  { id: "ride.tyreRateNPerMm", name: messages.tireRate },
  { id: "ride.damperBumpNsPerMm", name: messages.damping },
] as const;

/** Whether the vehicle is raised, as it was answered or as the record of a file has it. */
export function raisedChoice(stored: StoredCheck): "yes" | "no" | null {
  const answered = chosen(stored, "vehicle.raised");
  if (answered !== null) return answered;
  if (!stored.entries["vehicle.liftMm"]) return null;
  return stored.record.vehicle?.liftMm === 0 ? "no" : "yes";
}

export function cautionLevel(stored: StoredCheck): "level" | "raised" {
  const lift = stored.record.vehicle?.liftMm;
  if (lift !== undefined) return lift > 0 ? "raised" : "level";
  return chosen(stored, "vehicle.raised") === "yes" ? "raised" : "level";
}

/** Cautions acknowledged for a raised vehicle hold for a level one, not the other way round. */
export function cautionsHold(stored: StoredCheck): boolean {
  const { cautionsFor } = stored.progress;
  return cautionsFor === "raised" || (cautionsFor === "level" && cautionLevel(stored) === "level");
}

/** Everything that the vehicle must be before it is measured was seen to. */
function stands(stored: StoredCheck): boolean {
  return standingSteps.every(({ id }) => stored.progress.stood.includes(id));
}

function vehicleDrafts(stored: StoredCheck): Draft[] {
  const { vehicle } = stored.record;
  return [
    {
      id: "vehicle",
      section: messages.vehicle,
      name: messages.vehicle2,
      done:
        Boolean(vehicle?.label?.trim()) &&
        vehicle?.liftMm !== undefined &&
        raisedChoice(stored) !== null &&
        Boolean(vehicle?.use),
      typedHere: ["vehicle.liftMm"],
    },
    {
      id: "cautions",
      section: messages.safety,
      name: messages.beforeYouMeasure,
      done: cautionsHold(stored),
    },
    {
      id: "standing",
      section: messages.safety,
      name: messages.setUpVehicle,
      needed: false,
      done: stands(stored),
    },
  ];
}

function stopDrafts(stored: StoredCheck): Draft[] {
  const { stop } = stored.record;
  const source = stopSource(stored);
  const whole =
    stop?.freeHeight !== undefined &&
    stop.usableCompressionMm !== undefined &&
    stop.curve !== undefined;
  const drafts: Draft[] = [
    {
      id: "stop",
      section: messages.stopWord,
      name: messages.whichStop,
      done: source === "hand" ? Boolean(stop?.name?.trim() && stop.duty) : source !== null && whole,
    },
  ];
  if (source === null) return drafts;
  drafts.push({
    ...ofReading("stop.freeHeight"),
    section: messages.stopWord,
    name: messages.heightOfStop,
    done: stop?.freeHeight !== undefined && stop.usableCompressionMm !== undefined,
    typedHere: ["stop.usableCompressionMm", "stop.usableTolMm"],
  });
  if (source === "pack") return drafts;
  drafts.push({
    id: "stop.curve",
    section: messages.stopWord,
    name: messages.forceOverCompression,
    done: stop?.curve !== undefined && (stop.testedAtSpeed !== true || stop.damping != null),
    typedHere: ["stop.damping"],
  });
  return drafts;
}

function rideDrafts(stored: StoredCheck): Draft[] {
  const { ride, corners } = stored.record;
  const section: Section = messages.loadAndRates;
  const settled = (id: `${Side}.cornerMassKg` | `ride.${WayQuantity}`) =>
    chosen(stored, `${id}.way`) === "unknown";
  return [
    ...corners.map((corner) => ({
      ...ofReading(`${corner.side}.cornerMassKg`),
      section,
      name: messages.weightOnWheel({ side: corner.side }),
      needed: false,
      done: corner.cornerMassKg !== undefined || settled(`${corner.side}.cornerMassKg`),
    })),
    ...rideSteps.map(({ id, name }) => {
      const damping = id === "ride.damperBumpNsPerMm";
      const field = id.slice("ride.".length) as keyof NonNullable<typeof ride>;
      return {
        id,
        section,
        name,
        needed: false,
        done:
          settled(id) ||
          (ride?.[field] !== undefined && (!damping || ride.damperReboundNsPerMm !== undefined)),
        ...(damping && { typedHere: ["ride.damperReboundNsPerMm"] }),
      };
    }),
  ];
}

/** Something is typed under this id, and it can't be read. */
function isUnreadable(stored: StoredCheck, id: EntryKey): boolean {
  const entry = stored.entries[id];
  if (!entry || !isReadingId(id)) return false;
  const outcome = entryOutcome(id, entry);
  return !outcome.ok && outcome.fault.code !== "entryEmpty";
}

/** Every step of this check in order, as far as it is known which there are. */
export function stepsOf(stored: StoredCheck): Step[] {
  const kind = stored.record.layout?.kind;
  const drafts: Draft[] = [
    ...vehicleDrafts(stored),
    ...layoutDrafts(stored),
    ...(kind ? sideDrafts(stored, kind) : []),
    ...stopDrafts(stored),
    ...rideDrafts(stored),
    {
      id: "rules",
      section: messages.requirements,
      name: messages.requirements,
      needed: false,
      done: chosen(stored, "rules") === "seen",
      typedHere: ruleValueNames.map((name) => `rules.${name}`),
    },
    { id: "finish", section: messages.finish, name: messages.finish, needed: false, done: false },
  ];
  const faulty = new Set(recordFaults(stored.record).map(({ reading }) => reading));
  return drafts.map(({ typedHere = [], needed = true, reading = null, ...draft }) => ({
    ...draft,
    needed,
    reading,
    unreadable: [draft.id, ...typedHere].some((id) => faulty.has(id) || isUnreadable(stored, id)),
    state: draft.done ? "done" : stored.progress.skipped.includes(draft.id) ? "skipped" : "todo",
  }));
}

/** Steps that are on one side of the list, but not of the vehicle. */
function isOfWholeAxle(id: string): boolean {
  if (isGeometryReadingName(id)) return geometryRegistry[id].wholeAxle === true;
  return id === "right.geometry";
}

/** A step's name, with the side it is taken on. */
export function headingOf(step: Step): string {
  if (isOfWholeAxle(step.id)) return step.name;
  if (step.section === leftSide) return messages.left({ name: step.name });
  if (step.section === rightSide) return messages.right({ name: step.name });
  return step.name;
}

const standNames: ReadonlySet<string> = new Set(standingNames);
const isStand = (id: string): boolean => sideOf(id) !== null && standNames.has(withoutSide(id));

/** The first step that is neither done nor passed over, else the last. */
export function firstOpenStep(all: readonly Step[]): string {
  return (all.find((step) => step.state === "todo") ?? all.at(-1))?.id ?? "vehicle";
}

const readCloser: ReadonlySet<string> = new Set(Object.values(closerReadings).flat());

/**
 * The step where a reading or field is entered: its own, or the one whose screen holds it. Null where
 * this check has no such step.
 */
export function stepFor(id: string, all: readonly Step[]): string | null {
  const has = (candidate: string) => all.some((step) => step.id === candidate);
  if (has(id)) return id;
  if (id.startsWith(`${fullTravelStep}.`) || id.endsWith(".linkage")) return fullTravelStep;
  const shared: { readonly [id: string]: string } = {
    "vehicle.liftMm": "vehicle",
    "vehicle.label": "vehicle",
    "vehicle.use": "vehicle",
    use: "vehicle",
    "ride.damperReboundNsPerMm": "ride.damperBumpNsPerMm",
    "stop.usableCompressionMm": "stop.freeHeight",
    "stop.usableTolMm": "stop.freeHeight",
    "stop.damping": "stop.curve",
    "stop.testedAtSpeed": "stop.curve",
    "layout.wheelPerOuter": "pivotToOuter",
    wheelPerOuter: "linkage",
    "layout.kind": "layout",
    "layout.armRole": "layout",
    "layout.stopOn": "layout",
    corners: "axle",
    "stop.name": "stop",
    "stop.duty": "stop",
    cornerMassKg: "left.cornerMassKg",
    safety: "cautions",
  };
  const place =
    shared[id] ??
    (readCloser.has(id) ? "linkage" : null) ??
    id
      .replace(/\.(perWheel|distance)$/, "")
      .replace(/\.((lifted|pushed)Height|settle)$/, ".rideHeight");
  if (has(place)) return place;
  if (place === "linkage" && has("layout")) return "layout";
  const standing = isStand(id)
    ? all.find((step) => isStand(step.id) && sideOf(step.id) === sideOf(id))
    : undefined;
  if (standing) return standing.id;
  // A limit that is not there yet is chosen first.
  const limit = limitOf(id);
  if (limit !== null && has(`${limit.side}.limits`)) return `${limit.side}.limits`;
  if (id.startsWith("rules.") && has("rules")) return "rules";
  if (id.startsWith("ride.") && has("ride.payloadPerCornerKg")) return "ride.payloadPerCornerKg";
  if (id.startsWith("stop.") && has("stop")) return "stop";
  if (has(withoutSide(id))) return withoutSide(id);
  const sided = all.find((step) => step.id === `left.${id}` || step.id === `right.${id}`);
  return sided?.id ?? null;
}
