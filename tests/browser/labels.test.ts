import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import type { Pack } from "../../src/records/pack/pack.ts";
import { readPartCode } from "../../src/records/pack/partCode.ts";
import { readFrameOfCamera } from "../../src/sharing/codeReading.ts";
import { screensOnSite } from "./support/screensOnSite.ts";

const stage = screensOnSite();

/** What lies between the margins of the print style, mm. */
const papers = [
  { name: "A4", across: 210 - 28 },
  { name: "US Letter", across: 215.9 - 28 },
] as const;
const pxPerMm = 96 / 25.4;

const [first, second] = demoPack.stops.filter(({ partNumber }) => partNumber !== undefined);
if (!first || !second) throw new Error("the library has parts");

/** A part number and names as long as a library takes them, and ordinary ones beside. */
const longNumber = "Gelände-Endanschlag für die Hinterachse 4711/08-15 links & rechts, lang";
const pack: Pack = {
  ...demoPack,
  platforms: [],
  stops: [
    { ...first, id: "long", name: "Endanschlag ".repeat(16).trim(), partNumber: longNumber },
    first,
    second,
  ],
};

async function sheetOf(page: Page, batch: string, copies: number): Promise<void> {
  await page.goto(`${stage.address}#/pack`);
  await page.getByLabel("Library to open").setInputFiles({
    name: "own.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(pack)),
  });
  await page.getByRole("button", { name: "Use it instead" }).click();
  await page.goto(`${stage.address}#/labels`);
  await page.getByLabel("Batch").fill(batch);
  await page.getByLabel("Labels per part").fill(String(copies));
  await page.getByRole("button", { name: "Tick all that are offered" }).click();
  await page.getByRole("button", { name: `Print ${3 * copies} labels` }).waitFor();
  await page
    .locator(".part-label")
    .nth(3 * copies - 1)
    .waitFor();
  await page
    .getByRole("button", { name: `Print ${3 * copies} labels` })
    .and(page.locator(":enabled"))
    .waitFor();
}

/** The texts of the codes, read off the picture of the sheet as it is printed. */
async function scanned(page: Page): Promise<readonly (string | undefined)[]> {
  const texts: (string | undefined)[] = [];
  for (const label of await page.locator(".part-label").all()) {
    const png = (await label.screenshot()).toString("base64");
    const { width, height, data } = await page.evaluate(async (source) => {
      const bitmap = await createImageBitmap(
        new Blob([Uint8Array.from(atob(source), (letter) => letter.charCodeAt(0))]),
      );
      const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d");
      if (!context) throw new Error("no canvas");
      context.drawImage(bitmap, 0, 0);
      const pixels = context.getImageData(0, 0, bitmap.width, bitmap.height);
      let text = "";
      for (const each of pixels.data) text += String.fromCharCode(each);
      return { width: bitmap.width, height: bitmap.height, data: btoa(text) };
    }, png);
    const [text] = readFrameOfCamera({
      width,
      height,
      data: new Uint8ClampedArray(Buffer.from(data, "base64")),
    });
    texts.push(text);
  }
  return texts;
}

it.each(papers)(
  "labels on $name are whole, of readable size, and every code of the picture is read",
  async ({ across }) => {
    // Its pixels are doubled: about those of a label printer of 203 dots an inch.
    const phone = await stage.openPhone({ width: Math.floor(across * pxPerMm), height: 1000 });
    const page = await phone.newPage();
    await sheetOf(page, "2611", 2);
    await page.emulateMedia({ media: "print" });
    for (const bar of [".screen-top", ".action-bar", ".labels-choice"]) {
      expect(await page.locator(bar).isVisible()).toBe(false);
    }
    const measured = await page.locator(".part-label").evaluateAll((labels) =>
      labels.map((label) => {
        const own = label.getBoundingClientRect();
        const svg = label.querySelector("svg");
        const inside = [...label.querySelectorAll("svg, span, strong")].every((part) => {
          const box = part.getBoundingClientRect();
          return (
            box.left >= own.left &&
            box.right <= own.right + 0.5 &&
            box.bottom <= own.bottom + 0.5 &&
            box.top >= own.top
          );
        });
        return {
          inside: inside && own.right <= innerWidth + 0.5,
          modulePx: (svg?.getBoundingClientRect().width ?? 0) / Number(svg?.dataset.modules),
          number: label.querySelector("strong")?.textContent ?? "",
          numberCut:
            (label.querySelector("strong")?.scrollWidth ?? 0) >
            (label.querySelector("strong")?.clientWidth ?? 0),
          heightPx: own.height,
          breaks: getComputedStyle(label).breakInside,
        };
      }),
    );
    expect(measured).toHaveLength(6);
    for (const label of measured) {
      expect(label).toMatchObject({ inside: true, numberCut: false, breaks: "avoid" });
      expect(label.modulePx / pxPerMm).toBeGreaterThanOrEqual(0.44);
      expect(label.heightPx / pxPerMm).toBeLessThan(60);
    }
    expect(measured.map(({ number }) => number)).toContain(longNumber);
    const read = (await scanned(page)).map((text) => {
      const label = readPartCode(text ?? "");
      return label.ok ? label.value : null;
    });
    expect(read.map((label) => label?.partNumber)).toEqual(measured.map(({ number }) => number));
    expect(read.every((label) => label?.batch === "2611")).toBe(true);
  },
);
