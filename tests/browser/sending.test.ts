import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import { version } from "../../package.json";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { shareLink } from "../../src/sharing/shareLink.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { tinyPhoto } from "../support/pictures.ts";
import { axeViolations } from "./support/axe.ts";
import { CardSheet } from "./support/cardSheet.ts";
import { downloadedRecord } from "./support/checkList.ts";
import { pick } from "./support/controls.ts";
import { writeFilm } from "./support/fakeCamera.ts";
import { launchShell, Phone, type PhoneOptions } from "./support/phone.ts";
import { Site } from "./support/site.ts";
import { storedChecks } from "./support/storage.ts";

const demo = demoRecord("axle-towing-early");
/** Words that do not compress: enough of them for several codes. */
const notes = Array.from({ length: 90 }, (_, n) => (crc32(new Uint8Array([n])) >>> 0).toString(36));
const long: CheckRecord = { ...demo, notes: notes.join(" ") };
const photo = tinyPhoto;

let browser: Browser;
let site: Site;
let sender: Phone;
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "stopfit-sending-"));
  browser = await launchShell();
});

afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

beforeEach(async () => {
  site = new Site("/workshop/stopfit/");
  await site.publish(inject("dist"));
  sender = await Phone.open(browser, { bypassCSP: true });
});

/** Another phone in place of the sender's. */
async function changeSender(options: PhoneOptions): Promise<void> {
  await sender.close();
  sender = await Phone.open(browser, { bypassCSP: true, ...options });
}

afterEach(async () => {
  await sender.close();
  await site.close();
});

function linkTo(record: CheckRecord): string {
  const link = shareLink(record, site.address);
  if (!link.ok) throw new Error(link.fault.code);
  return link.value.address;
}

/** The check on this phone, by way of a file, and its sheet for sending open. */
async function sheetFor(record: CheckRecord): Promise<Page> {
  const page = await sender.newPage();
  await page.goto(`${site.address}#/open`);
  const buffer = Buffer.from(JSON.stringify(record));
  await page
    .getByLabel("Files to open")
    .setInputFiles({ name: "check.json", mimeType: "application/json", buffer });
  await page.getByRole("button", { name: /^(Save on this phone|Save both)$/ }).click();
  await page.waitForURL(/#\/check\//);
  await page.goto(`${site.address}#/check/${record.id}/answer`);
  await page.getByRole("button", { name: "Send", exact: true }).click();
  await page.getByRole("heading", { name: "Send this check" }).waitFor();
  return page;
}

/** What a person put into a record: each phone that shows its answer notes what it advised. */
function typedOf<Fields extends object>({ advised: _, ...record }: Fields & { advised?: unknown }) {
  return record;
}

/** Keeps what is shown there, and gives back the record of it as it is stored then, without the phone's advice. */
async function keepShown(page: Page, id: string): Promise<unknown> {
  await page.getByRole("heading", { name: "A check was sent to you" }).waitFor();
  await page.getByRole("button", { name: /^Save/ }).click();
  await page.waitForURL(/#\/check\//);
  const records = (await storedChecks(page)).map(({ record }) => record);
  const kept = records.filter((record) => record.id === id).at(-1);
  return kept && typedOf(kept);
}

/** A phone without the demo checks, so that a check that arrives is a new one. */
async function emptyPhone(
  from: Browser = browser,
  options: PhoneOptions = {},
): Promise<{ phone: Phone; page: Page }> {
  const phone = await Phone.open(from, { bypassCSP: true, ...options });
  const page = await phone.newPage();
  return { phone, page };
}

const { photos: _, ...withoutPhotos } = { ...demo, photos: [photo] };
const fresh = (record: CheckRecord): CheckRecord => ({ ...record, id: crypto.randomUUID() });

describe("a check goes from phone to phone as the very same record", () => {
  it("as a file, with its photos", async () => {
    const record: CheckRecord = { ...fresh(demo), photos: [photo, photo] };
    const page = await sheetFor(record);
    await page.getByText("Everything in one file, the 2 photos too.").waitFor();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save the file" }).click(),
    ]);
    const saved = await downloadedRecord(download);
    expect(typedOf(saved.record)).toEqual(record);
    const { phone, page: other } = await emptyPhone();
    await other.goto(`${site.address}#/open`);
    await other.getByLabel("Files to open").setInputFiles(saved.file);
    expect(await keepShown(other, record.id)).toEqual(record);
    phone.expectNoTrouble();
    sender.expectNoTrouble();
    await phone.close();
  });

  it("as a link that no server sees, its photos left out only with a word", async () => {
    const record: CheckRecord = { ...fresh(withoutPhotos), photos: [photo] };
    const page = await sheetFor(record);
    await sender.context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await pick(page.getByRole("radio", { name: "Link" }));
    await page.getByText(/The photo does not fit in a link and stays behind/).waitFor();
    await page.getByRole("button", { name: "Copy the link" }).click();
    await page.getByText("The link is copied.").waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    const { phone, page: other } = await emptyPhone(browser, { offlineCopy: true });
    await other.goto(link);
    await other.getByText("One photo was left out").waitFor();
    await other.getByText(/^(It fits|Fits, with a warning|It doesn't fit|Not sure yet)$/).waitFor();
    const payload = new URL(link).hash.slice(8, 60);
    expect(phone.requested.join("\n")).not.toContain(payload);
    expect(phone.strangers(site.origin)).toEqual([]);
    const { photos: _photos, ...expected } = record;
    expect(await keepShown(other, record.id)).toEqual(expected);
    expect(other.url()).not.toContain(payload);
    await phone.close();
  });

  it.each([
    ["one code", demo, 1],
    ["numbered codes", long, 2],
  ])("as %s before another phone's camera", async (name, sent, least) => {
    const record = fresh(sent);
    const page = await sheetFor(record);
    await pick(page.getByRole("radio", { name: "Code" }));
    // Once the advice is there, nothing above the picture moves it any more.
    await page.getByText("What Stopfit advised is not in the code").waitFor();
    const shots: { png: Buffer; codePixels: number }[] = [];
    const picture = page.locator(".code-picture");
    await picture.waitFor();
    const count = (await page.getByText(/^Code 1 of/).count())
      ? Number((await page.getByText(/^Code 1 of/).textContent())?.split(" of ")[1])
      : 1;
    expect(count).toBeGreaterThanOrEqual(least);
    for (let number = 1; number <= count; number += 1) {
      const box = await picture.boundingBox();
      expect(box?.width).toBeGreaterThanOrEqual(320);
      shots.push({ png: await picture.screenshot(), codePixels: 330 });
      if (count > 1) await page.getByRole("button", { name: "Next" }).click();
    }
    const film = join(folder, `${name}.y4m`);
    const projector = await sender.newPage();
    await writeFilm(projector, film, shots);

    const watching = await launchShell([
      "--use-fake-ui-for-media-stream",
      "--use-fake-device-for-media-stream",
      `--use-file-for-fake-video-capture=${film}`,
    ]);
    const { phone, page: other } = await emptyPhone(watching);
    await phone.context.grantPermissions(["camera"]);
    await other.goto(`${site.address}#/scan`);
    await other.getByLabel("What the camera sees").waitFor();
    expect(await keepShown(other, record.id)).toEqual(record);
    phone.expectNoTrouble();
    await phone.close();
    await watching.close();
  });

  it("as a picture of a code, where the camera is refused", async () => {
    const record = fresh(demo);
    const page = await sheetFor(record);
    await pick(page.getByRole("radio", { name: "Code" }));
    // Once the advice is there, nothing above the picture moves it any more.
    await page.getByText("What Stopfit advised is not in the code").waitFor();
    const png = await page.locator(".code-picture").screenshot();
    const { phone, page: other } = await emptyPhone();
    await other.goto(`${site.address}#/scan`);
    await other.getByText(/You can use a picture of the code instead/).waitFor();
    await other
      .getByLabel("Pictures of codes")
      .setInputFiles({ name: "code.png", mimeType: "image/png", buffer: png });
    expect(await keepShown(other, record.id)).toEqual(record);
    await phone.close();
  });
});

describe("what is no sound check harms nothing", () => {
  it.each([
    ["a cut link", () => linkTo(demo).slice(0, -60), /cut short: \d+ of \d+ characters/],
    [
      "a link that unpacks to far more than a check",
      () => {
        const body = new Uint8Array(deflateRawSync(Buffer.alloc(25_000_000), { level: 9 }));
        const frame = { photosLeftOut: 0, parts: 1, part: 0, mark: crc32(body), body };
        return `${site.address}#/open/${payloadText(frame, "letters")}`;
      },
      /unpacks to more than 1 MB/,
    ],
    ["a link of a newer version", () => `${site.address}#/open/9bAAAA`, /newer version of Stopfit/],
    ["no link at all", () => `${site.address}#/open/hello`, /holds no check/],
  ])("%s is a sentence", async (_name, address, words) => {
    const page = await sender.newPage();
    await page.goto(address());
    await page.getByText(words).waitFor();
    await page.getByRole("button", { name: "Choose a file" }).waitFor();
    sender.expectNoTrouble();
  });

  it("a script in its texts is shown as text", async () => {
    const label = "<img src=x onerror=document.title='harmed'><script>1</script>";
    const page = await sender.newPage();
    await page.goto(linkTo({ ...fresh(demo), vehicle: { ...demo.vehicle, label } }));
    await page.getByText(label).waitFor();
    expect(await page.title()).not.toContain("harmed");
    sender.expectNoTrouble();
  });
});

describe("what another program shares with the installed app", () => {
  it("is taken by the service worker, without a signal, and shown", async () => {
    await changeSender({ offlineCopy: true });
    const record = fresh(demo);
    const page = await sender.newPage();
    await page.goto(site.address);
    await page.getByText(`Ready offline · version ${version}`).waitFor();
    await sender.goOffline();
    await site.close();
    const landed = await page.evaluate(async (text) => {
      const form = new FormData();
      form.append("check", new File([text], "check.txt", { type: "text/plain" }));
      const response = await fetch("receive", { method: "POST", body: form, redirect: "manual" });
      return response.type;
    }, JSON.stringify(record));
    expect(landed).toBe("opaqueredirect");
    await page.goto(`${site.address}#/received`);
    await page.getByRole("heading", { name: "Something was sent to Stopfit" }).waitFor();
    await page.getByRole("button", { name: "Look at it" }).click();
    expect(await keepShown(page, record.id)).toEqual(record);
    await page.goto(`${site.address}#/received`);
    await page.getByText("Nothing was received").waitFor();
  });
});

describe("every screen of it", () => {
  it.each(["light", "dark"] as const)("is without fault by axe, in %s", async (colorScheme) => {
    await changeSender({ colorScheme });
    const page = await sheetFor({ ...fresh(long), photos: [photo] });
    for (const way of ["File", "Link", "Code"]) {
      await pick(page.getByRole("radio", { name: way }));
      expect([way, await axeViolations(page)]).toEqual([way, []]);
    }
    for (const [place, ready] of [
      [`${site.address}#/open`, "Open a check"],
      [`${site.address}#/scan`, "Scan a code"],
      [linkTo(fresh(demo)), "A check was sent to you"],
      [linkTo(demo).slice(0, -60), "Open a check"],
    ] as const) {
      await page.goto(place);
      await page.getByRole("heading", { name: ready }).waitFor();
      expect([place, await axeViolations(page)]).toEqual([place, []]);
    }
  });

  it("has nothing to tap that is smaller than 48 px", async () => {
    const page = await sheetFor(fresh(long));
    const small = () =>
      page.evaluate(() => {
        const within = document.querySelector("dialog[open]") ?? document;
        const targets = within.querySelectorAll<HTMLElement>(
          "button, a[href], summary, textarea, .segmented label",
        );
        return [...targets]
          .filter((target) => target.checkVisibility())
          .map((target) => ({ target, box: target.getBoundingClientRect() }))
          .filter(({ box }) => box.height < 48 || box.width < 48)
          .map(({ target, box }) => `${target.textContent} ${box.width} × ${box.height}`);
      });
    for (const way of ["File", "Link", "Code"]) {
      await pick(page.getByRole("radio", { name: way }));
      expect([way, await small()]).toEqual([way, []]);
    }
    for (const place of [`${site.address}#/open`, `${site.address}#/scan`, linkTo(fresh(demo))]) {
      await page.goto(place);
      await page.getByRole("heading", { level: 1 }).waitFor();
      expect([place, await small()]).toEqual([place, []]);
    }
  });
});

it("a card without a signal: chosen photos, one page on paper, and a picture whose code is the check", async () => {
  const captions = ["Left pad", "Right pad", "Tape at the gap", "Door label"];
  const record: CheckRecord = {
    ...fresh(demoRecord("arm-fits")),
    photos: captions.map((caption) => ({ ...photo, caption })),
  };
  await changeSender({ offlineCopy: true });
  const first = await sender.newPage();
  await first.goto(site.address);
  await first.getByText(`Ready offline · version ${version}`).waitFor();
  await first.close();
  const page = await sheetFor(record);
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await sender.goOffline();
  const card = await new CardSheet(page).open();
  expect(await card.photos.evaluateAll(altsOf)).toEqual(captions.slice(0, 3));
  await card.choosePhoto("Right pad");
  await card.choosePhoto("Door label");
  const wanted = ["Left pad", "Tape at the gap", "Door label"];
  await expect.poll(() => card.photos.evaluateAll(altsOf)).toEqual(wanted);
  expect(await axeViolations(page)).toEqual([]);
  const paper = (await page.pdf({ format: "Letter" })).toString("latin1");
  expect(paper.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
  const picture = readFileSync(await card.savedPicture());
  expect(picture.readUInt32BE(16)).toBe(1080);
  sender.expectNoTrouble();
  await sender.context.setOffline(false);

  const { photos: _, ...without } = record;
  expect((await card.code.boundingBox())?.width).toBeGreaterThanOrEqual(200);
  expect(await scannedFrom(await card.code.screenshot(), record.id)).toEqual(without);
  const shown = await sender.newPage();
  await shown.setContent(
    `<meta name="viewport" content="width=device-width"><body style="margin:0"><img width="360" src="data:image/png;base64,${picture.toString("base64")}">`,
  );
  const onPhone = await shown.locator("img").screenshot();
  expect(onPhone.readUInt32BE(16)).toBe(720);
  expect(await scannedFrom(onPhone, record.id)).toEqual(without);
});

/** The check whose code a picture shows, as a phone keeps it that has scanned it. */
async function scannedFrom(picture: Buffer, id: string): Promise<unknown> {
  const { phone: receiver, page } = await emptyPhone();
  await page.goto(`${site.address}#/scan`);
  await page
    .getByLabel("Pictures of codes")
    .setInputFiles({ name: "card.png", mimeType: "image/png", buffer: picture });
  const kept = await keepShown(page, id);
  receiver.expectNoTrouble();
  await receiver.close();
  return kept;
}

function altsOf(pictures: (HTMLElement | SVGElement)[]): (string | null)[] {
  return pictures.map((picture) => picture.getAttribute("alt"));
}
