import type { Photo } from "../check/checkRecord.ts";
import { bytesOfBase64 } from "./soundPhotos.ts";

/** SHA-256 of a picture's bytes in hexadecimal (FIPS 180-4); null where the page may not compute it. */
export async function hashOf(bytes: Uint8Array): Promise<string | null> {
  const subtle = (globalThis.crypto as Crypto | undefined)?.subtle;
  if (subtle === undefined) return null;
  const digest = await subtle.digest("SHA-256", Uint8Array.from(bytes));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The photo with the app's own time, who took it, and the hash of its bytes. */
export async function withProof(photo: Photo, by: string | null, at = new Date()): Promise<Photo> {
  const bytes = bytesOfBase64(photo.data);
  const sha256 = bytes && (await hashOf(bytes));
  return {
    ...photo,
    takenAt: at.toISOString(),
    ...(by !== null && by.trim() !== "" && { by }),
    ...(sha256 && { sha256 }),
  };
}

export type PhotoProof = "same" | "other" | "untold";

/** same: the picture is the one that was taken in; other: it is not; untold: it has no hash. */
export async function proofOf({ data, sha256 }: Photo): Promise<PhotoProof> {
  if (sha256 === undefined) return "untold";
  const bytes = bytesOfBase64(data);
  const found = bytes && (await hashOf(bytes));
  if (found === null) return "untold";
  return found === sha256 ? "same" : "other";
}
