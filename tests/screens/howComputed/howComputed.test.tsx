import { readFileSync } from "node:fs";
import { cleanup, fireEvent, render, screen, within } from "@testing-library/preact";
import { afterEach, describe, expect, it } from "vitest";
import { passageOf } from "../../../src/screens/answer/formulas/figures.ts";
import { HowComputedPlace } from "../../../src/screens/howComputed/HowComputedPlace.tsx";
import {
  headingId,
  type ModelBlock,
  modelSections,
} from "../../../src/screens/howComputed/modelSections.ts";
import { placeAt } from "../../../src/screens/screens.tsx";

const text = readFileSync("src/physics/MODEL.md", "utf8");
const sections = modelSections(text);

function wordsOf(block: ModelBlock): readonly string[] {
  switch (block.kind) {
    case "text":
      return [block.text];
    case "formula":
      return block.lines;
    case "list":
      return block.items;
    case "table":
      return block.rows.flat();
  }
}

afterEach(cleanup);

describe("the model's text", () => {
  it("is read whole: every line of it stands in a section", () => {
    const words = (of: string) => of.match(/[\p{L}\p{N}]+/gu) ?? [];
    const read = sections.flatMap(({ title, blocks }) => [title, ...blocks.flatMap(wordsOf)]);
    expect(words(read.join(" "))).toEqual(words(text));
  });

  it("has no two headings alike", () => {
    const ids = sections.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("has the passage that each group of figures leads to", () => {
    const ids = sections.map(({ id }) => id);
    for (const passage of Object.values(passageOf)) expect(ids).toContain(passage);
  });

  it("is what the calculation's own words cite", () => {
    const cited = ["Impact", "What works"];
    expect(sections.map(({ title }) => title)).toEqual(expect.arrayContaining(cited));
  });
});

describe("the screen How it is computed", () => {
  it("shows every section, and formulas as they are written", () => {
    render(<HowComputedPlace passage={null} />);
    for (const { title, level } of sections) {
      expect(screen.getByRole("heading", { level, name: title })).toBeTruthy();
    }
    expect(screen.getByText(/σ² = π²·n0²·Gd·V·M \/ c/)).toBeTruthy();
    expect(screen.getByRole("columnheader", { name: "wheel travel" })).toBeTruthy();
  });

  it("stands at the passage that is asked for", () => {
    render(<HowComputedPlace passage="impact" />);
    expect(document.activeElement?.id).toBe("impact");
  });

  it("leads from its list of passages to each", () => {
    render(<HowComputedPlace passage={null} />);
    const passages = within(screen.getByRole("navigation", { name: "Passages" }));
    const link = passages.getByRole("link", { name: "Travel budget" });
    fireEvent.click(link);
    expect(placeAt(location.hash).route).toEqual({
      screen: "howComputed",
      passage: headingId("Travel budget"),
    });
  });
});
