import { isPlainObject } from "./plainObject.ts";

/**
 * JSON text of a value with the fields of every group in alphabetical order: the same content gives the
 * same text, however it was spaced or ordered.
 */
export function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) => {
    if (!isPlainObject(inner)) return inner;
    const fields = Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1));
    return Object.fromEntries(fields);
  });
}

/** 53 bits of a text, as base 36: tells texts apart, keeps no secret (cyrb53, public domain). */
export function textDigest(text: string): string {
  let high = 0xdeadbeef;
  let low = 0x41c6ce57;
  for (let index = 0; index < text.length; index += 1) {
    const code = text.charCodeAt(index);
    high = Math.imul(high ^ code, 2654435761);
    low = Math.imul(low ^ code, 1597334677);
  }
  high = Math.imul(high ^ (high >>> 16), 2246822507) ^ Math.imul(low ^ (low >>> 13), 3266489909);
  low = Math.imul(low ^ (low >>> 16), 2246822507) ^ Math.imul(high ^ (high >>> 13), 3266489909);
  return (4294967296 * (2097151 & low) + (high >>> 0)).toString(36);
}
