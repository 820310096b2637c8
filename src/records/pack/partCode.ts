import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import type { Message } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { makerCode, type Pack, type PackStop } from "./pack.ts";
import { stopOfPart } from "./packCandidates.ts";

/** One part of one maker: what a label on its bag says. */
export interface PartLabel {
  readonly maker: string;
  readonly partNumber: string;
  readonly revision?: string;
  readonly batch?: string;
}

/** What the codes of labels begin with: the format and its version. */
const start = "STOPFIT1";
const mostCharacters = 500;
const mostOfOne = 200;

/** The label's maker: what the pack says, else made of its name. */
export function makerOfPack({ maker, name }: Pick<Pack, "maker" | "name">): string {
  return maker?.code ?? makerCode(name);
}

/**
 * Two letters that make a text right: its characters weighed by their place, modulo 26². A slip of one
 * letter, or two neighbours changed over, does not go unseen: 26² is no divisor of what either changes.
 */
function checkLetters(text: string): string {
  let sum = 0;
  for (const [place, letter] of [...text].entries()) {
    sum = (sum * 31 + (letter.codePointAt(0) ?? 0) + place) % 676;
  }
  return String.fromCharCode(65 + Math.floor(sum / 26), 65 + (sum % 26));
}

function plain(text: string): string {
  return encodeURIComponent(text.trim()).replace(/\*/g, "%2A");
}

/** "STOPFIT1*HALDEN*HL-1052*B*2611*QK": as a label's code holds it, in letters that codes hold best. */
export function partCodeText({ maker, partNumber, revision, batch }: PartLabel): string {
  const text = [start, maker, plain(partNumber), plain(revision ?? ""), plain(batch ?? "")].join(
    "*",
  );
  return `${text}*${checkLetters(text)}`;
}

function looksLikePartCode(text: string): boolean {
  return /^\s*STOPFIT\d+\*/.test(text);
}

const notALabel = fail("labelForeign", [messages.thisIsNoCode]);

function readPlain(text: string): string | null {
  try {
    const read = decodeURIComponent(text);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: what no label may hold.
    return read.length > mostOfOne || /[\u0000-\u001f\u007f\u202a-\u202e\u2066-\u2069]/.test(read)
      ? null
      : read;
  } catch {
    return null;
  }
}

/** The part of a scanned text. Nothing of it is used before it is held against a pack. */
export function readPartCode(text: string): Outcome<PartLabel> {
  const trimmed = text.trim();
  if (trimmed.length > mostCharacters || !looksLikePartCode(trimmed)) return notALabel;
  const pieces = trimmed.split("*");
  const [head = "", maker = "", number = "", revision = "", batch = "", check] = pieces;
  if (head !== start) {
    return fail("labelNewer", [messages.thisLabelWasMade]);
  }
  const before = pieces.slice(0, -1).join("*");
  if (pieces.length !== 6 || check !== checkLetters(before)) {
    return fail("labelDamaged", [messages.labelWasNotRead]);
  }
  const [partNumber, ownRevision, ownBatch] = [number, revision, batch].map(readPlain);
  if (!partNumber || ownRevision == null || ownBatch == null || !/^[A-Z0-9]{2,12}$/.test(maker)) {
    return notALabel;
  }
  return succeed({
    maker,
    partNumber,
    ...(ownRevision !== "" && { revision: ownRevision }),
    ...(ownBatch !== "" && { batch: ownBatch }),
  });
}

/** A stop of the pack, and the batch of the very part where a label told it. */
export interface FoundPart {
  readonly stop: PackStop;
  readonly revision?: string;
  readonly batch?: string;
  /** What has to be known of it before it is used. */
  readonly remark?: Message;
}

/** The stop that a scanned label is of. */
export function partOfLabel(pack: Pack, label: PartLabel): Outcome<FoundPart> {
  const { maker, partNumber, revision, batch } = label;
  if (maker !== makerOfPack(pack)) {
    return fail("labelOfOther", [
      messages.thisLabelIsOf({ maker, makerOfPack: makerOfPack(pack) }),
    ]);
  }
  const stop = stopOfPart(pack, { partNumber, revision });
  if (stop === null) return unknownPart(partNumber);
  const other = revision !== undefined && stop.revision !== revision;
  return succeed({
    stop,
    ...(revision !== undefined && { revision }),
    ...(batch !== undefined && { batch }),
    ...(other && {
      remark: messages.labelSaysRevisionParts({
        revision,
        noRevision: stop.revision === undefined,
        revision2: stop.revision,
      }),
    }),
  });
}

function unknownPart(partNumber: string): Outcome<never> {
  return fail("partUnknown", [messages.partIsNotIn({ partNumber: partNumber.slice(0, 60) })]);
}

/** The stop of a part number that was typed. */
export function partOfNumber(pack: Pack, typed: string): Outcome<FoundPart> {
  const partNumber = typed.trim();
  if (partNumber === "") {
    return fail("partEmpty", [messages.nothingIsTypedYet]);
  }
  if (looksLikePartCode(partNumber)) {
    const label = readPartCode(partNumber);
    return label.ok ? partOfLabel(pack, label.value) : label;
  }
  const stop = stopOfPart(pack, { partNumber });
  if (stop === null) return unknownPart(partNumber);
  return succeed({ stop, ...(stop.revision !== undefined && { revision: stop.revision }) });
}
