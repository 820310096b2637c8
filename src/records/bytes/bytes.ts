/** Pieces one after another, as one. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

export function big16(bytes: Uint8Array, at: number): number {
  return ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
}

export function big32(bytes: Uint8Array, at: number): number {
  return big16(bytes, at) * 0x10000 + big16(bytes, at + 2);
}

export function little(bytes: Uint8Array, at: number, count: number): number {
  let value = 0;
  for (let index = count - 1; index >= 0; index -= 1) {
    value = value * 256 + (bytes[at + index] ?? 0);
  }
  return value;
}

export function textAt(bytes: Uint8Array, at: number, count: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + count));
}
