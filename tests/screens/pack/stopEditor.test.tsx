import { cleanup, fireEvent, render, screen } from "@testing-library/preact";
import { afterEach, beforeEach, expect, it } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { readKeptDraft } from "../../../src/screens/pack/itemDraft.ts";
import { StopEditor } from "../../../src/screens/pack/StopEditor.tsx";

const stop = demoPack.stops[0];
if (!stop) throw new Error("the demo pack has no stop");
const { id, material } = stop;

beforeEach(() => localStorage.clear());
afterEach(cleanup);

function openEditor(): void {
  render(<StopEditor pack={demoPack} id={id} unit="mm" />);
}

/** As a browser does it: nothing that follows a paint has run when this returns. */
function type(label: string, value: string): void {
  const input = screen.getByLabelText<HTMLInputElement>(label);
  input.value = value;
  input.dispatchEvent(new Event("input", { bubbles: true }));
}

it("what is typed is put by with the keystroke, before anything is painted", () => {
  openEditor();
  type("Material", "cork");
  type("Part number", "HL-1");
  expect(readKeptDraft(`stop.${id}`)?.draft.texts).toMatchObject({
    material: "cork",
    partNumber: "HL-1",
  });
});

it("what was put by is there again; “As it was” forgets it", () => {
  openEditor();
  type("Material", "cork");
  cleanup();
  openEditor();
  expect(screen.getByLabelText<HTMLInputElement>("Material").value).toBe("cork");
  fireEvent.click(screen.getByRole("button", { name: "As it was" }));
  expect(screen.getByLabelText<HTMLInputElement>("Material").value).toBe(material ?? "");
  expect(readKeptDraft(`stop.${id}`)).toBeNull();
});
