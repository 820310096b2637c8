import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { mmPerInch } from "../entry/units.ts";

/** A thread by its outer diameter and the way it moves in one turn, mm; a pitch that is not known is absent. */
export interface Thread {
  readonly sizeMm: number;
  readonly pitchMm?: number;
}

const metric = /^m?\s*(\d+(?:[.,]\d+)?)\s*(?:mm)?\s*(?:[x×*]\s*(\d+(?:[.,]\d+)?)\s*(?:mm)?)?$/i;
const inches =
  /^(?:(\d+)\s+)?(?:(\d+)\/(\d+)|(0?\.\d+)|(\d+))\s*(?:in|["″])?\s*(?:[-–]\s*(\d{1,2})|[x×]\s*(\d+(?:\.\d+)?)\s*mm)?\s*(?:unc|unf)?$/i;

function decimal(text: string): number {
  return Number(text.replace(",", "."));
}

/**
 * "M10 x 1.5", "M10", "3/8-16", "1/2": metric by diameter and pitch in mm (ISO 261), inch threads by
 * diameter and threads per inch (ASME B1.1).
 */
export function readThread(text: string): Outcome<Thread> {
  const plain = text.trim();
  const [, size, pitchMm] = metric.exec(plain) ?? [];
  if (size !== undefined) {
    const sizeMm = decimal(size);
    if (sizeMm > 0 && sizeMm <= 100) {
      return pitchMm === undefined
        ? succeed({ sizeMm })
        : withPitch(sizeMm, decimal(pitchMm), plain);
    }
  }
  const found = inches.exec(plain);
  if (found) {
    const [, whole = "0", over, under, tenths, inch, turns, pitchText] = found;
    const part = over !== undefined ? Number(over) / Number(under) : Number(tenths ?? inch);
    const sizeMm = (Number(whole) + part) * mmPerInch;
    if (Number.isFinite(sizeMm) && sizeMm > 0 && sizeMm <= 100) {
      if (turns === undefined && pitchText === undefined) return succeed({ sizeMm });
      const pitch = turns === undefined ? Number(pitchText) : mmPerInch / Number(turns);
      return withPitch(sizeMm, pitch, plain);
    }
  }
  return notRead(plain);
}

function withPitch(sizeMm: number, pitchMm: number, text: string): Outcome<Thread> {
  return pitchMm > 0 && pitchMm < sizeMm ? succeed({ sizeMm, pitchMm }) : notRead(text);
}

function notRead(text: string): Outcome<never> {
  return fail("threadUnreadable", [messages.isNoThreadThat({ text: text.slice(0, 40) })]);
}

const sixteenths = (sizeMm: number) => (16 * sizeMm) / mmPerInch;
const near = (value: number, whole: number, within: number) => Math.abs(value - whole) < within;

/** "M10 × 1.5", "M10", "3/8-16", "3/8 in": as it is said. */
export function threadText({ sizeMm, pitchMm }: Thread): string {
  const parts = Math.round(sixteenths(sizeMm));
  const isInch = near(sixteenths(sizeMm), parts, 0.005) && !near(sizeMm, Math.round(sizeMm), 0.005);
  if (!isInch) return `M${sizeMm}${pitchMm === undefined ? "" : ` × ${pitchMm}`}`;
  const size = fraction(parts);
  if (pitchMm === undefined) return `${size} in`;
  const turns = mmPerInch / pitchMm;
  return near(turns, Math.round(turns), 0.02)
    ? `${size}-${Math.round(turns)}`
    : `${size} in × ${pitchMm} mm`;
}

/** 6 sixteenths: "3/8"; 18: "1 1/8". */
function fraction(parts: number): string {
  const whole = Math.floor(parts / 16);
  const rest = parts % 16;
  if (rest === 0) return String(whole);
  const divisor = [8, 4, 2].find((each) => rest % each === 0) ?? 1;
  return `${whole === 0 ? "" : `${whole} `}${rest / divisor}/${16 / divisor}`;
}
