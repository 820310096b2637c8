import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, resolve, sep } from "node:path";

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
};

/** What a host sends with every file: `host/nginx.conf` says the same. */
export const safety = {
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Content-Security-Policy": "frame-ancestors 'none'",
  "Permissions-Policy":
    "camera=(self), accelerometer=(self), gyroscope=(self), screen-wake-lock=(self), geolocation=(), microphone=(), payment=(), usb=()",
};

/** Files whose name carries a hash never change; everything else is asked for anew each time. */
function caching(path) {
  return path.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache";
}

/** Answers GET and HEAD from a folder, and from nowhere else, below the path `base`. */
export function createStaticServer(folder, base = "/") {
  const root = resolve(folder);
  return createServer(async (request, response) => {
    const send = (status, headers, body) => {
      response.writeHead(status, { ...safety, ...headers });
      response.end(request.method === "HEAD" ? undefined : body);
    };
    const plain = { "Content-Type": "text/plain; charset=utf-8", "Cache-Control": "no-store" };
    if (request.method !== "GET" && request.method !== "HEAD") {
      send(405, { ...plain, Allow: "GET, HEAD" }, "Only GET and HEAD are answered.");
      return;
    }
    let path;
    try {
      path = decodeURIComponent((request.url ?? "/").replace(/[?#].*$/s, ""));
    } catch {
      send(400, plain, "That address cannot be read.");
      return;
    }
    if (!path.startsWith(base)) {
      send(404, plain, "Not found.");
      return;
    }
    path = `/${path.slice(base.length)}`;
    if (path.endsWith("/")) path += "index.html";
    const file = resolve(join(root, path));
    if (!file.startsWith(root + sep) || path.includes("\0")) {
      send(404, plain, "Not found.");
      return;
    }
    try {
      const body = await readFile(file);
      const type = types[extname(file)] ?? "application/octet-stream";
      send(200, { "Content-Type": type, "Cache-Control": caching(path) }, body);
    } catch {
      send(404, plain, "Not found.");
    }
  });
}

function listen(server, port) {
  return new Promise((done, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", () => {
      server.off("error", failed);
      done(server.address().port);
    });
  });
}

/** Listens on this machine only: on `port`, or with `next` on the first free one after it. */
export async function listenLocally(server, port, next = false) {
  for (let attempt = port; ; attempt++) {
    try {
      return await listen(server, attempt);
    } catch (error) {
      if (!next || error.code !== "EADDRINUSE" || attempt > port + 100) throw error;
    }
  }
}
