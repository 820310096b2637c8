import { describe, expect, it } from "vitest";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import {
  type Frame,
  frameBytes,
  frameLength,
  frameOverhead,
  packedBytesLimit,
  readFrame,
} from "../../src/sharing/frame.ts";

const body = Uint8Array.of(1, 2, 3, 4, 5);
const single: Frame = { photosLeftOut: 2, parts: 1, part: 0, mark: crc32(body), body };
const part: Frame = { photosLeftOut: 0, parts: 3, part: 1, mark: 0xdeadbeef, body };

/** Bytes with something else in them, and the sum of what is then there. */
function bytesWith(frame: Frame, change: (bytes: Uint8Array) => void): Uint8Array {
  const bytes = frameBytes(frame);
  change(bytes);
  new DataView(bytes.buffer).setUint32(bytes.length - 4, crc32(bytes.subarray(0, -4)));
  return bytes;
}

const damaged =
  "payloadAltered: The code is damaged: a part of it was changed on the way. Ask for it to be sent again, or for the check as a file.";
function refusal(bytes: Uint8Array): string {
  const read = readFrame(bytes, "The code");
  return read.ok ? "" : `${read.fault.code}: ${inModelUnits(read.fault.sentence)}`;
}

describe("a frame", () => {
  it("is its header, the mark of the set where there are more, the body and a sum", () => {
    expect([...frameBytes(single)].slice(0, -4)).toEqual([2, 1, 0, 0, 0, 5, 1, 2, 3, 4, 5]);
    expect([...frameBytes(part)].slice(0, -4)).toEqual([
      0, 3, 1, 0, 0, 5, 0xde, 0xad, 0xbe, 0xef, 1, 2, 3, 4, 5,
    ]);
    const view = new DataView(frameBytes(part).buffer);
    expect(view.getUint32(15)).toBe(crc32(frameBytes(part).subarray(0, 15)));
    expect([frameOverhead(1), frameOverhead(2)]).toEqual([10, 14]);
    expect(frameBytes({ ...single, photosLeftOut: 300 })[0]).toBe(255);
  });

  it("reads back as what it was, wherever its bytes stand", () => {
    const longest = { ...part, body: new Uint8Array(packedBytesLimit).fill(7) };
    for (const frame of [single, part, { ...part, part: 2 }, { ...part, part: 0 }, longest]) {
      expect(readFrame(frameBytes(frame), "The code")).toEqual({ ok: true, value: frame });
      const within = Uint8Array.from([9, 9, ...frameBytes(frame), 9]).subarray(2, -1);
      expect(readFrame(within, "The code")).toEqual({ ok: true, value: frame });
    }
  });

  it("tells its length from its beginning, and not from less", () => {
    const bytes = frameBytes(part);
    expect(frameLength(bytes.subarray(0, 6))).toBe(bytes.length);
    expect(frameLength(bytes.subarray(0, 5))).toBeNull();
    expect(frameLength(Uint8Array.of(0, 1, 0, 2, 1, 0))).toBe(10 + 2 * 65_536 + 256);
  });

  it("that was changed, cut, or is none is told", () => {
    for (const frame of [single, part]) {
      const bytes = frameBytes(frame);
      for (let at = 0; at < bytes.length; at += 1) {
        const changed = bytes.slice();
        changed[at] = (changed[at] ?? 0) ^ 1;
        expect(refusal(changed)).toBe(damaged);
        expect(refusal(bytes.subarray(0, at))).toBe(damaged);
      }
      expect(refusal(Uint8Array.from([...bytes, 0]))).toBe(damaged);
    }
  });

  it("whose sum is right, but whose numbers can't be, is told as well", () => {
    expect(refusal(bytesWith(single, () => undefined))).toBe("");
    expect(refusal(bytesWith(single, (bytes) => bytes.set([0], 1)))).toBe(damaged);
    expect(refusal(bytesWith(single, (bytes) => bytes.set([1], 2)))).toBe(damaged);
    expect(refusal(bytesWith(part, (bytes) => bytes.set([3], 2)))).toBe(damaged);
    expect(refusal(bytesWith(part, (bytes) => bytes.set([4], 2)))).toBe(damaged);
    expect(refusal(bytesWith(single, (bytes) => bytes.set([6], 5)))).toBe(damaged);
    expect(refusal(frameBytes({ ...single, body: new Uint8Array() }))).toBe(damaged);
    expect(refusal(frameBytes({ ...part, body: new Uint8Array() }))).toBe(damaged);
    const long = { ...single, body: new Uint8Array(packedBytesLimit + 1) };
    expect(refusal(frameBytes(long))).toBe(damaged);
  });
});
