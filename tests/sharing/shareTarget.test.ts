import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkFile, fileToShare } from "../../src/sharing/checkFile.ts";
import { isShare, takeReceived, takeShare } from "../../src/sharing/shareTarget.ts";
import { anyRecord } from "../records/arbitraries.ts";
import { fakeCaches } from "../support/fakeCaches.ts";

const scope = "https://stopfit.example/app/";
const action = `${scope}receive`;
const post = (form: FormData) => new Request(action, { method: "POST", body: form });
const [record] = fc.sample(anyRecord, { numRuns: 1, seed: 3 });
if (record === undefined) throw new Error("no record");

describe("what another program shares with the installed app", () => {
  it("is known by its address and method", () => {
    expect(isShare(new Request(action, { method: "POST" }), scope)).toBe(true);
    expect(isShare(new Request(`${action}?x=1`, { method: "POST" }), scope)).toBe(true);
    expect(isShare(new Request(action), scope)).toBe(false);
    expect(isShare(new Request(`${scope}receive/x`, { method: "POST" }), scope)).toBe(false);
  });

  it("is kept until the page takes it, once, and then shown there", async () => {
    const caches = fakeCaches().caches;
    const form = new FormData();
    form.append("check", fileToShare(checkFile(record)));
    form.append("check", new File(["second"], "zweite Prüfung.txt", { type: "text/plain" }));
    form.append("text", "a link");
    form.append("title", " ");
    form.append("unknown", "left out");
    const response = await takeShare(post(form), caches, scope);
    expect(response.status).toBe(303);
    expect(response.headers.get("location")).toBe(`${scope}#/received`);
    const files = await takeReceived(caches);
    expect(files.map(({ name }) => name)).toEqual([
      fileToShare(checkFile(record)).name,
      "zweite Prüfung.txt",
      "",
    ]);
    expect(await files[0]?.text()).toBe(checkFile(record).text);
    expect(await files[2]?.text()).toBe("a link");
    expect(await takeReceived(caches)).toEqual([]);
  });

  it("is left out where it is a text far longer than any message", async () => {
    const caches = fakeCaches().caches;
    const form = new FormData();
    form.append("text", "x".repeat(2_000_001));
    form.append("title", "a title");
    await takeShare(post(form), caches, scope);
    const files = await takeReceived(caches);
    expect(await Promise.all(files.map((file) => file.text()))).toEqual(["a title"]);
  });

  it("is kept where it is a text just as long as allowed", async () => {
    const caches = fakeCaches().caches;
    const form = new FormData();
    form.append("url", "x".repeat(2_000_000));
    await takeShare(post(form), caches, scope);
    expect((await takeReceived(caches)).map(({ size }) => size)).toEqual([2_000_000]);
  });

  it("is twenty files and texts at most, each under its own field, and none that is empty", async () => {
    const caches = fakeCaches().caches;
    const form = new FormData();
    form.append("check", new File([], "empty.txt"));
    form.append("photo", new File(["x"], "foreign.txt"));
    for (let number = 1; number <= 21; number += 1) {
      form.append("check", new File(["x"], `${number}.txt`));
    }
    await takeShare(post(form), caches, scope);
    const names = (await takeReceived(caches)).map(({ name }) => name);
    expect(names).toEqual(Array.from({ length: 20 }, (_, index) => `${index + 1}.txt`));
  });

  it("is handed to the page as plain text, whatever type it came with", async () => {
    const { caches, types } = fakeCaches();
    const form = new FormData();
    form.append("check", new File(["<b>"], "page.html", { type: "text/html" }));
    form.append("title", "words");
    await takeShare(post(form), caches, scope);
    expect(types()).toEqual(["text/plain; charset=utf-8", "text/plain; charset=utf-8"]);
    const files = await takeReceived(caches);
    expect(files.map(({ type }) => type)).toEqual(["text/plain", "text/plain"]);
  });

  it("has no name where it came with none, or with one that can't be read", async () => {
    const { caches, keep } = fakeCaches();
    await keep(`${scope}received/0`, new Response("a"));
    await keep(`${scope}received/1`, new Response("b", { headers: { "x-name": "%E0%A4%A" } }));
    expect((await takeReceived(caches)).map(({ name }) => name)).toEqual(["", ""]);
  });

  it("is left out where it is more, all together, than a phone should hold for a stranger", async () => {
    const caches = fakeCaches().caches;
    const file = (name: string, size: number) =>
      Object.defineProperty(new File(["x"], name), "size", { value: size });
    const files = [
      file("large", 150_000_000),
      file("too much", 60_000_000),
      file("the rest", 50_000_000),
      file("one more", 1),
    ];
    const form = [["text", "words before them"], ...files.map((each) => ["check", each])];
    const request = { formData: async () => form } as unknown as Request;
    await takeShare(request, caches, scope);
    const kept = await takeReceived(caches);
    expect(kept.map(({ name }) => name)).toEqual(["", "large", "the rest"]);
  });

  it("takes the place of what was shared before and never looked at", async () => {
    const caches = fakeCaches().caches;
    for (const text of ["one", "two"]) {
      const form = new FormData();
      form.append("text", text);
      await takeShare(post(form), caches, scope);
    }
    const files = await takeReceived(caches);
    expect(await Promise.all(files.map((file) => file.text()))).toEqual(["two"]);
  });

  it("leads to the page also where it cannot be read or kept", async () => {
    const broken = new Request(action, {
      method: "POST",
      body: "not a form",
      headers: { "content-type": "multipart/form-data; boundary=x" },
    });
    expect((await takeShare(broken, fakeCaches().caches, scope)).status).toBe(303);
    const refusing = { open: () => Promise.reject(new Error("full")) } as unknown as CacheStorage;
    const form = new FormData();
    form.append("text", "x");
    expect((await takeShare(post(form), refusing, scope)).status).toBe(303);
    expect(await takeReceived(refusing)).toEqual([]);
    expect(await takeReceived(undefined)).toEqual([]);
  });
});
