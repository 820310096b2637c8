import type { Measured } from "./testMachine.ts";

/** One way in which machines and spreadsheets write a test down. */
export interface Dialect {
  readonly name: string;
  /** The whole file; bytes where the encoding is the point. */
  write(measured: Measured): string | Uint8Array;
}

type Row = readonly [timeS: number, depthMm: number, forceN: number];

function rowsOf({ timeS, depthMm, forceN }: Measured): readonly Row[] {
  return Array.from(timeS, (time, row) => [time, depthMm[row] ?? 0, forceN[row] ?? 0] as const);
}

function table(
  measured: Measured,
  head: string,
  delimiter: string,
  cells: (row: Row) => readonly string[],
): string {
  return `${head}\n${rowsOf(measured)
    .map((row) => cells(row).join(delimiter))
    .join("\n")}\n`;
}

const comma = (text: string) => text.replace(".", ",");
const plain = ([time, depth, force]: Row) => [time.toFixed(4), depth.toFixed(3), force.toFixed(2)];
const perPound = 1 / 4.4482216152605;

function windows1252(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0) & 0xff);
}

function utf16(text: string, mark: boolean): Uint8Array {
  const whole = mark ? `\uFEFF${text}` : text;
  const bytes = new Uint8Array(2 * whole.length);
  for (let place = 0; place < whole.length; place++) {
    bytes[2 * place] = whole.charCodeAt(place) & 0xff;
    bytes[2 * place + 1] = whole.charCodeAt(place) >> 8;
  }
  return bytes;
}

/** A force such as 1,234.50, as spreadsheets write it in quotation marks. */
function grouped(value: number): string {
  const [whole = "", part = ""] = Math.abs(value).toFixed(2).split(".");
  const groups = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  return `"${value < 0 ? "-" : ""}${groups}.${part}"`;
}

export const dialects: readonly Dialect[] = [
  {
    name: "commas, points, units in brackets",
    write: (m) => table(m, "Time [s],Depth [mm],Force [N]", ",", plain),
  },
  {
    name: "semicolons and decimal commas",
    write: (m) => table(m, "Zeit [s];Weg [mm];Kraft [N]", ";", (row) => plain(row).map(comma)),
  },
  {
    name: "tabs, milliseconds, kilonewtons",
    write: (m) =>
      table(m, "t (ms)\tx (mm)\tF (kN)", "\t", ([t, x, f]) => [
        (1000 * t).toFixed(1),
        x.toFixed(3),
        (f / 1000).toFixed(5),
      ]),
  },
  {
    name: "inches and pounds",
    write: (m) =>
      table(m, "Time (sec),Displacement (in),Load (lbf)", ",", ([t, x, f]) => [
        t.toFixed(4),
        (x / 25.4).toFixed(6),
        (f * perPound).toFixed(4),
      ]),
  },
  {
    name: "units in a row of their own",
    write: (m) => table(m, "Time,Position,Force\ns,mm,N", ",", plain),
  },
  {
    name: "units after a stroke, an empty line below",
    write: (m) => table(m, "Time / s;Travel / mm;Force / N\n", ";", plain),
  },
  {
    name: "a header of twenty lines with a sentence about depth and force",
    write: (m) => {
      const lines = Array.from({ length: 18 }, (_, line) => `Setting ${line},${line * 3}`);
      const sentence = "Ramped to a depth of 16 m,with force up to 3 kN,at speed 5 mm/s";
      return table(
        m,
        [sentence, ...lines, "", "Time [s],Depth [mm],Force [N]"].join("\n"),
        ",",
        plain,
      );
    },
  },
  {
    name: "more columns, another order, numbers in quotation marks",
    write: (m) =>
      table(m, "No.,Force [N],Temperature [C],Time [s],Depth [mm]", ",", ([t, x, f]) => [
        "1",
        `"${f.toFixed(2)}"`,
        "22.5",
        `"${t.toFixed(4)}"`,
        `"${x.toFixed(3)}"`,
      ]),
  },
  {
    name: "thousands grouped in quotation marks",
    write: (m) =>
      table(m, "Time [s],Depth [mm],Force [N]", ",", ([t, x, f]) => [
        t.toFixed(4),
        x.toFixed(3),
        grouped(f),
      ]),
  },
  {
    name: "exponents",
    write: (m) =>
      table(m, "Time [s];Depth [m];Force [daN]", ";", ([t, x, f]) => [
        t.toExponential(6),
        (x / 1000).toExponential(6),
        (f / 10).toExponential(6),
      ]),
  },
  {
    name: "UTF-16 with a mark",
    write: (m) => utf16(table(m, "Time [s]\tDepth [mm]\tForce [N]", "\t", plain), true),
  },
  {
    name: "UTF-16 without a mark",
    write: (m) => utf16(table(m, "Time [s]\tDepth [mm]\tForce [N]", "\t", plain), false),
  },
  {
    name: "an older program's letters, CR LF",
    write: (m) =>
      windows1252(
        table(m, "Prüfung für Anschläge\nZeit [s];Eindrückung Weg [mm];Kraft [N]", ";", (row) =>
          plain(row).map(comma),
        ).replaceAll("\n", "\r\n"),
      ),
  },
  {
    name: "pressing counted as negative, in kilograms-force",
    write: (m) =>
      table(m, "Time [s],Displacement [mm],Force [kgf]", ",", ([t, x, f]) => [
        t.toFixed(4),
        (-x).toFixed(3),
        (-f / 9.80665).toFixed(4),
      ]),
  },
  {
    name: "kips, a footer of text",
    write: (m) =>
      `${table(m, "Elapsed time (s)|Stroke (mm)|Axial force (kip)", "|", ([t, x, f]) => [
        t.toFixed(4),
        x.toFixed(3),
        ((f * perPound) / 1000).toFixed(7),
      ])}End of test\n`,
  },
];
