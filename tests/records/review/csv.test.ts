import fc from "fast-check";
import { expect, it } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { type CsvField, csvField, csvLine, csvStyleOf } from "../../../src/records/review/csv.ts";
import {
  tableHeader as headerCells,
  tableLine as lineCells,
  type TableSubject,
} from "../../../src/records/review/figuresTable.ts";
import type { Submission } from "../../../src/records/review/submission.ts";
import { cellTexts } from "../../../src/saying/tableCells.ts";
import { said } from "../../../src/saying/texts.ts";
import { demoRecord } from "../../screens/answer/demoChecks.ts";

const tableHeader = headerCells.map(said);
const tableLine = (subject: TableSubject) => cellTexts(lineCells(subject));

/** A reader of RFC 4180 written from the standard's grammar, section 2. */
function readCsv(text: string): string[][] {
  const lines: string[][] = [];
  let line: string[] = [];
  let field = "";
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (quoted) {
      if (sign !== '"') field += sign;
      else if (text[at + 1] === '"') {
        field += '"';
        at += 1;
      } else quoted = false;
    } else if (sign === '"' && field === "") quoted = true;
    else if (sign === ",") {
      line.push(field);
      field = "";
    } else if (sign === "\r" && text[at + 1] === "\n") {
      lines.push([...line, field]);
      line = [];
      field = "";
      at += 1;
    } else field += sign;
  }
  return lines;
}

it("reads back as what was written, whatever the texts hold (RFC 4180)", () => {
  fc.assert(
    fc.property(
      fc.array(
        fc
          .string({ unit: "binary" })
          .filter((text) => !/^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/.test(text)),
        {
          minLength: 1,
          maxLength: 6,
        },
      ),
      (texts) => {
        expect(readCsv(csvLine(texts))).toEqual([texts]);
      },
    ),
  );
});

// What programs for tables take for the beginning of a formula: OWASP, CSV Injection (from memory).
it.each(["=1+1", "+1", "-1+2", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\uff1d1", '=HYPERLINK("x")'])(
  "a text that would be a formula is none: %j",
  (text) => {
    const [[field = ""] = []] = readCsv(`${csvField(text)}\r\n`);
    expect(field).toBe(`'${text}`);
    expect(field).not.toMatch(/^[=+\-@\t\r]/);
  },
);

it("numbers stay numbers, negative ones too; what is no usable number is empty", () => {
  const fields: CsvField[] = [
    -3.25,
    0,
    1e-7,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    null,
    undefined,
  ];
  expect(csvLine(fields)).toBe("-3.25,0,1e-7,,,,\r\n");
});

it("where numbers have a decimal comma, so do the table's, with semicolons between", () => {
  expect(csvStyleOf("en-GB")).toEqual({ separator: ",", decimal: "." });
  expect(csvStyleOf("en-US")).toEqual({ separator: ",", decimal: "." });
  for (const locale of ["de-DE", "fr-FR", "nl-NL", "es-ES"]) {
    expect(csvStyleOf(locale)).toEqual({ separator: ";", decimal: "," });
  }
  expect(csvLine([-3.25, "a;b", "c,d", 1e-7], csvStyleOf("de-DE"))).toBe(
    '-3,25;"a;b";"c,d";1e-7\r\n',
  );
});

it("every limit of a side is there: the first in columns, all further ones in words", () => {
  const record = demoRecord("arm-fits");
  const [corner] = record.corners;
  const [limit] = corner?.limits ?? [];
  if (!corner || !limit) throw new Error("no limit");
  const many = Array.from({ length: 8 }, (_, index) => ({
    ...limit,
    at: index === 1 ? ("stop" as const) : ("wheel" as const),
    reading: { values: [100 + index, 102 + index], tol: 2 },
  }));
  const line = tableLine({
    submission: { receivedAt: record.createdAt } as Submission,
    version: 1,
    state: "new",
    decision: null,
    record: { ...record, corners: [{ ...corner, limits: many }] },
    assessment: null,
    side: corner.side,
  });
  const field = (header: string) => line[tableHeader.indexOf(header)];
  expect(field("limits measured")).toBe(8);
  expect(field("limit 1: clearance (mm)")).toBe(101);
  expect(field("limit 1: closing per wheel travel (mm/mm)")).toBe(limit.perWheel ?? 1);
  expect(field("limit 2: measured at")).toBe("stop");
  expect(field("limit 2: closing per wheel travel (mm/mm)")).toBeNull();
  expect(field("limit 6: clearance ± (mm)")).toBe(2);
  expect(field("limit 6: clearance repeats")).toBe(2);
  expect(String(field("further limits")).split("; ")).toHaveLength(2);
  expect(field("further limits")).toContain(
    `${limit.kind === "tyre" ? "tire" : limit.kind} 107 ± 2 mm at the wheel`,
  );
});

it("every column of lengths, masses, forces and rates names its unit, and no header comes twice", () => {
  expect(new Set(tableHeader).size).toBe(tableHeader.length);
  for (const header of ["gap (mm)", "reserve (mm)", "wheel rate (N/mm)", "corner weight (kg)"]) {
    expect(tableHeader).toContain(header);
  }
  const measured = tableHeader.filter((name) => /travel|height|force|mass|energy/.test(name));
  const words = /check: |classes|enough|repeats|passed|^event \d$|share|source$/;
  expect(measured.filter((name) => !/\(.+\)$/.test(name) && !words.test(name))).toEqual([]);
});

it("a stop whose curve is an estimate is marked as one in its name and in a column of its own", () => {
  const record = demoRecord("arm-fits");
  const line = (stop: CheckRecord["stop"]) => {
    const subject = {
      submission: { receivedAt: record.createdAt } as Submission,
      version: 1,
      state: "new",
      decision: null,
      record: { ...record, stop },
      assessment: null,
      side: "left",
    } as const;
    const fields = tableLine(subject);
    return ["stop", "stop curve"].map((header) => fields[tableHeader.indexOf(header)]);
  };
  expect(line(record.stop)).toEqual([record.stop.name, "tested"]);
  const estimated = { how: "from 60 Shore A", forceShare: 0.25 };
  expect(line({ ...record.stop, estimated })).toEqual([
    `${record.stop.name} (estimate)`,
    "estimate ± 25 %",
  ]);
});

it("who says a reading stands beside each of them", () => {
  const record = demoRecord("arm-fits");
  const [corner] = record.corners;
  if (!corner) throw new Error("the demo has a left side");
  const fields = tableLine({
    submission: { receivedAt: record.createdAt } as Submission,
    version: 1,
    state: "new",
    decision: null,
    record: {
      ...record,
      corners: [{ ...corner, gap: { values: [21], tol: 1, source: "estimated" } }],
      stop: { ...record.stop, freeHeight: { ...record.stop.freeHeight, source: "pack" } },
    },
    assessment: null,
    side: corner.side,
  });
  const field = (header: string) => fields[tableHeader.indexOf(header)];
  const sourced = tableHeader.filter((header) => / repeats$/.test(header));
  for (const header of sourced) {
    expect(tableHeader).toContain(header.replace(/ repeats$/, " source"));
  }
  expect(field("gap source")).toBe("estimated");
  expect(field("free height of the stop source")).toBe("from the library");
  expect(field("limit 1: clearance source")).toBe("measured");
});
