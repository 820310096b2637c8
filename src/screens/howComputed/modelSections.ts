/** A piece of the model's text under one heading. */
export type ModelBlock =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "formula"; readonly lines: readonly string[] }
  | { readonly kind: "list"; readonly items: readonly string[] }
  | { readonly kind: "table"; readonly rows: readonly (readonly string[])[] };

export interface ModelSection {
  /** From its heading, as an address takes it. */
  readonly id: string;
  readonly title: string;
  readonly level: number;
  readonly blocks: readonly ModelBlock[];
}

export function headingId(title: string): string {
  return title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
}

function cells(row: string): readonly string[] {
  return row
    .replace(/^\||\|$/g, "")
    .split("|")
    .map((cell) => cell.trim());
}

/** Lines between blank ones, as what they are by how they begin. */
function blockOf(lines: readonly string[]): ModelBlock {
  const [first = ""] = lines;
  if (first.startsWith("    "))
    return { kind: "formula", lines: lines.map((line) => line.slice(4)) };
  if (first.startsWith("|")) {
    const rows = lines.filter((line) => !/^\|[\s|-]+\|$/.test(line));
    return { kind: "table", rows: rows.map(cells) };
  }
  if (first.startsWith("- ")) {
    const items: string[] = [];
    for (const line of lines) {
      if (line.startsWith("- ")) items.push(line.slice(2));
      else items.push(`${items.pop() ?? ""} ${line.trim()}`);
    }
    return { kind: "list", items };
  }
  return { kind: "text", text: lines.join(" ") };
}

/** The sections of a text with headings, paragraphs, lists, tables and indented formulas; no other Markdown. */
export function modelSections(markdown: string): readonly ModelSection[] {
  const sections: { id: string; title: string; level: number; blocks: ModelBlock[] }[] = [];
  for (const piece of markdown.split(/\n\s*\n/)) {
    const lines = piece.split("\n").filter((line) => line.trim() !== "");
    const heading = /^(#+) (.+)$/.exec(lines[0] ?? "");
    const [, marks, title] = heading ?? [];
    if (marks !== undefined && title !== undefined) {
      sections.push({ id: headingId(title), title, level: marks.length, blocks: [] });
      lines.shift();
    }
    if (lines.length > 0) sections.at(-1)?.blocks.push(blockOf(lines));
  }
  return sections;
}
