/** A file that cannot be read, and what the sentence about it must name. */
export interface RefusedFile {
  readonly name: string;
  readonly file: string | Uint8Array;
  readonly cause: RegExp;
}

const bytes = (...start: readonly number[]) =>
  Uint8Array.from([...start, ...Array.from({ length: 4000 }, (_, at) => (at * 31) % 256)]);

export const refusedFiles: readonly RefusedFile[] = [
  {
    name: "a spreadsheet's own file",
    file: bytes(0x50, 0x4b, 3, 4),
    cause: /^This file is no text of rows and columns/,
  },
  {
    name: "an older spreadsheet's own file",
    file: bytes(0xd0, 0xcf, 0x11, 0xe0),
    cause: /^This file is no text of rows and columns/,
  },
  {
    name: "a printed report",
    file: "%PDF-1.4\n1 0 obj\n<< >>\nendobj\n",
    cause: /^This file is no text of rows and columns/,
  },
  {
    name: "a page",
    file: "\uFEFF\n<table><tr><th>Time [s]</th></tr></table>",
    cause: /^This file is no text of rows and columns/,
  },
  {
    name: "nothing but spaces between columns",
    file: "Time [s]   Depth [mm]   Force [N]\n0.0   0.0   0.0\n0.1   1.0  60.0\n0.2   2.0  -1.2e2\n",
    cause: /^Only spaces stand between the columns/,
  },
  {
    name: "decimal commas between commas",
    file: "Time [s],Depth [mm],Force [N]\n0,0,0,0,0,0\n0,1,1,0,60,5\n",
    cause: /commas both between its columns and within its numbers/,
  },
  {
    name: "1.388 beside decimal commas",
    file: "Zeit [s];Weg [mm];Kraft [N]\n0,0;0,0;0,0\n0,1;1,388;60,0\n0,2;1.388;80,0\n",
    cause: /decimal point and others a decimal comma, such as “1\.388”/,
  },
  {
    name: "a unit that is not known",
    file: "Time [s],Depth [mm],Force [tf]\n0,0,0\n1,1,2\n",
    cause: /The unit “tf” of force is not known\. It may be N, kN, daN/,
  },
  {
    name: "no unit",
    file: "Time,Depth [mm],Force [N]\n0,0,0\n1,1,2\n",
    cause: /The column “Time” does not say its unit/,
  },
  {
    name: "no column of force",
    file: "Time [s],Depth [mm]\n0,0\n1,1\n",
    cause: /No column of this file is headed as force/,
  },
  {
    name: "headings without rows",
    file: "Time [s],Depth [mm],Force [N]\n",
    cause: /holds no rows of numbers/,
  },
];
