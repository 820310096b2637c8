import { fail, type Outcome, succeed } from "../../../physics/outcome.ts";
import * as messages from "../../../words/compiled/screens/answer/card.ts";
import type { CardContent } from "./cardContent.ts";
import type { CardCode, CardPhoto } from "./cardPictures.ts";

const width = 1080;
const margin = 56;
const photosInRow = 3;
const photoGap = 16;
const travelTall = 520;
/** On a phone, which shows the picture at a third of its size, still as large as a code has to be. */
const codeWide = 720;
const family = messages.systemUiSansSerif;

/** What stands beside the words: the travel view, photos, the code. */
export interface CardPictures {
  readonly travel: SVGSVGElement | null;
  readonly photos: readonly CardPhoto[];
  readonly code: CardCode | null;
}

interface Colours {
  readonly ink: string;
  readonly soft: string;
  readonly paper: string;
  readonly line: string;
  readonly verdict: string;
}

const verdictColours = {
  ok: "#14603a",
  care: "#7a4f00",
  no: "#9c1a1f",
  unsure: "#573a8c",
} as const;

/** The styles that a drawing on the page has on paper, written into a copy that stands without them. */
export function standaloneDrawing(drawing: SVGSVGElement): string {
  const { dataset } = document.documentElement;
  const { theme } = dataset;
  dataset.theme = "light";
  const copy = withStyles(drawing);
  if (theme === undefined) delete dataset.theme;
  else dataset.theme = theme;
  const [, , wide = "0", tall = "0"] = (drawing.getAttribute("viewBox") ?? "").split(" ");
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", `${3 * Number(wide)}`);
  copy.setAttribute("height", `${3 * Number(tall)}`);
  return `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`;
}

function withStyles(drawing: SVGSVGElement): SVGSVGElement {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const originals = [drawing, ...drawing.querySelectorAll<SVGElement>("*")];
  const copies = [copy, ...copy.querySelectorAll<SVGElement>("*")];
  const wanted = [
    "fill",
    "stroke",
    "stroke-width",
    "stroke-dasharray",
    "stroke-linecap",
    "opacity",
  ];
  for (const [index, element] of originals.entries()) {
    const computed = getComputedStyle(element);
    for (const name of wanted) copies[index]?.setAttribute(name, computed.getPropertyValue(name));
  }
  return copy;
}

function loaded(address: string): Promise<HTMLImageElement | null> {
  return new Promise((resolve) => {
    const image = new Image();
    image.onload = () => resolve(image);
    image.onerror = () => resolve(null);
    image.src = address;
  });
}

/** Words broken into lines no wider than `room` px. */
export function lines(words: string, room: number, measure: (text: string) => number): string[] {
  const broken: string[] = [];
  let line = "";
  for (const word of words.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && measure(longer) > room) {
      broken.push(line);
      line = word;
    } else line = longer;
  }
  return line === "" ? broken : [...broken, line];
}

/** The largest part of a picture with this ratio of width to height, from its middle, px. */
export function middleOf(
  { width, height }: { readonly width: number; readonly height: number },
  ratio: number,
): { readonly x: number; readonly y: number; readonly width: number; readonly height: number } {
  const wide = Math.min(width, height * ratio);
  const tall = Math.min(height, width / ratio);
  return { x: (width - wide) / 2, y: (height - tall) / 2, width: wide, height: tall };
}

class Sheet {
  y = margin;
  readonly #context: CanvasRenderingContext2D;
  readonly #draws: boolean;

  constructor(context: CanvasRenderingContext2D, draws: boolean) {
    this.#context = context;
    this.#draws = draws;
  }

  write(
    words: string,
    size: number,
    colour: string,
    bold = false,
    left = margin,
    room = width - 2 * margin,
  ): void {
    if (words === "") return;
    const context = this.#context;
    context.font = `${bold ? 700 : 400} ${size}px ${family}`;
    context.fillStyle = colour;
    for (const line of lines(words, room, (text) => context.measureText(text).width)) {
      this.y += size * 1.3;
      if (this.#draws) context.fillText(line, left, this.y - size * 0.25);
    }
  }

  space(px: number): void {
    this.y += px;
  }

  rule(colour: string): void {
    this.y += 18;
    if (this.#draws) {
      this.#context.fillStyle = colour;
      this.#context.fillRect(margin, this.y, width - 2 * margin, 2);
    }
    this.y += 14;
  }

  image(image: HTMLImageElement, left: number, wide: number, tall: number): void {
    if (this.#draws) this.#context.drawImage(image, left, this.y, wide, tall);
  }

  /** The middle of a photo, as much of it as the place holds without drawing it out. */
  photo(photo: HTMLImageElement, left: number, wide: number, tall: number): void {
    if (!this.#draws) return;
    const { x, y, width, height } = middleOf(photo, wide / tall);
    this.#context.drawImage(photo, x, y, width, height, left, this.y, wide, tall);
  }

  code(code: CardCode, left: number, wide: number): void {
    if (!this.#draws) return;
    const context = this.#context;
    const scale = wide / (code.side + 2 * code.quiet);
    context.save();
    context.translate(left, this.y);
    context.fillStyle = "#ffffff";
    context.fillRect(0, 0, wide, wide);
    context.scale(scale, scale);
    context.translate(code.quiet, code.quiet);
    context.fillStyle = "#000000";
    context.fill(new Path2D(code.path));
    context.restore();
  }
}

/** The card as a picture, made here: nothing leaves the device. Error: `cardNotDrawn`. */
export async function cardPicture(
  content: CardContent,
  pictures: CardPictures,
): Promise<Outcome<Blob>> {
  const refused = fail<Blob>("cardNotDrawn", [messages.thisBrowserCouldNot]);
  const canvas = document.createElement("canvas");
  canvas.width = width;
  const context = canvas.getContext("2d");
  if (context === null) return refused;
  const travel = pictures.travel && (await loaded(standaloneDrawing(pictures.travel)));
  const found = await Promise.all(pictures.photos.map(({ address }) => loaded(address)));
  const photos = found.filter((photo) => photo !== null);
  const colours: Colours = {
    ink: "#14201d",
    soft: "#4a5855",
    paper: "#ffffff",
    line: "#c5cfcb",
    verdict: verdictColours[content.verdict],
  };
  const measured = new Sheet(context, false);
  compose(measured, content, pictures, travel, photos, colours);
  canvas.height = Math.ceil(measured.y + margin);
  context.fillStyle = colours.paper;
  context.fillRect(0, 0, width, canvas.height);
  context.fillStyle = colours.verdict;
  context.fillRect(0, 0, 18, canvas.height);
  compose(new Sheet(context, true), content, pictures, travel, photos, colours);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  return blob === null ? refused : succeed(blob);
}

function compose(
  sheet: Sheet,
  content: CardContent,
  { code }: CardPictures,
  travel: HTMLImageElement | null,
  photos: readonly HTMLImageElement[],
  colours: Colours,
): void {
  sheet.write(messages.stopfit, 26, colours.soft, true);
  sheet.write(content.title, 44, colours.ink, true);
  for (const fact of content.facts) sheet.write(fact, 26, colours.soft);
  sheet.rule(colours.line);
  sheet.write(content.verdictWords, 64, colours.verdict, true);
  sheet.write(content.reason, 32, colours.ink);
  if (content.toDo !== "") {
    sheet.space(16);
    sheet.write(messages.whatToDo2, 26, colours.soft, true);
    sheet.write(content.toDo, 36, colours.ink, true);
  }
  if (travel) {
    const wide = (travelTall * travel.width) / travel.height;
    sheet.space(20);
    sheet.image(travel, (width - wide) / 2, wide, travelTall);
    sheet.space(travelTall);
  }
  sheet.rule(colours.line);
  sheet.write(messages.readings, 26, colours.soft, true);
  for (const { name, value } of content.readings) {
    sheet.write(`${name}: ${value}`, 24, colours.ink);
  }
  const wide = (width - 2 * margin - 2 * photoGap) / photosInRow;
  const tall = 0.75 * wide;
  for (let first = 0; first < photos.length; first += photosInRow) {
    sheet.space(photoGap);
    photos.slice(first, first + photosInRow).forEach((photo, place) => {
      sheet.photo(photo, margin + place * (wide + photoGap), wide, tall);
    });
    sheet.space(tall);
  }
  sheet.rule(colours.line);
  sheet.write(messages.cautions, 26, colours.soft, true);
  for (const caution of content.cautions) sheet.write(`• ${caution}`, 22, colours.ink);
  sheet.space(10);
  sheet.write(content.certification, 22, colours.soft);
  if (code) {
    sheet.rule(colours.line);
    sheet.write(messages.scanThisCodeTo, 26, colours.soft, true);
    sheet.space(10);
    sheet.code(code, (width - codeWide) / 2, codeWide);
    sheet.space(codeWide);
  }
}
