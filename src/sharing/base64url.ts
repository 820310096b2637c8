const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const values = new Map([...letters].map((letter, value) => [letter, value]));

/** Characters that so many bytes take. */
export function base64urlLength(bytes: number): number {
  return Math.ceil((bytes * 4) / 3);
}

/** Bytes in the URL-safe alphabet of RFC 4648 section 5, without padding. */
export function toBase64url(bytes: Uint8Array): string {
  let text = "";
  for (let start = 0; start < bytes.length; start += 3) {
    const group = bytes.subarray(start, start + 3);
    const bits = ((group[0] ?? 0) << 16) | ((group[1] ?? 0) << 8) | (group[2] ?? 0);
    for (let letter = 0; letter <= group.length; letter += 1) {
      text += letters[(bits >>> (18 - 6 * letter)) & 63];
    }
  }
  return text;
}

/** As many whole bytes as the text holds; null where a letter is not of the alphabet. */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const letter of text) {
    const value = values.get(letter);
    if (value === undefined) return null;
    bits = ((bits << 6) | value) & 0xfff;
    held += 6;
    if (held >= 8) {
      held -= 8;
      bytes[at] = (bits >>> held) & 0xff;
      at += 1;
    }
  }
  return bytes;
}
