import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer, request, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createStaticServer, listenLocally } from "../../src/tooling/serve.mjs";

let folder: string;
let server: Server;
let port: number;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "stopfit-serve-"));
  mkdirSync(join(folder, "site/assets"), { recursive: true });
  writeFileSync(join(folder, "secret.txt"), "outside");
  writeFileSync(join(folder, "site-other.html"), "outside");
  writeFileSync(join(folder, "site/index.html"), "<!doctype html>start");
  writeFileSync(join(folder, "site/serviceWorker.js"), "1");
  writeFileSync(join(folder, "site/manifest.webmanifest"), "{}");
  writeFileSync(join(folder, "site/assets/a-123.js"), "2");
  server = createStaticServer(join(folder, "site"));
  port = await listenLocally(server, 0);
});

afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

/** Sends the path as it stands: fetch() would tidy "/../" away before sending. */
function get(path: string, method = "GET") {
  return new Promise<{ status: number; headers: Record<string, unknown>; body: string }>(
    (done, failed) => {
      const sent = request({ port, path, method, host: "127.0.0.1" }, (response) => {
        let body = "";
        response.setEncoding("utf8");
        response.on("data", (part: string) => {
          body += part;
        });
        response.on("end", () =>
          done({ status: response.statusCode ?? 0, headers: response.headers, body }),
        );
      });
      sent.on("error", failed);
      sent.end();
    },
  );
}

describe("the static server", () => {
  it("answers / with the page, asked for anew each time", async () => {
    const page = await get("/");
    expect(page.status).toBe(200);
    expect(page.body).toContain("start");
    expect(page.headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(page.headers["cache-control"]).toBe("no-cache");
    expect(page.headers["x-content-type-options"]).toBe("nosniff");
  });

  it("asks for the service worker and the manifest anew, with their types", async () => {
    const worker = await get("/serviceWorker.js");
    expect(worker.headers["content-type"]).toBe("text/javascript; charset=utf-8");
    expect(worker.headers["cache-control"]).toBe("no-cache");
    const manifest = await get("/manifest.webmanifest?x=1");
    expect(manifest.headers["content-type"]).toBe("application/manifest+json; charset=utf-8");
  });

  it("lets files with a hash in their name be kept for good", async () => {
    expect((await get("/assets/a-123.js")).headers["cache-control"]).toContain("immutable");
  });

  it("answers HEAD without a body and refuses every other method", async () => {
    expect(await get("/", "HEAD")).toMatchObject({ status: 200, body: "" });
    expect((await get("/", "POST")).status).toBe(405);
  });

  // Path traversal as catalogued by CWE-22: dot segments, encoded, and a folder with the same start.
  it.each([
    "/../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/secret.txt",
    "/assets/../../secret.txt",
    "/..%5csecret.txt",
    "/../site-other.html",
    "/index.html%00.png",
    "/assets/",
    "/none.js",
  ])("gives nothing for %s", async (path) => {
    const answer = await get(path);
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain("outside");
  });

  it("says that an address that cannot be decoded cannot be read", async () => {
    expect((await get("/%E0%A4%A")).status).toBe(400);
  });

  it("serves below a path and nothing above it", async () => {
    const below = createStaticServer(join(folder, "site"), "/workshop/stopfit/");
    const own = await listenLocally(below, 0);
    try {
      expect((await fetch(`http://127.0.0.1:${own}/workshop/stopfit/`)).status).toBe(200);
      expect((await fetch(`http://127.0.0.1:${own}/index.html`)).status).toBe(404);
    } finally {
      below.close();
    }
  });
});

describe("the port", () => {
  it("is the next free one when the usual one is taken, and taken ones are refused when asked for", async () => {
    const taken = createServer();
    const usual = await new Promise<number>((done) => {
      taken.listen(0, "127.0.0.1", () => done((taken.address() as AddressInfo).port));
    });
    const next = createStaticServer(folder);
    try {
      await expect(listenLocally(createStaticServer(folder), usual)).rejects.toThrow(/EADDRINUSE/);
      expect(await listenLocally(next, usual, true)).toBeGreaterThan(usual);
    } finally {
      taken.close();
      next.close();
    }
  });
});
