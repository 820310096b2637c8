import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { version } from "../../package.json";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { codeSeries } from "../../src/sharing/codeSeries.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { holdsMetadata, jpegWithPlace, withPlace } from "../support/jpegs.ts";
import { plainPng } from "../support/pictures.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { pick, textOf } from "./support/controls.ts";
import { DeskPage } from "./support/deskPage.ts";
import type { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import {
  backupFile,
  backupText,
  changeRows,
  codePicture,
  jsonFile,
  launchWith,
  rowsOf,
  Stranger,
} from "./support/stranger.ts";

/*
 * What a stranger can send, tried on the built app. Everything is written as the first version of the record,
 * so that the same attacks can be made on releases before there was a door (STOPFIT_DIST=folder).
 */

const stage = phoneOnSite();
let site: string;
let phone: Phone;
let page: Page;

beforeEach(async () => {
  site = stage.site.address;
  phone = stage.phone;
  page = await phone.newPage();
});

type Sent = { [field: string]: unknown };

/** A demo check as its file has it. */
function sent(name: "arm-fits" | "arm-needs-taller" | "axle-towing-early"): Sent {
  return JSON.parse(readFileSync(`demo-data/checks/${name}.json`, "utf8")) as Sent;
}

const half = "\ud83d";
const cannotBeShown = () => page.getByText("This screen can't be shown");

async function storedNames(): Promise<string[]> {
  const rows = await rowsOf<{ name: string }>(page, "stopfit", "checks");
  return rows.map(({ name }) => name);
}

function heading(name: string | RegExp): Locator {
  return page.getByRole("heading", { level: 1, name });
}

/** The screen with a heading that is looked for no longer than a screen takes to come. */
async function expectHeading(name: string | RegExp): Promise<void> {
  await heading(name).or(cannotBeShown()).first().waitFor();
  expect(await cannotBeShown().count()).toBe(0);
}

async function openFile(file: ReturnType<typeof jsonFile>): Promise<void> {
  await page.goto(`${site}#/open`);
  await page.getByLabel("Files to open").setInputFiles(file);
}

async function keepFile(file: ReturnType<typeof jsonFile>): Promise<void> {
  await openFile(file);
  await page.getByRole("button", { name: /^Save (on this phone|both)/ }).click();
  await page.waitForURL(/#\/check\/[^/]+\//);
}

/** Chooses a backup by hand; earlier releases restored it at once. */
async function restore(file: ReturnType<typeof backupFile>): Promise<void> {
  await page.goto(`${site}#/kept`);
  await page.getByLabel("Backup to restore").setInputFiles(file);
  const restored = page.getByText(/^(Restored: |Nothing )/).first();
  const asked = page.getByRole("button", { name: "Restore", exact: true });
  const ended = restored.or(cannotBeShown()).first();
  await ended.or(asked).first().waitFor();
  if (await asked.isVisible()) await asked.click();
  await ended.waitFor();
}

describe("1: a foreign page's form, and an id that is no text", () => {
  const planted = { ...storedFromRecord(sent("arm-fits") as never), name: "Planted", id: half };
  const line = { kind: "check", check: planted };

  it("changes nothing without two taps, and locks nobody out", async () => {
    phone = await stage.changePhone({ offlineCopy: true });
    page = await phone.newPage();
    await page.goto(site);
    await page.getByText(`Ready offline · version ${version}`).or(heading(/./)).first().waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready);
    const stranger = new Stranger(site, backupText(line), "holiday\u202etxt.gnp");
    await page.goto(await stranger.open());
    const arrived = heading("Something was sent to Stopfit");
    await arrived
      .or(page.getByText(/^Restored/))
      .or(cannotBeShown())
      .first()
      .waitFor();
    expect(await storedNames()).not.toContain("Planted");
    await page.getByText("holidaytxt.gnp").waitFor();
    await page.getByRole("button", { name: "Look at it" }).click();
    await page.getByText("What is in this backup").waitFor();
    expect(await storedNames()).not.toContain("Planted");
    await page.getByRole("button", { name: "Restore", exact: true }).click();
    await page.getByText("Restored: 1 added.").waitFor();
    expect(await storedNames()).toContain("Planted");
    await page.goto(site);
    await page.reload();
    await page.locator("a.check-link").filter({ hasText: "Planted" }).click();
    await expectHeading(/./);
    await stranger.close();
    phone.expectNoTrouble();
  });

  it("chosen by hand, is in the list after a reload, and the backup screen opens", async () => {
    await restore(backupFile(line));
    for (const [address, name] of [
      ["#/", "Checks on this phone"],
      ["#/kept", /./],
    ] as const) {
      await page.goto(`${site}${address}`);
      await page.reload();
      await expectHeading(name);
    }
    await page.goto(site);
    await page.locator("a.check-link").filter({ hasText: "Planted" }).waitFor();
    phone.expectNoTrouble();
  });
});

describe("2: a backup among files dropped at a desk", () => {
  const record = sent("arm-needs-taller");
  const old = { ...record, notes: "before" };
  const submission = {
    kind: "submission",
    text: JSON.stringify(old),
    receivedAt: "9999-12-31T23:59:59.000Z",
    way: "file",
    photosLeftOut: 0,
  };

  /** A desk with the check, and a decision about it that nobody there made. */
  async function deskAndDecision() {
    const desk = await new DeskPage(page).open(site);
    await desk.takeFiles(jsonFile("check.json", record));
    const [{ key = "" } = {}] = await rowsOf<{ key?: string }>(page, "stopfit-desk", "submissions");
    const decision = {
      key: "planted",
      checkId: record.id,
      submission: key,
      kind: "accept",
      by: "The shop",
      at: "2099-01-01T00:00:00.000Z",
      note: "",
    };
    await desk.closeImport();
    return { desk, decision };
  }

  it("decides nothing, and what it dates ahead does not stay the newest", async () => {
    const { desk, decision } = await deskAndDecision();
    await page
      .getByLabel("Files to take in")
      .setInputFiles(backupFile({ kind: "decision", decision }, submission));
    const asked = page.getByRole("button", { name: "See what is in it" });
    await asked.or(page.locator('[data-import="ended"]')).first().waitFor();
    expect(await rowsOf(page, "stopfit-desk", "decisions")).toEqual([]);
    expect(await desk.row("Accepted").count()).toBe(0);
    // Restored by a tap, without its decisions.
    await asked.click();
    await page.getByText("1 decision of a review desk").waitFor();
    await page.getByRole("button", { name: "Restore", exact: true }).click();
    await page.getByText(/^Restored: /).waitFor();
    expect(await rowsOf(page, "stopfit-desk", "decisions")).toEqual([]);
    const received = await rowsOf<{ receivedAt: string }>(page, "stopfit-desk", "submissions");
    expect(received.map(({ receivedAt }) => Date.parse(receivedAt) <= Date.now())).toEqual([
      true,
      true,
    ]);
    await desk.open(site);
    await desk.takeFiles(jsonFile("newest.json", { ...record, notes: "newest" }));
    await desk.openCheck("Marlow");
    await page.getByText("Version 3").first().waitFor();
    expect(await page.getByText("newest").count()).toBeGreaterThan(0);
    phone.expectNoTrouble();
  });

  it("decides nothing where the device opens the app with it, and nothing is restored before a tap", async () => {
    const { decision } = await deskAndDecision();
    const opened = await phone.newPage();
    await launchWith(opened, backupText({ kind: "decision", decision }, submission), "planted.txt");
    await opened.goto(site);
    await opened.getByText("What is in this backup").waitFor();
    await opened.getByText("1 decision of a review desk").waitFor();
    expect(await rowsOf(opened, "stopfit-desk", "decisions")).toEqual([]);
    expect(await rowsOf(opened, "stopfit-desk", "submissions")).toHaveLength(1);
    await opened.getByRole("button", { name: "Restore", exact: true }).click();
    await opened.getByText(/^Restored: /).waitFor();
    expect(await rowsOf(opened, "stopfit-desk", "decisions")).toEqual([]);
    phone.expectNoTrouble();
  });

  it("is refused as a code before the desk's camera", async () => {
    const { desk } = await deskAndDecision();
    await page.goto(`${site}#/desk/scan`);
    await page
      .getByRole("button", { name: "Use a picture of the code" })
      .and(page.locator(":enabled"))
      .waitFor();
    const [header = ""] = backupText().split("\n");
    await page.getByLabel("Pictures of codes").setInputFiles(codePicture(header));
    await page.getByText(/This code holds no check/).waitFor();
    expect(await rowsOf(page, "stopfit-desk", "decisions")).toEqual([]);
    await desk.open(site);
    expect(await desk.rows.count()).toBe(1);
    phone.expectNoTrouble();
  });
});

describe("3: a reply", () => {
  it("is not kept without a tap, is shown unverified beside this phone's own verdict, and says that it answers other readings", async () => {
    const record = sent("arm-needs-taller");
    await keepFile(jsonFile("check.json", record));
    const reply = {
      format: "stopfit-reply",
      version: 1,
      id: "r1",
      checkId: record.id,
      answers: "another",
      createdAt: "9999-01-01T00:00:00.000Z",
      from: "The shop\u202e",
      kind: "accept",
      vehicle: "Marlow",
      axle: "front",
      readings: [],
      text: "It fits. Drive on.",
    };
    await openFile(jsonFile("reply.txt", reply));
    await page.getByText("It fits. Drive on.").waitFor();
    expect(await rowsOf(page, "stopfit-desk", "replies")).toEqual([]);
    await page.getByText("What this phone makes of it").waitFor();
    await page.locator('[data-verdict="no"]').waitFor();
    await page.getByText("It answers other readings than those that are here now").waitFor();
    await page.getByText("A file or a link can't prove who wrote it.").waitFor();
    await page.getByRole("button", { name: "Save it with the check" }).click();
    await heading(/^Reply about/).waitFor();
    const [kept] = await rowsOf<{ reply: { createdAt: string } }>(page, "stopfit-desk", "replies");
    expect(Date.parse(kept?.reply.createdAt ?? "")).toBeLessThanOrEqual(Date.now());
    phone.expectNoTrouble();
  });
});

describe("4: a backup that is dated ahead", () => {
  it("replaces nothing that was measured here", async () => {
    const record = sent("arm-fits");
    await keepFile(jsonFile("check.json", record));
    const [corner = {}, ...others] = record.corners as { gap?: object }[];
    const corners = [{ ...corner, gap: { values: [1], tol: 0 } }, ...others];
    const ahead = {
      ...storedFromRecord({ ...record, corners } as never),
      updatedAt: "2099-01-01T00:00:00.000Z",
    };
    await restore(backupFile({ kind: "check", check: ahead }));
    const rows = await rowsOf<{ deletedAt?: string; record: Sent }>(page, "stopfit", "checks");
    const gaps = rows.map(({ record: { corners: of } }) => (of as { gap: object }[])[0]?.gap);
    expect(gaps).toContainEqual(expect.objectContaining(corner.gap ?? {}));
    phone.expectNoTrouble();
  });
});

const lenient = {
  roadClass: "A",
  speedKmPerH: 1,
  allowedContactsPerKm: 1e6,
  accelerationCapG: 1e6,
  events: [{ kind: "landing", heightM: 1e-6 }],
  reserveMm: 0,
  balanceMm: 1000,
};

describe("5: a sender's own demands", () => {
  /** Its own demands would let it fit; its numbers are not what was typed, and it is dated ahead. */
  function claimed(): Sent {
    const record = sent("axle-towing-early");
    const [corner = {}, ...others] = record.corners as { gap?: object }[];
    const gap = { ...corner.gap, typed: ["77 mm"] };
    const rideHeight = { values: [500], tol: 0 };
    const corners = [{ ...corner, gap, rideHeight }, ...others];
    return { ...record, corners, rules: lenient, createdAt: "9999-01-01T00:00:00Z" };
  }

  /** The desk's own verdict in its list, and what it points out in the check. */
  async function expectPointedOut(desk: DeskPage): Promise<void> {
    const row = desk.rows.first();
    await row.waitFor();
    await page.waitForFunction(
      () => !/Not computed|…/.test(document.querySelector('[role="option"]')?.textContent ?? "…"),
    );
    // By its own demands it would fit.
    expect(await textOf(row)).toMatch(/^Take care/);
    await row.click();
    await desk.computed();
    for (const odd of ["typed", "noTolerance", "demand", "date"]) {
      expect([odd, await page.locator(`[data-odd="${odd}"]`).count()]).not.toEqual([odd, 0]);
    }
  }

  it("turn no verdict at a desk, and are pointed out with what else is claimed", async () => {
    const desk = await new DeskPage(page).open(site);
    await desk.takeFiles(jsonFile("check.json", claimed()));
    await expectPointedOut(desk);
    const demands = page.locator("section", {
      has: page.getByRole("heading", { name: "What it is judged by" }),
    });
    expect(await textOf(demands)).toContain("In the check, not used");
    await page.getByRole("link", { name: "Report to print" }).click();
    await page.getByRole("heading", { name: "What it is judged by" }).waitFor();
    expect(await textOf(page.locator("main"))).toContain("In the check, not used");
    phone.expectNoTrouble();
  });

  it("come by codes before the desk's camera, and are pointed out just so", async () => {
    const series = codeSeries(claimed() as never, site);
    if (!series.ok) throw new Error(series.fault.code);
    await page.goto(`${site}#/desk/scan`);
    await page
      .getByRole("button", { name: "Use a picture of the code" })
      .and(page.locator(":enabled"))
      .waitFor();
    await page
      .getByLabel("Pictures of codes")
      .setInputFiles(series.value.codes.map(({ address, digits }) => codePicture(address, digits)));
    await expectPointedOut(new DeskPage(page));
    const [row] = await rowsOf<{ way: string }>(page, "stopfit-desk", "submissions");
    expect(row?.way).toBe("code");
    phone.expectNoTrouble();
  });

  it("come with the app as the device opens it, are judged by this phone's, and wait for a tap", async () => {
    await launchWith(page, JSON.stringify(claimed()), "check.json");
    await page.goto(site);
    await heading("A check was sent to you").waitFor();
    await page.locator('[data-verdict="care"]').waitFor();
    await page.getByText(/more to look at$/).waitFor();
    for (const odd of ["typed", "noTolerance", "demand", "date"]) {
      expect([odd, await page.locator(`[data-odd="${odd}"]`).count()]).not.toEqual([odd, 0]);
    }
    expect(await storedNames()).toEqual([]);
    phone.expectNoTrouble();
  });
});

describe("6: what no screen could show", () => {
  it("half a letter in a name, and a mail address to reply to, after Accept", async () => {
    const record = sent("arm-fits");
    const desk = await new DeskPage(page).open(site);
    await desk.takeFiles(
      jsonFile("check.json", {
        ...record,
        vehicle: { ...(record.vehicle as object), label: `Marlow ${half}` },
        author: { role: "customer", name: half, contact: "m.lind@brant.example" },
      }),
    );
    await desk.openCheck("Marlow");
    await desk.choose("Accept");
    await desk.name("M. Lind");
    await page.getByRole("button", { name: /^Accept/ }).click();
    await desk.decided("accept").or(cannotBeShown()).first().waitFor();
    expect(await cannotBeShown().count()).toBe(0);
    const mail = page.getByRole("link", { name: "Write a mail" });
    expect(await mail.getAttribute("href")).toMatch(/^mailto:m\.lind%40brant\.example\?subject=/);
    phone.expectNoTrouble();
  });

  it("a stop of the pack with such an id", async () => {
    const pack = JSON.parse(readFileSync("demo-data/pack.json", "utf8")) as {
      stops: { id: string; name: string }[];
      platforms: object[];
    };
    const [first, ...others] = pack.stops;
    const name = "Planted stop";
    const stops = [{ ...first, id: half, name }, ...others];
    const platforms = pack.platforms.map((platform) => ({ ...platform, usualStop: half }));
    await page.goto(`${site}#/pack`);
    await page
      .getByLabel("Library to open")
      .setInputFiles(jsonFile("pack.json", { ...pack, stops, platforms }));
    const use = page.getByRole("button", { name: /^Use it instead/ }).first();
    await use.click();
    await page.goto(`${site}#/pack`);
    await page.reload();
    await expectHeading(/demonstration parts/);
    await page.getByRole("link", { name: /^Planted stop/ }).click();
    await expectHeading(/Planted stop/);
    phone.expectNoTrouble();
  });

  it("checks of a backup whose fields are of another kind than any the app writes", async () => {
    const stored = storedFromRecord(sent("arm-fits") as never);
    const sentence = ["Off by ", { kind: "colour", value: 2 }];
    const now = {
      reading: "left.gap",
      before: null,
      tool: null,
      removes: 0.5,
      sentence,
      doubt: null,
    };
    const corners = stored.record.corners.map((corner) => ({
      ...corner,
      limits: [{ kind: "wing", at: "wheel", reading: { values: [50], tol: 1 } }],
    }));
    const variants: readonly (readonly [string, object])[] = [
      ["events", { record: { ...stored.record, rules: { events: 5 } } }],
      ["null event", { record: { ...stored.record, rules: { events: [null] } } }],
      [
        "estimate",
        { record: { ...stored.record, stop: { ...stored.record.stop, estimated: { how: 5 } } } },
      ],
      ["sentence", { again: { level: "unsure", done: [], now, left: 2, just: null } }],
      ["limit", { record: { ...stored.record, corners } }],
    ];
    await restore(
      backupFile(
        ...variants.map(([name, more]) => ({
          kind: "check",
          check: { ...stored, id: `v-${name.replace(" ", "-")}`, name, ...more },
        })),
      ),
    );
    // A reading is taken again by someone who has read the cautions here.
    const progress = { ...stored.progress, cautionsFor: "raised" };
    await changeRows(page, "stopfit", "checks", { progress });
    await page.goto(site);
    await page.reload();
    await expectHeading("Checks on this phone");
    for (const [name] of variants) {
      for (const place of ["answer", "vehicle", "rules", "left.gap", "left.limits.0"]) {
        await page.goto(`${site}#/check/v-${name.replace(" ", "-")}/${place}`);
        await expectHeading(/./);
      }
    }
    phone.expectNoTrouble();
  });
});

describe("7: what would hold the page", () => {
  it("is refused in words, one after another, and nothing is kept", async () => {
    // Thirty megabytes are on their way to the browser for a while.
    page.setDefaultTimeout(100_000);
    const demo = sent("arm-fits");
    const many = Object.fromEntries(Array.from({ length: 490_000 }, (_, at) => [`k${at}`, 1]));
    const body = new Uint8Array(30_000);
    const cut = payloadText({ photosLeftOut: 0, parts: 1, part: 0, mark: 0, body }, "letters");
    const links = Array.from(
      { length: 26_000 },
      (_, at) => `#/open/${cut.slice(0, 50)}${at}\nHello\n`,
    ).join("");
    const corpus: readonly (readonly [string, string, RegExp])[] = [
      ["newlines.txt", "\n".repeat(31_000_000), /holds no check/],
      ["keys.json", JSON.stringify({ ...demo, ...many }), /more than 2000 fields/],
      ["links.txt", links, /Only 50 links are opened at a time/],
      ["deep.json", "[".repeat(1_000_000), /lists within lists/],
      ["twice.json", '{"format":"stopfit-check","format":"x"}', /twice in one place/],
    ];
    for (const [name, text, words] of corpus) {
      await openFile(jsonFile(name, text));
      await page.getByText(words).first().waitFor();
      expect([name, await storedNames()]).toEqual([name, []]);
    }
    phone.expectNoTrouble();
  });
});

describe("8: what is shown, and what goes along", () => {
  it("names are clean and isolated, and a bomb of a picture is left out", async () => {
    const demo = sent("arm-fits");
    const label = "Marlow \u202eSTIF\u202c \u0007<img src=x onerror=document.title='harmed'>";
    const bomb = { type: "image/png", data: plainPng(20_000, 20_000).toString("base64") };
    const vehicle = { ...(demo.vehicle as object), label };
    await openFile(jsonFile("check.json", { ...demo, vehicle, photos: [bomb] }));
    await heading("A check was sent to you").waitFor();
    const shown = page.locator("dd", { hasText: "Marlow" }).first();
    expect(await shown.textContent()).toBe(
      "Marlow STIF <img src=x onerror=document.title='harmed'>",
    );
    expect(await shown.locator("bdi").count()).toBe(1);
    await page.getByText(/One photo was left out: no picture that can be opened here/).waitFor();
    expect(await page.title()).not.toContain("harmed");
    phone.expectNoTrouble();
  });

  it("photos of files made elsewhere lose what the camera wrote, and stand the way up that they did", async () => {
    const turned = withPlace(await cameraJpeg(), 6);
    const before = Buffer.from(turned).toString("base64");
    const photos = [jpegWithPlace(), turned].map((bytes) => ({
      type: "image/jpeg",
      data: Buffer.from(bytes).toString("base64"),
      reading: "left.gap",
    }));
    const record: Sent = { ...sent("arm-fits"), photos };
    await keepFile(jsonFile("check.json", record));
    const pictures = await rowsOf<{ data: string }>(page, "stopfit", "pictures");
    expect(pictures).toHaveLength(2);
    for (const { data } of pictures) {
      expect(holdsMetadata(Buffer.from(data, "base64"))).toBe(false);
    }
    const look = (source: string) =>
      page.evaluate(async (address) => {
        const picture = new Image();
        picture.src = address;
        await picture.decode();
        const canvas = document.createElement("canvas");
        canvas.width = picture.naturalWidth;
        canvas.height = picture.naturalHeight;
        const context = canvas.getContext("2d");
        context?.drawImage(picture, 0, 0);
        const corner = context?.getImageData(2, 2, 1, 1).data;
        return { width: canvas.width, height: canvas.height, corner: [...(corner ?? [])] };
      }, source);
    const stored = pictures.find(({ data }) => data.length > 500)?.data ?? "";
    const shown = await look(`data:image/jpeg;base64,${stored}`);
    expect(shown).toEqual(await look(`data:image/jpeg;base64,${before}`));
    expect(shown).toMatchObject({ width: 20, height: 40 });
    phone.expectNoTrouble();
  });

  it("the sheet for a link says that contact details go along", async () => {
    const record = {
      ...sent("arm-fits"),
      author: { role: "customer", name: "A. Holt", contact: "a@holt.example" },
    };
    await keepFile(jsonFile("check.json", record));
    await page.goto(`${site}#/check/${sent("arm-fits").id}/answer`);
    await new AnswerPage(page).complete();
    await page.getByRole("button", { name: "Send", exact: true }).click();
    await pick(page.getByRole("radio", { name: "Link" }));
    await page.getByText(/read the names and contact details in it/).waitFor();
    phone.expectNoTrouble();
  });

  /** A JPEG of 40 × 20 pixels, its left half red. */
  async function cameraJpeg(): Promise<Uint8Array> {
    await page.goto(site);
    const bytes = await page.evaluate(async () => {
      const canvas = document.createElement("canvas");
      canvas.width = 40;
      canvas.height = 20;
      const context = canvas.getContext("2d");
      if (context) context.fillStyle = "#ff0000";
      context?.fillRect(0, 0, 20, 20);
      const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", 0.9));
      return [...new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0))];
    });
    return Uint8Array.from(bytes);
  }
});
