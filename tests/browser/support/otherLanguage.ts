import { readdirSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import type { Page } from "playwright-core";
import { readCatalogue } from "../../../src/tooling/words/catalogue.ts";
import {
  pseudoEnd,
  pseudoMessage,
  pseudoStart,
} from "../../../src/tooling/words/pseudoLanguage.ts";
import { reply } from "../../support/sampleReply.ts";

const catalogue = readCatalogue();

/** A message of the catalogue as the build in the language for tests says it. */
export function said(room: string, key: string): string {
  const message = catalogue.get(room)?.[key];
  if (message === undefined) throw new Error(`There is no message ${key} of ${room}.`);
  return pseudoMessage(message);
}

/** Units, and signs of formulas: the same in every language. Single letters are signs always. */
const signs = (
  "Stopfit mm km in ft mi kg lb lbf kN ms Hz mph kB MB " +
  "need rec tol up road sin cos tan asin acos atan ln log sqrt min max round dz ds Gd kt kw mu Vt"
).split(" ");

/** Under these keys of demo records and packs stands what a person typed. */
const typedKeys: ReadonlySet<string> = new Set(
  (
    "label name partNumber customer number by address contact code notes tellApart trims build material " +
    "mounting specimen conditioning temperature file edition revision batch maker from text"
  ).split(" "),
);

function typedIn(value: unknown, key = ""): string[] {
  if (typeof value === "string") return typedKeys.has(key) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => typedIn(each, key));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => typedIn(each, name));
}

/** What people typed into the demo records, jobs and the demo library, and the names of the demo's files. */
function typedInDemo(): readonly string[] {
  const files = readdirSync("demo-data", { recursive: true, encoding: "utf8" });
  const records = files
    .filter((file) => file.endsWith(".json"))
    .flatMap((file) => typedIn(JSON.parse(readFileSync(`demo-data/${file}`, "utf8"))));
  return [...records, ...files.map((file) => basename(file))];
}

const longestFirst = (texts: readonly string[]) =>
  [...new Set(texts)].sort((a, b) => b.length - a.length);

/** A page of the app in the language for tests; looks at its screens come one after another. */
export class OtherLanguage {
  private readonly typed = longestFirst([...typedInDemo(), ...typedIn(reply), reply.vehicle]);
  private turn: Promise<unknown> = Promise.resolve();

  constructor(
    readonly page: Page,
    private readonly site: string,
  ) {}

  async goTo(address: string): Promise<void> {
    await this.page.goto(`${this.site}${address}`);
    await this.settled();
  }

  /** What is wrong at an address, everything unfolded. */
  lookAt(address: string): Promise<string[]> {
    const look = this.turn.then(async () => {
      await this.page.goto(`${this.site}${address}`);
      return this.look();
    });
    this.turn = look.catch(() => undefined);
    return look;
  }

  /**
   * What is wrong on the page as it stands, once everything is unfolded: what is wider than the screen or sticks
   * out of its box, what is cut, and what is neither the catalogue's nor a person's own.
   */
  async look(screen = ""): Promise<string[]> {
    for (let opened = 1; opened > 0; ) {
      await this.settled();
      opened = await this.page.evaluate(() => {
        const closed = [...document.querySelectorAll("details")].filter(({ open }) => !open);
        for (const details of closed) details.open = true;
        return closed.length;
      });
    }
    const { typed } = this;
    const wrong = await this.page.evaluate(wrongHere, {
      typed,
      signs,
      start: pseudoStart,
      end: pseudoEnd,
    });
    return screen === "" ? wrong : wrong.map((line) => `${screen}: ${line}`);
  }

  /** Nothing has changed on the page for a moment, and nothing is waited for. */
  private async settled(): Promise<void> {
    await this.page.evaluate(
      (waitedFor) =>
        new Promise<void>((done) => {
          const started = performance.now();
          let last = started;
          const observer = new MutationObserver(() => {
            last = performance.now();
          });
          observer.observe(document, { subtree: true, childList: true, characterData: true });
          const timer = setInterval(() => {
            const now = performance.now();
            const waits = now - last < 80 || document.querySelector(waitedFor) !== null;
            if (waits && now - started < 20_000) return;
            clearInterval(timer);
            observer.disconnect();
            done();
          }, 20);
        }),
      '[aria-busy="true"], .later-waiting, main progress',
    );
  }
}

interface Language {
  readonly typed: readonly string[];
  readonly signs: readonly string[];
  readonly start: string;
  readonly end: string;
}

/** Runs in the page: nothing of it may come from outside. */
function wrongHere({ typed, signs, start, end }: Language): string[] {
  const wrong = new Set<string>();
  const known = new Set(signs);
  // Written by the browser, not by the catalogue.
  const dates =
    /\b(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)[a-z]*\s\d{1,2},\s\d{4}(, \d{1,2}:\d\d\s[AP]M)?/g;
  const unread = "script, style, noscript, template";
  // The description of the computation is a document of its own, translated as a whole.
  const document_ = ".how";

  const styles = new Map<Element, CSSStyleDeclaration>();
  const styleOf = (element: Element): CSSStyleDeclaration => {
    const style = styles.get(element) ?? getComputedStyle(element);
    styles.set(element, style);
    return style;
  };
  const isInline = (element: Element) => /^(inline|contents)$/.test(styleOf(element).display);
  const scrolls = (element: Element) => /auto|scroll/.test(styleOf(element).overflowX);
  const boxAround = (element: Element): Element => {
    let box = element;
    while (box.parentElement && isInline(box)) box = box.parentElement;
    return box;
  };
  const modal = [...document.querySelectorAll("dialog[open]")].at(-1);
  const shown = new Map<Element, boolean>();
  const isShown = (element: Element): boolean => {
    const before = shown.get(element);
    if (before !== undefined) return before;
    const is =
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
      styleOf(element).clipPath !== "inset(50%)" &&
      (element === modal || element.parentElement === null || isShown(element.parentElement)) &&
      element.closest(`.unseen, ${unread}`) === null &&
      (modal === undefined || modal.contains(element));
    shown.set(element, is);
    return is;
  };

  const nameOf = ({ tagName, classList }: Element) =>
    [tagName.toLowerCase(), ...classList].join(".");
  const placeOf = (element: Element): string => {
    const named = element.closest("[class]");
    return named && named !== element ? `${nameOf(named)} ${nameOf(element)}` : nameOf(element);
  };
  const tell = (what: string, text: string, element: Element) => {
    const plain = text.replace(/\s+/g, " ").trim();
    const short = plain.length > 90 ? `${plain.slice(0, 87)}…` : plain;
    wrong.add(`${what}: “${short}” in ${placeOf(element)}`);
  };

  /** What people typed may be cut where it is long, with what stands in line with it. */
  function isPartlyTyped({ textContent }: Element): boolean {
    const text = textContent ?? "";
    return !text.includes(end) || typed.some((each) => each.length > 2 && text.includes(each));
  }

  function mustBeTranslated(text: string, what: string, element: Element): void {
    let rest = text.replace(dates, " ");
    for (const each of typed) if (rest.includes(each)) rest = rest.split(each).join(" ");
    const plain = (rest.match(/[A-Za-z]+/g) ?? []).filter(
      (word) => word.length > 1 && !known.has(word),
    );
    if (plain.length > 0)
      tell(`${what} not of the catalogue, ${[...new Set(plain)].join(" ")}`, text, element);
  }

  // Of these a part of a message stands alone: the first sentence of a reason, the end of a formula.
  const ofParts = ".verdict-reason, li:has(> .formula)";

  function mustStandWhole(text: string, element: Element): void {
    if (element.matches(ofParts)) return;
    const count = (mark: string) => text.split(mark).length - 1;
    if (count(start) !== count(end)) tell("its end or its start is missing", text, element);
  }

  /** From a text outwards: no box around it is smaller than it. */
  function mustKeepWithin(text: Text, parent: Element): void {
    const range = document.createRange();
    range.selectNodeContents(text);
    // Words of a drawing may be squeezed, of which a range knows nothing.
    const { left, right, top, bottom, width, height } = (
      parent instanceof SVGElement ? parent : range
    ).getBoundingClientRect();
    // Where spaces are kept, those at the end of a line hang over.
    if (width === 0 || height === 0 || styleOf(parent).whiteSpace === "pre-wrap") return;
    for (
      let around: Element | null = parent;
      around && around !== document.body;
      around = around.parentElement
    ) {
      const drawn = around instanceof SVGElement;
      if (drawn ? around.tagName !== "svg" : isInline(around)) continue;
      if (scrolls(around)) return;
      const bounds = around.getBoundingClientRect();
      const beside = Math.max(bounds.left - left, right - bounds.right);
      const over = Math.max(bounds.top - top, bottom - bounds.bottom);
      if (styleOf(around).overflowY !== "visible" && isPartlyTyped(around)) return;
      // Letters are higher than a line that is set close.
      if (beside > 1.5 || over > 4) {
        const px = Math.round(Math.max(beside, over));
        const where = beside > 1.5 ? "beside" : "above or below";
        tell(`${px} px ${where} ${placeOf(around)}`, text.data, parent);
        return;
      }
      if (/absolute|fixed/.test(styleOf(around).position)) return;
    }
  }

  const runs = new Map<Element, Text[]>();
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = texts.nextNode(); node; node = texts.nextNode()) {
    const parent = node.parentElement;
    if (!parent || (node.textContent ?? "").trim() === "" || parent.closest(unread)) continue;
    // Lines of a drawing's words and of a formula belong together.
    const box =
      parent.closest("title, desc") ??
      parent.closest("svg text")?.parentElement ??
      parent.closest(".formula")?.parentElement ??
      boxAround(parent);
    runs.set(box, [...(runs.get(box) ?? []), node as Text]);
  }
  for (const [box, parts] of runs) {
    const whole = parts.map(({ data }) => data).join("");
    if (!box.closest(document_)) mustBeTranslated(whole, "text", box);
    if (!isShown(box)) continue;
    mustStandWhole(whole, box);
    for (const part of parts) if (part.parentElement) mustKeepWithin(part, part.parentElement);
  }
  mustBeTranslated(document.title, "title of the page", document.head);
  for (const name of [
    "aria-label",
    "aria-valuetext",
    "title",
    "placeholder",
    "alt",
    "data-column",
  ]) {
    for (const element of document.querySelectorAll(`[${name}]`)) {
      mustBeTranslated(element.getAttribute(name) ?? "", name, element);
    }
  }

  const { clientWidth, scrollWidth } = document.documentElement;
  if (scrollWidth > clientWidth) wrong.add(`${scrollWidth - clientWidth} px wider than the screen`);

  const pen = document.createElement("canvas").getContext("2d");
  /** What a field shows of its own on one line. */
  function mustHaveRoom(text: string, element: Element, part?: string): void {
    const { paddingLeft, paddingRight } = styleOf(element);
    const { fontStyle, fontWeight, fontSize, fontFamily } = getComputedStyle(element, part);
    if (!pen || !text.includes(end)) return;
    pen.font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`;
    const room =
      element.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight);
    const spare = Math.round(pen.measureText(text).width - room);
    if (spare > 1) tell(`cut by ${spare} px`, text, element);
  }

  const boxes = new Set(
    document.querySelectorAll(
      "button, a, label, input, select, textarea, li, td, th, table, fieldset, dialog, svg, img, " +
        ".card, .notice, .segmented",
    ),
  );
  for (const element of document.body.querySelectorAll("*")) {
    if (element.parentElement?.closest("svg") || !isShown(element)) continue;
    const bounds = element.getBoundingClientRect();
    if (bounds.width === 0 || bounds.height === 0) continue;
    const style = styleOf(element);
    const text = element.textContent ?? "";
    const clips = (overflow: string) => overflow === "hidden" || overflow === "clip";
    if (element instanceof HTMLInputElement)
      mustHaveRoom(element.placeholder, element, "::placeholder");
    else if (element instanceof HTMLSelectElement) {
      const chosen = element.selectedOptions[0]?.text ?? "";
      const beside = element.closest(".field-box")?.nextElementSibling?.textContent;
      if (chosen.includes(end) && chosen !== beside) mustHaveRoom(chosen, element);
    } else if (!isPartlyTyped(element) && !(element instanceof SVGElement)) {
      const beside = element.scrollWidth - element.clientWidth;
      const below = element.scrollHeight - element.clientHeight;
      if (clips(style.overflowX) && beside > 1)
        tell(`cut by ${beside} px at its side`, text, element);
      if (clips(style.overflowY) && below > 2) tell(`cut by ${below} px below`, text, element);
    }
    if (!boxes.has(element) || style.display === "inline") continue;
    if (/absolute|fixed/.test(style.position)) continue;
    const { parentElement } = element;
    const around = parentElement && boxAround(parentElement);
    if (!around || scrolls(around)) continue;
    if (Math.min(Number.parseFloat(style.marginLeft), Number.parseFloat(style.marginRight)) < 0)
      continue;
    const outer = around.getBoundingClientRect();
    const out = Math.max(outer.left - bounds.left, bounds.right - outer.right);
    if (out > 1.5) tell(`${Math.round(out)} px out of ${placeOf(around)}`, text, element);
  }
  return [...wrong];
}
