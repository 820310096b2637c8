import type { Download, Locator, Page } from "playwright-core";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import type { PrintedAnswer } from "./assess.ts";
import { openEverything } from "./controls.ts";

const verdictWords = {
  ok: "It fits",
  care: "Fits, with a warning",
  no: "It doesn't fit",
  unsure: "Not sure yet",
};

type Corner = PrintedAnswer["corners"][number];

/** Of the figure named in the page, the one that assess prints, in the unit and size shown. */
type Printed = (corner: Corner) => number | null | undefined;

const perInch = 25.4;
const newtonsPerPound = 4.4482216152605;
const rateFactor = newtonsPerPound / perInch;
const footPound = 1.3558179483314;

const plain = (name: string) => (corner: Corner) => corner[name] as number | null;
const half = (name: string) => (corner: Corner) => {
  const interval = (corner.intervals as Record<string, [number, number] | null>)[name];
  return interval ? (interval[1] - interval[0]) / 2 : null;
};
const oneWheel = (name: string) => (corner: Corner) =>
  (corner.oneWheel as Record<string, number> | undefined)?.[name];

type Sort =
  | "length"
  | "ratio"
  | "rate"
  | "class"
  | "force"
  | "energy"
  | "speed"
  | "acceleration"
  | "share"
  | "probability"
  | "contacts";

const divisors: { readonly [Unit in "mm" | "in"]: { readonly [Kind in Sort]: number } } = {
  mm: {
    length: 1,
    ratio: 1,
    rate: 1,
    class: 1,
    force: 1,
    energy: 1,
    speed: 1,
    acceleration: 1,
    share: 0.01,
    probability: 0.01,
    contacts: 1,
  },
  in: {
    length: perInch,
    ratio: 1,
    rate: rateFactor,
    class: rateFactor,
    force: newtonsPerPound,
    energy: footPound,
    speed: perInch,
    acceleration: 1,
    share: 0.01,
    probability: 0.01,
    contacts: 1 / 1.609344,
  },
};

const figures: { readonly [figure: string]: readonly [Sort, Printed] } = {
  leverRatio: ["ratio", plain("leverRatio")],
  leverRatioAtFullStop: ["ratio", plain("leverRatioAtFullStop")],
  wheelTravelToContact: ["length", plain("wheelTravelToContactMm")],
  wheelTravelToFullStop: ["length", plain("wheelTravelToFullStopMm")],
  wheelTravelToHardLimit: ["length", plain("wheelTravelToHardLimitMm")],
  reserve: ["length", plain("reserveMm")],
  freeShare: ["share", plain("freeShare")],
  taller: ["length", plain("tallerMm")],
  spacer: ["length", plain("spacerMm")],
  oneWheelRatio: ["ratio", oneWheel("leverRatio")],
  oneWheelContact: ["length", oneWheel("wheelTravelToContactMm")],
  oneWheelFullStop: ["length", oneWheel("wheelTravelToFullStopMm")],
  secantRate: ["rate", plain("secantRateNPerMm")],
  rateClass: ["class", plain("stopRateClass")],
  roadTravelSigma: ["length", plain("roadTravelSigmaMm")],
  contactsPerKm: ["contacts", plain("contactsPerKm")],
  loadedContactsPerKm: ["contacts", plain("loadedContactsPerKm")],
  loadedSag: ["length", plain("loadedSagMm")],
  loadedTravelToContact: ["length", plain("loadedTravelToContactMm")],
  freeTravelNeededUnladen: ["length", plain("freeTravelNeededUnladenMm")],
  freeTravelNeeded: ["length", plain("freeTravelNeededMm")],
  mostExtraHeight: ["length", plain("mostExtraHeightMm")],
  contactInterval: ["length", half("wheelTravelToContactMm")],
  reserveInterval: ["length", half("reserveMm")],
  clearanceProbability: ["probability", plain("clearanceProbability")],
  earlyContactProbability: ["probability", plain("earlyContactProbability")],
};

const eventSorts: { readonly [figure: string]: Sort } = {
  peakWheelTravelMm: "length",
  peakCompressionMm: "length",
  peakStopForceN: "force",
  peakAccelerationG: "acceleration",
  energyInJ: "energy",
  energyOutJ: "energy",
  leaveSpeedMmPerS: "speed",
};

/** Shown beside the fastest test of the stop; assess prints it in its table alone. */
const inNoPrintedAnswer = /^event\d+\.closingSpeedMmPerS$/;

function printedFigure(id: string): readonly [Sort, Printed] | undefined {
  const event = /^event(\d+)\.(\w+)$/.exec(id);
  if (!event) return figures[id];
  const [, index = "", name = ""] = event;
  const sort = eventSorts[name];
  return (
    sort && [
      sort,
      (corner) => (corner.events as Record<string, number>[] | null)?.[Number(index)]?.[name],
    ]
  );
}

/** Half of the last of `figures` significant figures of a number. */
function halfOfFigure(value: number, figures: number): number {
  return 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - figures + 1);
}

/** `often`: per km, or per mile where the text is in miles. */
function showsContacts(text: string, often: number): boolean {
  if (/^less than once in a million (km|miles)$/.test(text)) return often < 1e-6;
  const shownOften = /^([\d.]+) per (km|mile)$/.exec(text);
  if (shownOften) return Math.abs(Number(shownOften[1]) - often) <= halfOfFigure(often, 3) * 1.0001;
  const seldom = /^once in ([\d\u202f.]+) (km|miles?)$/.exec(text);
  if (!seldom) return false;
  const roads = Number(seldom[1]?.replace(/\u202f/g, ""));
  return Math.abs(roads - 1 / often) <= halfOfFigure(1 / often, 2) * 1.0001;
}

function showsProbability(text: string, percent: number): boolean {
  if (text === "over 99.9 %") return percent > 99.9;
  if (text === "under 0.1 %") return percent < 0.1;
  return Math.abs(Number(/^([\d.]+) %$/.exec(text)?.[1]) - percent) <= 0.0501;
}

/** The number a text begins with, as far as it is shown: half of its last digit may be lost. */
function showsNumber(text: string, wanted: number): boolean {
  const shown = /^[-−]?\d+(?:\.(\d+))?/.exec(text);
  if (!shown) return false;
  const lastDigit = 10 ** -(shown[1]?.length ?? 0);
  const value = Number(shown[0].replace("−", "-"));
  return Math.abs(value - wanted) <= lastDigit * 0.5 + 1e-9 * Math.abs(wanted);
}

function shows(text: string, wanted: number, sort: Sort): boolean {
  if (sort === "contacts") return showsContacts(text, wanted);
  return sort === "probability" ? showsProbability(text, wanted) : showsNumber(text, wanted);
}

export class AnswerPage {
  constructor(readonly page: Page) {}

  get verdict(): Locator {
    return this.page.getByRole("heading", { level: 1 });
  }

  /** Waits until everything is worked out, impacts and stiffness too. */
  async complete(): Promise<void> {
    await this.page.getByRole("heading", { name: "Force, impact and stiffness" }).waitFor();
  }

  /**
   * What of the answer is needed to act, in its order: that it sits on its stop, the verdict, why, what to do,
   * what to measure. Named where it ends below `height` px or stands before what goes before it.
   */
  async outOfFirstScreenful(height: number): Promise<string[]> {
    await this.page.locator(".prescription").waitFor();
    const ends = await this.page.evaluate(() =>
      [
        ".verdict-first",
        ".verdict h1",
        ".verdict-reason",
        ".prescription",
        ".verdict-measure",
      ].flatMap((place) => {
        const element = document.querySelector(place);
        if (element === null) return [];
        const { top, bottom } = element.getBoundingClientRect();
        return [{ place, top: top + window.scrollY, bottom: bottom + window.scrollY }];
      }),
    );
    return ends.flatMap(({ place, top, bottom }, index) => {
      const before = ends[index - 1]?.bottom ?? 0;
      return bottom > height || top < before - 1 ? [`${place} from ${top} to ${bottom}`] : [];
    });
  }

  /** Sends the check as a file to this phone itself. */
  async saveFile(): Promise<Download> {
    await this.page.getByRole("button", { name: "Send", exact: true }).click();
    const [download] = await Promise.all([
      this.page.waitForEvent("download"),
      this.page.getByRole("button", { name: "Save the file" }).click(),
    ]);
    await this.page.getByRole("button", { name: "Close", exact: true }).click();
    return download;
  }

  /** Figures shown, by their id: one text a side, or one for both. */
  async shownFigures(): Promise<Map<string, string[]>> {
    await openEverything(this.page);
    const shown = await this.page.evaluate(() => {
      const rows = [...document.querySelectorAll<HTMLElement>("[data-figure]")];
      return rows.map((row) => {
        const values = [...row.querySelectorAll<HTMLElement>(".figure-values > span")];
        const texts = values.map((value) => {
          const copy = value.cloneNode(true) as HTMLElement;
          for (const label of copy.querySelectorAll("small")) label.remove();
          return copy.textContent?.trim() ?? "";
        });
        return [row.dataset.figure ?? "", texts] as const;
      });
    });
    return new Map(shown.map(([id, texts]) => [id, texts.map(withPlainSpaces)]));
  }

  /** One line for each thing the page shows that assess does not say, or the other way round. */
  async differencesFrom(assessed: PrintedAnswer, unit: "mm" | "in"): Promise<string[]> {
    const differences: string[] = [];
    const verdict = (await this.verdict.textContent())?.trim();
    if (verdict !== verdictWords[assessed.verdict]) {
      differences.push(`verdict: ${verdict} instead of ${verdictWords[assessed.verdict]}`);
    }
    const shown = await this.shownFigures();
    for (const [id, texts] of shown) {
      if (id === "progressive") {
        const words = assessed.corners.map(({ progressive }) => (progressive ? "yes" : "no"));
        if (words.some((word, side) => (texts[side] ?? texts[0]) !== word)) {
          differences.push(`progressive: ${texts} instead of ${words}`);
        }
        continue;
      }
      if (inNoPrintedAnswer.test(id)) continue;
      const printed = printedFigure(id);
      if (!printed) {
        differences.push(`${id}: shown, but nothing is known to hold it against`);
        continue;
      }
      const [sort, value] = printed;
      assessed.corners.forEach((corner, side) => {
        const text = texts[side] ?? texts[0] ?? "";
        const wanted = value(corner);
        const agrees =
          wanted === null || wanted === undefined
            ? text === "not known"
            : shows(text, wanted / divisors[unit][sort], sort);
        if (!agrees) {
          differences.push(`${id}, ${corner.side}: ${text} instead of ${wanted} (${sort})`);
        }
      });
    }
    const first = assessed.corners[0];
    for (const [id, [, value]] of Object.entries(figures)) {
      const wanted = first && value(first);
      if (wanted !== null && wanted !== undefined && !shown.has(id)) {
        differences.push(`${id}: not shown`);
      }
    }
    const events = (first?.events as unknown[] | null)?.length ?? 0;
    for (let index = 0; index < events; index++) {
      for (const name of Object.keys(eventSorts)) {
        const id = `event${index}.${name}`;
        if (!shown.has(id)) differences.push(`${id}: not shown`);
      }
    }
    return differences;
  }
}
