import { addressPart, readAddressPart } from "../records/text/soundText.ts";

/**
 * Takes what another program shares with the installed app: the manifest's share_target sends it as
 * a POST, which the service worker answers without a server. It is kept until the page has read it.
 */

/** The action of share_target in the manifest, relative to the scope. */
const shareTargetPath = "receive";
/** Where the page then finds itself. */
const receivedHash = "#/received";
const cacheName = "stopfit-received";
/** More files than this at once are left out, and what is larger together: any page can post here. */
const filesLimit = 20;
const bytesLimit = 200_000_000;
const textLimit = 2_000_000;

export function isShare(request: Request, scope: string): boolean {
  return (
    request.method === "POST" &&
    request.url.split(/[?#]/)[0] === new URL(shareTargetPath, scope).href
  );
}

/** Keeps what was shared and sends the browser to the page that shows it. */
export async function takeShare(
  request: Request,
  caches: CacheStorage,
  scope: string,
): Promise<Response> {
  try {
    const form = await request.formData();
    const cache = await caches.open(cacheName);
    for (const old of await cache.keys()) await cache.delete(old);
    let number = 0;
    let bytes = 0;
    for (const [field, value] of form) {
      if (number >= filesLimit) break;
      const isFile = typeof value !== "string";
      if (isFile ? field !== "check" : !["title", "text", "url"].includes(field)) continue;
      if (isFile ? value.size === 0 : value.trim() === "") continue;
      if (isFile ? bytes + value.size > bytesLimit : value.length > textLimit) continue;
      if (isFile) bytes += value.size;
      const headers = {
        "content-type": "text/plain; charset=utf-8",
        "x-name": addressPart(isFile ? value.name : ""),
      };
      await cache.put(new URL(`received/${number}`, scope), new Response(value, { headers }));
      number += 1;
    }
  } catch {
    // The page finds nothing then, and says so.
  }
  return Response.redirect(new URL(`./${receivedHash}`, scope).href, 303);
}

/** What was shared last, and no longer kept. Texts come as files without a name. */
export async function takeReceived(caches: CacheStorage | undefined): Promise<File[]> {
  const files: File[] = [];
  if (caches === undefined) return files;
  try {
    const cache = await caches.open(cacheName);
    for (const key of await cache.keys()) {
      const response = await cache.match(key);
      if (response !== undefined) {
        const name = readAddressPart(response.headers.get("x-name") ?? "") ?? "";
        files.push(new File([await response.blob()], name, { type: "text/plain" }));
      }
      await cache.delete(key);
    }
  } catch {
    return files;
  }
  return files;
}
