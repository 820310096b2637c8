import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import type { CheckRecord } from "../records/checkRecord.ts";
import { readCheckText } from "../records/readCheck.ts";
import { unpack } from "./compression.ts";
import type { Frame } from "./frame.ts";
import { readPayload } from "./payload.ts";
import { fromShortText } from "./shortText.ts";

/** A check as it came from someone else: read and found sound, but not kept yet. */
export interface SharedCheck {
  readonly record: CheckRecord;
  /** Photos that the sender's record has and this one has not. */
  readonly photosLeftOut: number;
}

/** The check of a frame that holds a whole one. */
export function checkOfFrame(frame: Frame, what = "The link"): Outcome<SharedCheck> {
  if (frame.parts > 1) {
    return fail("oneCodeOfSeveral", [
      `${what} holds only part ${frame.part + 1} of ${frame.parts} of a check. Scan the other codes too.`,
    ]);
  }
  const text = unpack(frame.body);
  if (!text.ok) return text;
  const read = readCheckText(inFull(text.value), what);
  return read.ok
    ? succeed({ record: read.value, photosLeftOut: frame.photosLeftOut })
    : { ok: false, fault: read.fault };
}

/** The text in full; a text that is none as it is, so that reading it says what is wrong with it. */
function inFull(shortText: string): string {
  try {
    return fromShortText(shortText);
  } catch {
    return shortText;
  }
}

/** The check that the payload of a link holds. Never throws, whatever the payload is. */
export function checkOfPayload(payload: string, what = "The link"): Outcome<SharedCheck> {
  const frame = readPayload(payload, what);
  return frame.ok ? checkOfFrame(frame.value, what) : frame;
}
