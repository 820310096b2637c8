import { expect, it } from "vitest";
import { hashOf, proofOf, withProof } from "../../../src/records/photo/photoProof.ts";

it("hashes as the standard's example does", async () => {
  // FIPS 180-4 example (from memory): SHA-256("abc")
  expect(await hashOf(new TextEncoder().encode("abc"))).toBe(
    "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
  );
});

it("a photo keeps when, who and what; another picture in its place is seen", async () => {
  const at = new Date("2026-05-31T10:00:00Z");
  const photo = await withProof({ type: "image/jpeg", data: "AQID" }, "Ada", at);
  expect(photo).toMatchObject({ takenAt: "2026-05-31T10:00:00.000Z", by: "Ada" });
  expect(await proofOf(photo)).toBe("same");
  expect(await proofOf({ ...photo, data: "AQIE" })).toBe("other");
  const { sha256: _, ...untold } = photo;
  expect(await proofOf(untold)).toBe("untold");
  expect((await withProof({ type: "image/jpeg", data: "AQID" }, null, at)).by).toBeUndefined();
});
