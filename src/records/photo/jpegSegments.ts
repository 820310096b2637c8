/** One marker segment of a JPEG before its picture data: the marker's second byte, and where it is. */
export interface JpegSegment {
  readonly marker: number;
  /** From its 0xFF to its last byte, end excluded. */
  readonly start: number;
  readonly end: number;
}

const startOfImage = 0xd8;
const startOfScan = 0xda;

/**
 * The marker segments of a JPEG up to its first scan; null where the bytes are not a whole JPEG
 * header.
 *
 * @source ITU-T T.81 (1992), Annex B.1.1.4 (marker segments and their lengths) and Table B.1
 */
export function jpegSegments(bytes: Uint8Array): readonly JpegSegment[] | null {
  if (bytes[0] !== 0xff || bytes[1] !== startOfImage) return null;
  const segments: JpegSegment[] = [];
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length) return null;
    segments.push({ marker, start: at, end });
    if (marker === startOfScan) return segments;
    at = end;
  }
  return null;
}

/** APP1 to APP15 and comments: where cameras write position, time, owner and the like. */
function isAboutTheTaker({ marker }: JpegSegment): boolean {
  return (marker >= 0xe1 && marker <= 0xef) || marker === 0xfe;
}

/** Does the header hold anything but what is needed to show the picture? Null: not a JPEG. */
export function holdsMetadata(bytes: Uint8Array): boolean | null {
  return jpegSegments(bytes)?.some(isAboutTheTaker) ?? null;
}

/** The same picture without anything that cameras write beside it; null where it is not a JPEG. */
export function withoutMetadata(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const segments = jpegSegments(bytes);
  if (!segments) return null;
  const kept = segments.filter((segment) => !isAboutTheTaker(segment));
  const scan = segments.at(-1)?.end ?? bytes.length;
  const pieces = [
    bytes.subarray(0, 2),
    ...kept.map(({ start, end }) => bytes.subarray(start, end)),
    bytes.subarray(scan),
  ];
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
