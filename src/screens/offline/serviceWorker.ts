import { isShare, takeShare } from "../../sharing/shareTarget.ts";
import changeLog from "./CHANGES.md?raw";
import { newestChanges } from "./changes.ts";
import { type ChangesAnswer, type KeptAnswer, type PageMessage, syncTag } from "./messages.ts";
import {
  filesNeeded,
  keepRelease,
  markDeskOpened,
  matchIn,
  olderReleaseCaches,
  type ReleaseFile,
  releaseCacheName,
  releaseIsKept,
} from "./releaseCache.ts";

import { sendFromWorker } from "./sendFromWorker.ts";

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: ReleaseFile[] };

const files = self.__WB_MANIFEST;
const scope = self.registration.scope;
const current = releaseCacheName(scope, files);
const start = new URL("index.html", scope).href;

self.addEventListener("install", (event) => {
  event.waitUntil(keepWhatIsNeeded());
});

async function keepWhatIsNeeded(): Promise<void> {
  const needed = await filesNeeded(caches, current, files, scope);
  await keepRelease(caches, current, needed, scope);
  // The cache of the release before goes, and its mark with it.
  if (needed.length === files.length) await markDeskOpened(caches, current, scope);
}

async function keepForDesks(): Promise<void> {
  await markDeskOpened(caches, current, scope);
  // Without a signal it is fetched later, and until then not ready.
  await keepWhatIsNeeded().catch(() => undefined);
}

// A page that opened before this worker existed must find its later screens offline as well.
self.addEventListener("activate", (event) => {
  event.waitUntil(self.clients.claim());
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (isShare(request, scope)) {
    event.respondWith(takeShare(request, caches, scope));
    return;
  }
  if (request.method !== "GET" || !request.url.startsWith(scope)) return;
  event.respondWith(answer(request));
});

// Pages of the release before stay open after an update: their files are found in the older caches.
async function answer(request: Request): Promise<Response> {
  const names = [current, ...(await olderReleaseCaches(caches, scope, current))];
  const kept = await matchIn(caches, names, request.mode === "navigate" ? start : request);
  return kept ?? fetch(request);
}

self.addEventListener("message", (event) => {
  const message = event.data as PageMessage;
  if (message.type === "takeOver") event.waitUntil(self.skipWaiting());
  if (message.type === "whatIsNew") {
    const reply: ChangesAnswer = { changes: newestChanges(changeLog) };
    event.ports[0]?.postMessage(reply);
  }
  if (message.type === "deskOpened") event.waitUntil(keepForDesks());
  if (message.type === "pageStarted") event.waitUntil(dropOlderReleases());
  if (message.type === "isEverythingKept") {
    event.waitUntil(
      isEverythingKept().then((kept) => {
        const reply: KeptAnswer = { kept };
        event.ports[0]?.postMessage(reply);
      }),
    );
  }
});

if (import.meta.env.VITE_DESK) {
  self.addEventListener("sync", (event) => {
    const { tag, waitUntil } = event as ExtendableEvent & { readonly tag: string };
    if (tag === syncTag) waitUntil.call(event, sendFromWorker());
  });
}

// The browser may have thrown files away to make room: fetch them again, or say that they are gone.
async function isEverythingKept(): Promise<boolean> {
  const needed = await filesNeeded(caches, current, files, scope);
  if (await releaseIsKept(caches, current, needed, scope)) return true;
  try {
    await keepRelease(caches, current, needed, scope);
    return await releaseIsKept(caches, current, needed, scope);
  } catch {
    return false;
  }
}

async function dropOlderReleases(): Promise<void> {
  const { installing, waiting } = self.registration;
  const pages = await self.clients.matchAll({ includeUncontrolled: true, type: "window" });
  if (pages.length > 1 || installing || waiting) return;
  const older = await olderReleaseCaches(caches, scope, current);
  await Promise.all(older.map((name) => caches.delete(name)));
}
