import {
  type Compared,
  type Comparison,
  compare,
  type Figure,
  type PublishedSource,
} from "./published.ts";

type Compare = (comparison: Comparison) => Compared;

/** A line between these marks is the table's; the rest of the page is its author's. */
const tableMarks = ["<!-- trust table: npm run trust-table -->", "<!-- end of table -->"];

/** A figure to one place beyond its tolerance, or all of it where there is none. */
function figureText(figure: Figure, tolerance: number): string {
  if (typeof figure === "string") return figure.length > 60 ? `${figure.slice(0, 58)} …` : figure;
  if (tolerance === 0 || figure === 0) return `${figure}`;
  const places = Math.floor(Math.log10(Math.abs(figure))) - Math.floor(Math.log10(tolerance));
  return `${Number(figure.toPrecision(Math.min(Math.max(places + 2, 1), 12)))}`;
}

/** A difference to one digit, rounded up; one far below the tolerance only as that. */
function differenceText(figure: number, tolerance: number): string {
  const least = 1e-4 * tolerance;
  if (figure < least) return `< ${least.toExponential(0)}`;
  const unit = 10 ** Math.floor(Math.log10(figure));
  return `≤ ${(Math.ceil(figure / unit - 1e-9) * unit).toExponential(0)}`;
}

function toleranceText({ published, tolerance }: Comparison): string {
  if (typeof published === "string" || tolerance === 0) return "exact";
  return `± ${Number(tolerance.toPrecision(2))}`;
}

const cell = (text: string) => (text === "" ? "(empty)" : text.replaceAll("|", "\\|"));

function row(comparison: Comparison, compared: Compare): string {
  const { quantity, published, tolerance, mark } = comparison;
  const { computed, met } = compared(comparison);
  if (!met) throw new Error(`${quantity}: ${computed} is not ${published} within ${tolerance}`);
  const difference = published === 0 && tolerance > 0 && typeof computed === "number";
  const cells = [
    quantity,
    figureText(published, tolerance),
    difference ? differenceText(Math.abs(computed), tolerance) : figureText(computed, tolerance),
    toleranceText(comparison),
    mark,
  ];
  return `| ${cells.map(cell).join(" | ")} |`;
}

/**
 * The table in Markdown, a heading for each source. Throws where a comparison is not met.
 *
 * @param compared by which comparisons are made: each anew, or as they were made before
 */
export function trustTable(
  sources: readonly PublishedSource[],
  compared: Compare = compare,
): string {
  const count = sources.reduce((sum, { comparisons }) => sum + comparisons.length, 0);
  const parts = sources.flatMap(({ name, comparisons }) => [
    `### ${name}`,
    "",
    "| quantity | published | computed | tolerance | mark |",
    "| --- | --- | --- | --- | --- |",
    ...comparisons.map((comparison) => row(comparison, compared)),
    "",
  ]);
  return [
    `${count} comparisons with ${sources.length} sources, all of them within their tolerance.`,
    "",
    ...parts,
  ]
    .join("\n")
    .trimEnd();
}

/** The page with the table between its marks made anew. */
export function withTable(page: string, table: string): string {
  const [begin = "", end = ""] = tableMarks;
  const from = page.indexOf(begin);
  const to = page.indexOf(end);
  if (from < 0 || to < from) throw new Error("the page has no place for the table");
  return `${page.slice(0, from + begin.length)}\n\n${table}\n\n${page.slice(to)}`;
}
