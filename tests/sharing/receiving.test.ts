import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { inModelUnits } from "../../src/physics/sentence.ts";
import { recordBounds } from "../../src/records/check/recordFormat.ts";
import { checkFile, fileToShare } from "../../src/sharing/checkFile.ts";
import { onLaunchedFiles } from "../../src/sharing/launchedFiles.ts";
import { checkOfText, readFileContent } from "../../src/sharing/receivedFile.ts";
import { shareLink } from "../../src/sharing/shareLink.ts";
import { isShare, takeReceived, takeShare } from "../../src/sharing/shareTarget.ts";
import { anyRecord } from "../records/arbitraries.ts";

/** As much of the browser's caches as is used. */
function fakeCaches(): CacheStorage {
  const responses = new Map<string, Response>();
  const cache = {
    put: async (key: URL, response: Response) => {
      responses.set(String(key), response);
    },
    match: async (key: Request) => responses.get(key.url)?.clone(),
    keys: async () => [...responses.keys()].map((url) => new Request(url)),
    delete: async (key: Request) => responses.delete(key.url),
  };
  return { open: async () => cache } as unknown as CacheStorage;
}

const scope = "https://stopfit.example/app/";
const action = `${scope}receive`;
const post = (form: FormData) => new Request(action, { method: "POST", body: form });
const [record] = fc.sample(anyRecord, { numRuns: 1, seed: 3 });
if (record === undefined) throw new Error("no record");

describe("a file that was shared", () => {
  it("gives the very same record, photos too", async () => {
    await fc.assert(
      fc.asyncProperty(anyRecord, async (some) => {
        const read = await readFileContent(fileToShare(checkFile(some)));
        if (!read.ok) throw new Error(read.fault.code);
        const { what, text } = read.value;
        const whole = typeof text === "string" ? text : await text.text();
        expect(checkOfText({ what, text: whole })).toEqual({
          ok: true,
          value: { record: some, photosLeftOut: 0 },
        });
      }),
      { numRuns: 60 },
    );
  });

  it("is plain text by type and name, because browsers share no JSON", () => {
    const file = fileToShare(checkFile(record));
    expect(file.type).toBe("text/plain");
    expect(file.name).toBe(checkFile(record).name.replace(/json$/, "txt"));
  });

  it("is not read where it is larger than any check", async () => {
    const file = new File(["{}"], "big.txt");
    Object.defineProperty(file, "size", { value: recordBounds.textCharacters * 30 });
    Object.defineProperty(file, "text", { value: () => Promise.reject(new Error("was read")) });
    expect(await readFileContent(file)).toMatchObject({
      ok: false,
      fault: { code: "fileTooLarge" },
    });
  });

  it("is read no further than its beginning where it is no record, and longer than any message", async () => {
    const read = async (text: string) => {
      const outcome = await readFileContent(new File([text], "long.txt"));
      if (!outcome.ok) return outcome.fault.code;
      const content = outcome.value.text;
      return typeof content === "string" ? content.length : `${content.size} bytes`;
    };
    expect(await read("\n".repeat(2_000_001))).toBe("noCheckInText");
    expect(await read("\n".repeat(2_000_000))).toBe("2000000 bytes");
    // A byte order mark takes three.
    expect(await read(`\ufeff {${" ".repeat(2_000_001)}`)).toBe("2000006 bytes");
    expect(await read("\n".repeat(1_000_000))).toBe(1_000_000);
  });

  it("that cannot be read is a sentence", async () => {
    const file = new File(["{}"], "gone.txt");
    Object.defineProperty(file, "text", { value: () => Promise.reject(new Error("gone")) });
    const outcome = await readFileContent(file);
    expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toContain("“gone.txt”");
  });
});

describe("a received text", () => {
  it("is a record, a link or a bare payload", () => {
    const link = shareLink({ ...record, photos: [] }, scope);
    if (!link.ok) throw new Error("no link");
    const { address } = link.value;
    for (const text of [address, `See ${address}.`, address.split("#/open/")[1] ?? ""]) {
      expect(checkOfText({ what: "The text", text })).toMatchObject({
        ok: true,
        value: { record: { id: record.id } },
      });
    }
  });

  it("ends in an outcome whatever it is", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const outcome = checkOfText({ what: "The text", text });
        expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toMatch(/^\S/);
      }),
    );
  });
});

describe("what another program shares with the installed app", () => {
  it("is known by its address and method", () => {
    expect(isShare(new Request(action, { method: "POST" }), scope)).toBe(true);
    expect(isShare(new Request(`${action}?x=1`, { method: "POST" }), scope)).toBe(true);
    expect(isShare(new Request(action), scope)).toBe(false);
    expect(isShare(new Request(`${scope}receive/x`, { method: "POST" }), scope)).toBe(false);
  });

  it("is kept until the page takes it, once, and then shown there", async () => {
    const caches = fakeCaches();
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
    const caches = fakeCaches();
    const form = new FormData();
    form.append("text", "x".repeat(2_000_001));
    form.append("title", "a title");
    await takeShare(post(form), caches, scope);
    const files = await takeReceived(caches);
    expect(await Promise.all(files.map((file) => file.text()))).toEqual(["a title"]);
  });

  it("is left out where it is more, all together, than a phone should hold for a stranger", async () => {
    const caches = fakeCaches();
    const file = (name: string, size: number) =>
      Object.defineProperty(new File(["x"], name), "size", { value: size });
    const files = [
      file("large", 150_000_000),
      file("too much", 60_000_000),
      file("the rest", 50_000_000),
      file("one more", 1),
    ];
    const form = files.map((each) => ["check", each]);
    const request = { formData: async () => form } as unknown as Request;
    await takeShare(request, caches, scope);
    const kept = await takeReceived(caches);
    expect(kept.map(({ name }) => name)).toEqual(["large", "the rest"]);
  });

  it("takes the place of what was shared before and never looked at", async () => {
    const caches = fakeCaches();
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
    expect((await takeShare(broken, fakeCaches(), scope)).status).toBe(303);
    const refusing = { open: () => Promise.reject(new Error("full")) } as unknown as CacheStorage;
    const form = new FormData();
    form.append("text", "x");
    expect((await takeShare(post(form), refusing, scope)).status).toBe(303);
    expect(await takeReceived(refusing)).toEqual([]);
    expect(await takeReceived(undefined)).toEqual([]);
  });
});

describe("files that the device opens the app with", () => {
  afterEach(() => vi.unstubAllGlobals());

  it("are read from the launch queue, without those that cannot be", async () => {
    let launch: (params: unknown) => void = () => undefined;
    const setConsumer = (consumer: (params: unknown) => void) => {
      launch = consumer;
    };
    vi.stubGlobal("launchQueue", { setConsumer });
    const take = vi.fn<(files: readonly File[]) => void>();
    onLaunchedFiles(take);
    const file = new File(["{}"], "check.json");
    launch({ files: [] });
    launch({});
    launch({
      files: [
        { getFile: () => Promise.resolve(file) },
        { getFile: () => Promise.reject(new Error("gone")) },
      ],
    });
    await vi.waitFor(() => expect(take).toHaveBeenCalledTimes(1));
    expect(take).toHaveBeenCalledWith([file]);
  });

  it("are none where the browser has no launch queue", () => {
    const take = vi.fn();
    onLaunchedFiles(take);
    expect(take).not.toHaveBeenCalled();
  });
});
