import { poolWork } from "../../src/compute/poolWork.ts";
import type { BackupEntry } from "../../src/records/backup/backupLine.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { withEstimates } from "../../src/records/filling/withEstimates.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { pictureFacts } from "../../src/records/photo/pictureFile.ts";
import { bytesOfBase64 } from "../../src/records/photo/soundPhotos.ts";
import type { Reply } from "../../src/records/review/reply.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import type { Opened } from "../../src/sharing/openText.ts";
import { replyLink } from "../../src/sharing/shareLink.ts";
import { allChosen } from "../support/everyChoice.ts";
import { generateRecords } from "../support/generateRecords.ts";
import { tinyPhoto } from "../support/pictures.ts";
import type { Chance } from "./chance.ts";
import type { Case, Fuzzer } from "./fuzzers.ts";
import { mutateText, mutateValue, randomText, texts } from "./mutations.ts";
import { type Fault, unsoundNumber, unsoundOutcome, unsoundSentence } from "./soundness.ts";

/* Everything that comes in, through the very door that the app has: its pool's work. */

const records = [...generateRecords(40, 17)];
const app = "https://stopfit.example/app/";

/** What no text that was taken in may hold; null: it holds none. */
export function uncleanText(text: string): Fault {
  if (!text.isWellFormed()) return "half a letter came through";
  // biome-ignore lint/suspicious/noControlCharactersInRegex: it is what is looked for
  return /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u206f]/.test(text)
    ? "a control or a mark of direction came through"
    : null;
}

/** Where there is text that no person typed, or a photo that is no picture; null: nowhere. */
function unclean(value: unknown): Fault {
  const open: unknown[] = [value];
  for (let item = open.pop(); item !== undefined; item = open.pop()) {
    if (typeof item === "string") {
      const fault = uncleanText(item);
      if (fault !== null) return fault;
    }
    if (typeof item === "object" && item !== null) open.push(...Object.values(item));
  }
  return null;
}

function uncleanPhotos({ photos = [] }: Pick<CheckRecord, "photos">): Fault {
  const pictures = photos.every(({ type, data }) => {
    const bytes = bytesOfBase64(data);
    return bytes !== null && pictureFacts(bytes)?.type === type;
  });
  return pictures ? null : "a photo that is no picture came through";
}

function ahead(...moments: readonly (string | undefined)[]): Fault {
  const late = moments.find(
    (moment) => moment !== undefined && Date.parse(moment) > Date.now() + 1,
  );
  return late === undefined ? null : `a date ahead came through: ${late}`;
}

function replyOf(record: CheckRecord, chance: Chance): Reply {
  return {
    format: "stopfit-reply",
    version: 1,
    id: `r${chance.below(1000)}`,
    checkId: record.id,
    createdAt: "2026-05-04T10:00:00.000Z",
    from: chance.pick(texts).slice(0, 150),
    kind: chance.pick(["accept", "askAgain", "otherPart"] as const),
    vehicle: record.vehicle.label,
    axle: record.axle,
    readings: ["left.gap"],
    text: chance.pick(texts),
  };
}

/** What might come as a file, a paste, a link, a share: mutated, often enough still sound. */
export function doorText(chance: Chance): string {
  const record: CheckRecord = structuredClone(chance.pick(records));
  const photo = { ...tinyPhoto, caption: chance.pick(texts).slice(0, 100) };
  const whole: unknown = { ...record, ...(chance.once(4) && { photos: [photo] }) };
  const reply: unknown = replyOf(record, chance);
  switch (chance.below(8)) {
    case 0:
      return randomText(chance, 400);
    case 1: {
      mutateValue(reply, chance);
      return JSON.stringify(reply) ?? "";
    }
    case 2: {
      const link = replyLink(reply as Reply, app) ?? "";
      return chance.once(2) ? mutateText(link, chance) : `Hello ${link} and ${link}`;
    }
    case 3:
      return mutateText(JSON.stringify(whole), chance);
    case 4: {
      const label = chance.pick(texts).slice(0, 150);
      return JSON.stringify({ ...record, vehicle: { ...record.vehicle, label }, notes: label });
    }
    case 5: {
      const pack: unknown = structuredClone(demoPack);
      mutateValue(pack, chance);
      return JSON.stringify(pack) ?? "";
    }
    default: {
      const times = chance.pick([0, 1, 1, 2]);
      for (let time = 0; time < times; time += 1) mutateValue(whole, chance);
      return JSON.stringify(whole) ?? "";
    }
  }
}

function opened(text: string): Case {
  const done = poolWork({ kind: "open", text, what: "The text" });
  if (done.kind !== "opened")
    return { fault: `it ended as ${done.kind}`, accepted: false, input: text };
  let accepted = false;
  for (const item of done.items) {
    const fault = item.ok ? null : unsoundOutcome(item, `${text}NaN Infinity undefined [object`);
    if (fault !== null) return { fault, accepted, input: text };
    if (!item.ok || item.value.kind === "part") continue;
    accepted = true;
    const wrong = wrongOf(item.value);
    if (wrong !== null) return { fault: wrong, accepted, input: text };
  }
  return { fault: null, accepted, input: text };
}

function wrongOf(found: Exclude<Opened, { readonly kind: "part" }>): Fault {
  switch (found.kind) {
    case "check": {
      const { record } = found.check;
      return unclean(record) ?? uncleanPhotos(record) ?? unsoundNumber(record);
    }
    case "reply":
      return unclean(found.reply) ?? ahead(found.reply.createdAt);
    case "pack":
      return unclean(found.pack) ?? unsoundNumber(found.pack);
  }
}

/** As the desk reads it, and as a check that is not complete. */
function read(text: string, chance: Chance): Case {
  const draft = poolWork({ kind: "draft", text });
  if (draft.kind !== "draft")
    return { fault: `it ended as ${draft.kind}`, accepted: false, input: text };
  const of =
    draft.draft === null ? null : unclean(withEstimates(draft.draft, "mm", demoPack, inModelUnits));
  const way = chance.pick(["file", "link", "code"] as const);
  const done = poolWork({ kind: "read", text, what: "The text", way });
  if (done.kind !== "read")
    return { fault: `it ended as ${done.kind}`, accepted: false, input: text };
  for (const item of done.items) {
    if (!item.ok) {
      const fault = unsoundSentence(item.fault, `${text}NaN Infinity undefined [object`);
      if (fault !== null) return { fault, accepted: false, input: text };
    }
  }
  const facts = done.items.flatMap((item) => (item.ok ? [item.value.facts] : []));
  return { fault: of ?? unclean(facts), accepted: facts.length > 0, input: text };
}

const text: Fuzzer = {
  name: "door, text",
  cases: 60_000,
  run(chance) {
    const given = doorText(chance);
    return chance.once(3) ? read(given, chance) : opened(given);
  },
};

/** A line of a backup, mutated. */
export function doorLine(chance: Chance): string {
  const record = structuredClone(chance.pick(records));
  const at = chance.pick(["2026-05-02T10:00:00.000Z", "9999-12-31T00:00:00Z", "2026", "x"]);
  const stored = { ...storedFromRecord(record), choices: allChosen(chance.below(6)) };
  const again = {
    level: "unsure",
    done: [{ reading: "left.gap", how: "taken" }],
    now: {
      reading: "left.gap",
      before: null,
      tool: null,
      removes: 0.5,
      sentence: ["Off by ", { kind: "length", value: 2 }],
      doubt: null,
    },
    left: 2,
    just: null,
  };
  const decision = { key: "d", checkId: record.id, submission: "s", kind: "accept", by: "L", at };
  const lines: readonly unknown[] = [
    { kind: "check", check: { ...stored, again, updatedAt: at, name: chance.pick(texts) } },
    { kind: "check", check: { ...stored, id: chance.pick(texts) } },
    { kind: "decision", decision: { ...decision, note: chance.pick(texts) } },
    {
      kind: "submission",
      text: JSON.stringify(record),
      receivedAt: at,
      way: "file",
      photosLeftOut: 0,
    },
    { kind: "end", lines: chance.below(9) },
    {
      format: "stopfit-backup",
      version: chance.pick([1, 1, 2, 0, -1, 1.5]),
      kind: "header",
      createdAt: at,
    },
  ];
  const line: unknown = structuredClone(chance.pick(lines));
  const times = chance.pick([0, 1, 1, 3]);
  for (let time = 0; time < times; time += 1) mutateValue(line, chance);
  const written = JSON.stringify(line) ?? "";
  return chance.once(8) ? mutateText(written, chance) : written;
}

const backup: Fuzzer = {
  name: "door, backup",
  cases: 40_000,
  run(chance) {
    const input = doorLine(chance);
    const done = poolWork({ kind: "backupLines", lines: input, first: 2 });
    if (done.kind !== "backupLines")
      return { fault: `it ended as ${done.kind}`, accepted: false, input };
    let accepted = false;
    for (const entry of done.entries) {
      const fault = entry.ok
        ? faultOfEntry(entry.value)
        : unsoundOutcome(entry, `${input}NaN Infinity undefined`);
      if (fault !== null) return { fault, accepted, input };
      accepted ||= entry.ok;
    }
    return { fault: null, accepted, input };
  },
};

function faultOfEntry(entry: BackupEntry): Fault {
  const fault = unclean(entry.kind === "submission" ? entry.incoming.facts : entry);
  if (fault !== null) return fault;
  switch (entry.kind) {
    case "check": {
      const { createdAt, updatedAt, deletedAt, record } = entry.check;
      return ahead(createdAt, updatedAt, deletedAt) ?? uncleanPhotos(record);
    }
    case "decision":
      return ahead(entry.decision.at);
    case "submission":
      return ahead(entry.incoming.receivedAt);
    case "header":
      return ahead(entry.createdAt);
    case "end":
      return null;
  }
}

export const doorFuzzers: readonly Fuzzer[] = [text, backup];
