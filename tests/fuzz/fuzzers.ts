import { readFileSync } from "node:fs";
import { assessFitment } from "../../src/physics/assess.ts";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { choicesOf } from "../../src/records/check/choices.ts";
import { entriesWithChoices } from "../../src/records/check/choicesAmongEntries.ts";
import { fitmentOf } from "../../src/records/check/fitmentOf.ts";
import { openStored } from "../../src/records/check/openStored.ts";
import { readCheckText, readCheckValue } from "../../src/records/check/readCheck.ts";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { readPackText, readPackValue } from "../../src/records/pack/readPack.ts";
import { importTestText } from "../../src/records/testRows/analyseTest.ts";
import { addCode, type CodeCollection, readCode } from "../../src/sharing/codeCollection.ts";
import { codeSeries } from "../../src/sharing/codeSeries.ts";
import { pack } from "../../src/sharing/compression.ts";
import { type Frame, frameBytes, partsLimit } from "../../src/sharing/frame.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { sharedOfText } from "../../src/sharing/receivedFile.ts";
import { checkOfFrame, sharedOfPayload } from "../../src/sharing/sharedCheck.ts";
import { packCheck, shareLink, wholeFrame } from "../../src/sharing/shareLink.ts";
import { toShortText } from "../../src/sharing/shortText.ts";
import { listedRow } from "../../src/storage/checkRow.ts";
import { allChosen } from "../support/everyChoice.ts";
import { generateRecords } from "../support/generateRecords.ts";
import type { Chance } from "./chance.ts";
import { mutateBytes, mutateText, mutateValue, numbers, randomText } from "./mutations.ts";
import { type Fault, unsoundNumber, unsoundOutcome } from "./soundness.ts";

export interface Case {
  /** What is wrong; null if nothing. */
  readonly fault: Fault;
  /** The input was taken for what it says it is. */
  readonly accepted: boolean;
  /** The record that was read, for a share to be assessed. */
  readonly record?: CheckRecord;
  readonly input: string;
}

export interface Fuzzer {
  readonly name: string;
  /** Cases of a full run. */
  readonly cases: number;
  run(chance: Chance): Case;
}

const app = "https://stopfit.example/app/";

const demoFiles = [
  "arm-fits",
  "arm-needs-taller",
  "axle-towing-early",
  "damper-shaft",
  "strut-too-stiff",
];
const demoText = (path: string) =>
  readFileSync(new URL(`../../demo-data/${path}`, import.meta.url), "utf8");

const recordTexts: readonly string[] = [
  ...demoFiles.map((name) => demoText(`checks/${name}.json`)),
  ...[...generateRecords(60, 7)].map((record) => JSON.stringify(record)),
];
const packText = JSON.stringify(JSON.parse(demoText("pack.json")));

function several(chance: Chance, change: () => void): void {
  const times = chance.pick([1, 1, 1, 2, 5]);
  for (let time = 0; time < times; time++) change();
}

/** A valid JSON text with some values changed, some letters changed, or no JSON at all. */
function jsonCase(
  valid: string,
  chance: Chance,
): { readonly text: string; readonly value?: unknown } {
  if (chance.once(20)) return { text: randomText(chance, 200) };
  if (chance.once(4)) {
    let text = valid;
    several(chance, () => {
      text = mutateText(text, chance);
    });
    return { text };
  }
  const value: unknown = JSON.parse(valid);
  several(chance, () => mutateValue(value, chance));
  return { text: JSON.stringify(value) ?? "", value };
}

/** Numbers that JSON cannot hold but a database can. */
function unJsonable(value: unknown, chance: Chance): void {
  mutateValue(value, chance);
  if (!Array.isArray((value as CheckRecord | null)?.corners)) return;
  const corner: unknown = (value as CheckRecord).corners[0];
  if (typeof corner === "object" && corner !== null) {
    Reflect.set(
      corner,
      "gap",
      chance.pick([
        { values: [Number.NaN], tol: 1 },
        { values: [Number.POSITIVE_INFINITY], tol: 1 },
        { values: [1], tol: Number.NaN },
        { values: [undefined], tol: 1 },
        new Map(),
        new Date(0),
      ]),
    );
  }
}

const record: Fuzzer = {
  name: "record",
  cases: 320_000,
  run(chance) {
    const { text, value } = jsonCase(chance.pick(recordTexts), chance);
    if (value !== undefined && chance.once(3)) {
      if (chance.once(2)) unJsonable(value, chance);
      const read = readCheckValue(value);
      const fault = unsoundOutcome(read, `${text}NaN Infinity undefined [object`);
      return { fault, accepted: read.ok, input: text, ...(read.ok && { record: read.value }) };
    }
    const read = readCheckText(text);
    const fault = unsoundOutcome(read, text);
    return { fault, accepted: read.ok, input: text, ...(read.ok && { record: read.value }) };
  },
};

const packInput: Fuzzer = {
  name: "pack",
  cases: 60_000,
  run(chance) {
    const { text, value } = jsonCase(packText, chance);
    const read = value === undefined || chance.once(2) ? readPackText(text) : readPackValue(value);
    return { fault: unsoundOutcome(read, text), accepted: read.ok, input: text };
  },
};

const stored: Fuzzer = {
  name: "stored check",
  cases: 60_000,
  run(chance) {
    const sound = storedFromRecord(JSON.parse(chance.pick(recordTexts)) as CheckRecord);
    // Photos as an earlier version stored them, and as today's does.
    const photos = [
      { type: "image/jpeg", data: "AAAA", reading: "left.gap" },
      { type: "image/jpeg", picture: "one", length: 4 },
    ];
    const choices = allChosen(chance.below(6));
    // As today's version stores what was chosen, and as an earlier one did.
    const held = chance.once(2)
      ? { choices }
      : { choices: undefined, entries: entriesWithChoices({ ...sound, choices }) };
    const record = { ...sound.record, photos };
    const whole: unknown = structuredClone({ ...sound, ...held, record });
    several(chance, () => mutateValue(whole, chance));
    // Little else than a missing id makes a row that can't be opened at all.
    if (chance.once(50)) Reflect.deleteProperty(whole as object, "id");
    if (chance.once(5)) unJsonable((whole as { record?: unknown }).record, chance);
    const input = JSON.stringify(whole);
    const opened = openStored(whole);
    const onOne = (opened === null) !== (listedRow(whole) === null);
    const kept = opened?.choices ?? {};
    const bent = Object.keys(choicesOf(kept)).length !== Object.keys(kept).length;
    const fault = onOne ? "listed or opened only" : bent ? "choices nobody could make" : null;
    return { fault, accepted: opened !== null, input };
  },
};

const headings = [
  "depth;speed;force",
  "Depth [mm],Speed [mm/s],Force [N]",
  "travel (in)\tvelocity (in/s)\tload (lbf)",
  "time,displacement,force",
  "t [s];x [mm];F [kN]",
  "",
];

function csvText(chance: Chance): string {
  const heading = chance.pick(headings);
  const delimiter = /[;\t|]/.exec(heading)?.[0] ?? ",";
  const comma = delimiter !== "," && chance.once(3);
  const cycles = heading.startsWith("t");
  const rows = 4 + chance.below(40);
  const lines = heading === "" ? [] : [heading];
  for (let row = 0; row < rows; row++) {
    const depth = (row % 8) * 3;
    const speed = [0.2, 200, -200][Math.floor(row / 8) % 3] as number;
    const force = 20 * depth + 0.3 * depth ** 2 + 0.2 * speed;
    const cells = cycles
      ? [row / 100, 10 * Math.sin(row / 3), 500 + 200 * Math.sin(row / 3 + 0.1)]
      : [depth, speed, force];
    const texts = cells.map((cell) => {
      const text = chance.once(60) ? String(chance.pick(numbers)) : cell.toFixed(3);
      return comma ? text.replace(".", ",") : text;
    });
    lines.push(texts.join(delimiter));
  }
  return lines.join(chance.pick(["\n", "\r\n", "\r"]));
}

const csv: Fuzzer = {
  name: "CSV",
  cases: 220_000,
  run(chance) {
    let text = chance.once(20) ? randomText(chance, 400) : csvText(chance);
    if (!chance.once(4)) {
      several(chance, () => {
        text = mutateText(text, chance);
      });
    }
    const read = importTestText(text, "test.csv");
    return { fault: unsoundOutcome(read, text), accepted: read.ok, input: text };
  },
};

const links: readonly string[] = [...generateRecords(40, 11)].flatMap((each) => {
  const link = shareLink(each, app);
  return link.ok ? [link.value.address] : [];
});
const bodies: readonly Uint8Array[] = [...generateRecords(40, 11)].flatMap((each) => {
  const packed = packCheck(each);
  return packed.ok ? [packed.value.body] : [];
});

/** A frame whose sum is right, so that what is wrong lies deeper. */
function deepFrame(chance: Chance): Frame {
  const kind = chance.below(4);
  const body =
    kind === 0
      ? mutateBytes(chance.pick(bodies), chance)
      : kind === 1
        ? chance.bytes(chance.below(300))
        : pack(
            kind === 2
              ? mutateText(toShortText(JSON.parse(chance.pick(recordTexts))), chance)
              : jsonCase(chance.pick(recordTexts), chance).text,
          );
  const parts = chance.once(5) ? chance.below(partsLimit + 1) : 1;
  const part = chance.once(5) ? chance.below(256) : 0;
  return { photosLeftOut: chance.below(256), parts, part, mark: crc32(body), body };
}

function brokenInLines(text: string, chance: Chance): string {
  const at = chance.below(text.length);
  return text.slice(0, at) + chance.pick(["\n", "=\r\n", "\r\n> ", " ", "\u00ad"]) + text.slice(at);
}

const link: Fuzzer = {
  name: "link",
  cases: 200_000,
  run(chance) {
    let text = chance.pick(links);
    switch (chance.below(6)) {
      case 0:
        text = randomText(chance, 300);
        break;
      case 1:
      case 2:
        text = payloadText(deepFrame(chance), chance.once(3) ? "digits" : "letters");
        break;
      case 3:
        text = brokenInLines(text, chance);
        break;
      default:
        several(chance, () => {
          text = mutateText(text, chance);
        });
    }
    const read = chance.once(2)
      ? sharedOfText({ text, what: "The text" })
      : sharedOfPayload(text.replace(/^.*#\/open\//, ""));
    const fault = unsoundOutcome(read, `${text}NaN Infinity undefined [object`);
    const check = read.ok && read.value.kind === "check" ? read.value.check : null;
    return {
      fault,
      accepted: read.ok,
      input: text,
      ...(check !== null && { record: check.record }),
    };
  },
};

const series: readonly (readonly string[])[] = [...generateRecords(20, 13)].flatMap((each) => {
  const codes = codeSeries(each, `${app}${"x".repeat(200)}`);
  return codes.ok ? [codes.value.codes.map(({ address, digits }) => address + digits)] : [];
});
const frames: readonly Frame[] = [...generateRecords(20, 13)].flatMap((each) => {
  const packed = packCheck(each);
  return packed.ok ? [wholeFrame(packed.value)] : [];
});

/** A code's text as a camera may read it: whole, misread, of another check, or of something else. */
function codeText(chance: Chance): string {
  const codes = chance.pick(series);
  const text = chance.pick(codes);
  switch (chance.below(6)) {
    case 0:
      return randomText(chance, 300);
    case 1:
      return `${app}#/open/${payloadText(deepFrame(chance), "digits")}`;
    case 2: {
      const bytes = mutateBytes(frameBytes(chance.pick(frames)), chance);
      return `${app}#/open/1d${Buffer.from(bytes).toString("base64url")}`;
    }
    case 3:
      return text;
    default:
      return mutateText(text, chance);
  }
}

const code: Fuzzer = {
  name: "QR code text",
  cases: 200_000,
  run(chance) {
    let collection: CodeCollection | null = null;
    let input = "";
    let accepted = false;
    const scans = chance.pick([1, 1, 2, 4]);
    for (let scan = 0; scan < scans; scan++) {
      input = codeText(chance);
      const frame = readCode(input);
      if (!frame.ok) {
        const fault = unsoundOutcome(frame, input);
        if (fault !== null) return { fault, accepted, input };
        continue;
      }
      const scanned = addCode(collection, frame.value);
      const fault = unsoundOutcome(scanned, input);
      if (fault !== null) return { fault, accepted, input };
      if (!scanned.ok) continue;
      accepted = true;
      collection = scanned.value.collection;
      if (scanned.value.whole === null) continue;
      const read = checkOfFrame(scanned.value.whole, "The code");
      const wrong = unsoundOutcome(read, `${input}NaN Infinity undefined [object`);
      if (wrong !== null) return { fault: wrong, accepted, input };
      if (read.ok) return { fault: null, accepted, input, record: read.value.record };
    }
    return { fault: null, accepted, input };
  },
};

export const fuzzers: readonly Fuzzer[] = [record, packInput, stored, csv, link, code];

/** What is wrong with the assessment of a record that was read; null if nothing. */
export function assessmentFault(each: CheckRecord): Fault {
  const assessed = assessFitment(fitmentOf(each), { samples: 10_000 });
  if (!assessed.ok) return unsoundOutcome(assessed, JSON.stringify(each));
  const path = unsoundNumber(assessed.value);
  return path === null ? null : `the assessment has no number at ${path}`;
}
