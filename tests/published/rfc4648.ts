import { toBase64url } from "../../src/sharing/base64url.ts";
import { publishedSource } from "./support/published.ts";

/* RFC 4648, section 10, with the padding left out; section 5's two letters by Node's own encoder. */
export const rfc4648 = publishedSource("RFC 4648, sections 5 and 10", "met", (published) => {
  for (const [text, spelled] of [
    ["", ""],
    ["f", "Zg"],
    ["fo", "Zm8"],
    ["foo", "Zm9v"],
    ["foob", "Zm9vYg"],
    ["fooba", "Zm9vYmE"],
    ["foobar", "Zm9vYmFy"],
  ] as const) {
    published(`base64url of "${text}"`, spelled, () => toBase64url(new TextEncoder().encode(text)));
  }
  const bytes = Uint8Array.of(0xfb, 0xff, 0xbf);
  published("base64url of fb ff bf, by Node", Buffer.from(bytes).toString("base64url"), () =>
    toBase64url(bytes),
  );
});
