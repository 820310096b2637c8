import { crc32 as zlibCrc32 } from "node:zlib";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import { publishedSource } from "./support/published.ts";

/* Catalogue of parametrised CRC algorithms (from memory), and zlib as Node ships it. */
export const crc32Source = publishedSource(
  "CRC-32: catalogue of CRCs; zlib",
  "met",
  (published) => {
    const hexadecimal = (value: number) => value.toString(16).padStart(8, "0");
    const bytes = (text: string) => new TextEncoder().encode(text);
    const check = bytes("123456789");
    published(
      "check value of 123456789",
      "cbf43926",
      () => hexadecimal(crc32(check)),
      0,
      "from memory",
    );
    for (const text of ["", "a", "Stopfit", "gap 58,7 mm".repeat(500)]) {
      published(
        `zlib's of ${text.length} characters${text.length > 0 ? `, "${text.slice(0, 7)}"` : ""}`,
        hexadecimal(zlibCrc32(bytes(text))),
        () => hexadecimal(crc32(bytes(text))),
      );
    }
  },
);
