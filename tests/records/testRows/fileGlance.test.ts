import { describe, expect, it } from "vitest";
import { fileGlance } from "../../../src/records/testRows/fileGlance.ts";

function file(text: string | Uint8Array<ArrayBuffer>): File {
  return new File([text], "bench.csv");
}

function utf16(text: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Uint16Array.from(text, (letter) => letter.charCodeAt(0)).buffer);
}

const rows = [
  ["Weg", "Kräfte"],
  ["0,5", "12,25"],
  ["1,0", "30,50"],
];
const written = (delimiter: string, newline = "\n") =>
  rows.map((cells) => cells.join(delimiter)).join(newline);

describe("what is shown of a file to tell its columns by", () => {
  it.each([
    ["semicolons", file(written(";"))],
    ["tabs", file(written("\t", "\r\n"))],
    ["bars", file(written("|"))],
    ["UTF-16 with a mark", file(utf16(`\uFEFF${written("\t")}`))],
    ["UTF-16 without a mark", file(utf16(written(";")))],
    [
      "an older program's letters",
      file(Uint8Array.from(written(";", "\r"), (letter) => letter.charCodeAt(0))),
    ],
  ])("is in its own letters and columns: %s", async (_, given) => {
    expect(await fileGlance(given)).toEqual(rows);
  });

  it("begins above the numbers, however long the header, lines with numbers in it too", async () => {
    const header = Array.from(
      { length: 3000 },
      (_, line) => `Setting ${line};${line % 2 ? "3,5;7" : "on"}`,
    );
    const shown = await fileGlance(file(`${header.join("\n")}\n\n${written(";")}\n2,0;60,00\n`));
    expect(shown).toEqual([["Setting 2999", "3,5", "7"], ...rows]);
  });

  it("keeps a number in quotation marks whole", async () => {
    const shown = await fileGlance(file('a,b,c\n1,"1,234.5",7\n2,"1,240.0",8\n'));
    expect(shown).toEqual([
      ["a", "b", "c"],
      ["1", "1,234.5", "7"],
      ["2", "1,240.0", "8"],
    ]);
  });

  it("is its first rows where there are no numbers, and nothing of an empty file", async () => {
    expect(await fileGlance(file("Dear all\nsee below"))).toEqual([["Dear all"], ["see below"]]);
    expect(await fileGlance(file(""))).toEqual([]);
  });
});
