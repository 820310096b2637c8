/**
 * Bytes as decimal digits, seven bytes in seventeen. A QR code holds three digits in ten bits
 * (ISO/IEC 18004, numeric mode), so that bytes written this way take 8.1 bits each; in base64 they
 * would take 10.7.
 */
const groupBytes = 7;
const digitsOfBytes: readonly number[] = [0, 3, 5, 8, 10, 13, 15, 17];
const groupDigits = 17;

export function digitsLength(bytes: number): number {
  return (
    Math.floor(bytes / groupBytes) * groupDigits +
    (digitsOfBytes[bytes % groupBytes] ?? groupDigits)
  );
}

export function toDigits(bytes: Uint8Array): string {
  let text = "";
  for (let start = 0; start < bytes.length; start += groupBytes) {
    const group = bytes.subarray(start, start + groupBytes);
    let number = 0n;
    for (const byte of group) number = number * 256n + BigInt(byte);
    text += number.toString().padStart(digitsOfBytes[group.length] ?? groupDigits, "0");
  }
  return text;
}

/** As many whole groups as the digits hold; null where a group holds more than its bytes can. */
export function fromDigits(digits: string): Uint8Array<ArrayBuffer> | null {
  if (!/^\d*$/.test(digits)) return null;
  const rest = digits.length % groupDigits;
  const restBytes = digitsOfBytes.findLastIndex((length) => length <= rest);
  const whole = Math.floor(digits.length / groupDigits);
  const bytes = new Uint8Array(whole * groupBytes + restBytes);
  for (let group = 0; group <= whole; group += 1) {
    const length = group < whole ? groupBytes : restBytes;
    if (length === 0) break;
    const start = group * groupDigits;
    let number = BigInt(digits.slice(start, start + (digitsOfBytes[length] ?? groupDigits)));
    for (let byte = length - 1; byte >= 0; byte -= 1) {
      bytes[group * groupBytes + byte] = Number(number & 255n);
      number >>= 8n;
    }
    if (number !== 0n) return null;
  }
  return bytes;
}
