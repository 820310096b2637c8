/** One file of a release, as the build lists it: revision is null where the name carries a hash. */
export interface ReleaseFile {
  readonly url: string;
  readonly revision: string | null;
  readonly integrity?: string;
  /** Kept once a desk was opened on this device, and not before. */
  readonly forDesks?: true;
}

const prefix = "stopfit-release ";

/** Names the cache of one release: the same files give the same name, any change another one. */
export function releaseCacheName(scope: string, files: readonly ReleaseFile[]): string {
  let hash = 0xcbf29ce484222325n;
  for (const character of JSON.stringify(files)) {
    hash ^= BigInt(character.codePointAt(0) ?? 0);
    hash = BigInt.asUintN(64, hash * 0x100000001b3n);
  }
  return `${prefix}${scope} ${hash.toString(16)}`;
}

export async function olderReleaseCaches(
  storage: CacheStorage,
  scope: string,
  current: string,
): Promise<string[]> {
  const names = await storage.keys();
  return names.filter((name) => name.startsWith(`${prefix}${scope} `) && name !== current);
}

/** A redirected answer may not be given to a navigation, so only its content is kept. */
function withoutRedirect(response: Response): Response {
  if (!response.redirected) return response;
  const { headers, status, statusText } = response;
  return new Response(response.body, { headers, status, statusText });
}

async function fetchReleaseFile(file: ReleaseFile, address: string): Promise<Response> {
  const options: RequestInit = { cache: "no-cache", credentials: "same-origin" };
  if (file.integrity !== undefined) options.integrity = file.integrity;
  const response = await fetch(address, options);
  if (!response.ok) throw new Error(`${file.url}: ${response.status}`);
  return withoutRedirect(response);
}

/** Fills the cache with every file of the release that it lacks; rejects if one cannot be had. */
export async function keepRelease(
  storage: CacheStorage,
  name: string,
  files: readonly ReleaseFile[],
  scope: string,
): Promise<void> {
  const cache = await storage.open(name);
  const older = await olderReleaseCaches(storage, scope, name);
  const queue = [...files];
  const worker = async (): Promise<void> => {
    for (let file = queue.shift(); file !== undefined; file = queue.shift()) {
      const address = new URL(file.url, scope).href;
      if (await cache.match(address)) continue;
      const unchanged = file.revision === null ? await matchIn(storage, older, address) : undefined;
      await cache.put(address, unchanged ?? (await fetchReleaseFile(file, address)));
    }
  };
  await Promise.all(Array.from({ length: 6 }, worker));
}

function deskMark(scope: string): string {
  return new URL("desk-opened", scope).href;
}

/** From now on, in later releases too, the files for desks are kept as well. */
export async function markDeskOpened(
  storage: CacheStorage,
  name: string,
  scope: string,
): Promise<void> {
  const cache = await storage.open(name);
  await cache.put(deskMark(scope), new Response(""));
}

/** The files of a release that this device needs. */
export async function filesNeeded(
  storage: CacheStorage,
  name: string,
  files: readonly ReleaseFile[],
  scope: string,
): Promise<readonly ReleaseFile[]> {
  const names = [name, ...(await olderReleaseCaches(storage, scope, name))];
  const opened = await matchIn(storage, names, deskMark(scope));
  return opened ? files : files.filter(({ forDesks }) => !forDesks);
}

export async function releaseIsKept(
  storage: CacheStorage,
  name: string,
  files: readonly ReleaseFile[],
  scope: string,
): Promise<boolean> {
  if (!(await storage.has(name))) return false;
  const cache = await storage.open(name);
  const kept = new Set((await cache.keys()).map((request) => request.url));
  return files.every((file) => kept.has(new URL(file.url, scope).href));
}

export async function matchIn(
  storage: CacheStorage,
  names: readonly string[],
  request: Request | string,
): Promise<Response | undefined> {
  for (const cacheName of names) {
    // Opening a cache would bring one back that was just deleted.
    const response = await storage.match(request, { cacheName });
    if (response) return response;
  }
  return undefined;
}
