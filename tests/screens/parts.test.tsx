import { cleanup, fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { useState } from "preact/hooks";
import { afterEach, describe, expect, it, vi } from "vitest";
import { Boundary } from "../../src/screens/parts/Boundary.tsx";
import { Dialog } from "../../src/screens/parts/Dialog.tsx";
import { TextField } from "../../src/screens/parts/Field.tsx";
import { later } from "../../src/screens/parts/later.tsx";
import { Screen, useHeadingFocus } from "../../src/screens/parts/Screen.tsx";

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

describe("a screen that breaks", () => {
  function Broken({ broken }: { broken: boolean }) {
    if (broken) throw new Error("broken on purpose");
    return <p>All well</p>;
  }

  it("says so in a plain sentence, with a way back, and is over at the next place", async () => {
    vi.spyOn(console, "error").mockImplementation(() => undefined);
    const { rerender } = render(
      <Boundary place="one">
        <Broken broken />
      </Boundary>,
    );
    await screen.findByRole("heading", { name: "This screen can't be shown" });
    expect(screen.getByRole("link", { name: "All checks" }).getAttribute("href")).toBe("#/");
    expect(document.body.textContent).not.toContain("broken on purpose");
    rerender(
      <Boundary place="two">
        <Broken broken={false} />
      </Boundary>,
    );
    await screen.findByText("All well");
  });
});

describe("a part that is fetched later", () => {
  it("is fetched once for all places, and offers another try where that fails", async () => {
    let signal = false;
    const load = vi.fn(async () => {
      if (!signal) throw new Error("no signal");
      return () => <p>Here it is</p>;
    });
    const Part = later(load);
    render(<Part />);
    await screen.findByText(/could not be loaded/);
    signal = true;
    fireEvent.click(screen.getByRole("button", { name: "Try again" }));
    await screen.findByText("Here it is");
    cleanup();
    render(<Part />);
    expect(screen.getByText("Here it is")).toBeTruthy();
    expect(load).toHaveBeenCalledTimes(2);
  });

  it("that nobody waits for shows nothing meanwhile, and is fetched once the browser is idle", async () => {
    const idle: (() => void)[] = [];
    vi.stubGlobal("requestIdleCallback", (work: () => void) => idle.push(work));
    const load = vi.fn(async () => () => <p>Ready offline</p>);
    const Part = later(load, { quiet: true });
    const { container } = render(<Part />);
    await waitFor(() => expect(idle).toHaveLength(1));
    expect(load).not.toHaveBeenCalled();
    expect(container.textContent).toBe("");
    for (const work of idle) work();
    await screen.findByText("Ready offline");
    vi.unstubAllGlobals();
  });
});

describe("a text field", () => {
  it("names its input, its hint and what is wrong for a screen reader", () => {
    render(
      <TextField
        label="Gap"
        hint="Along the stop."
        unit="mm"
        unitSpoken="millimetres"
        value="2o"
        tone="no"
        message="“2o” is not a number."
        onInput={() => undefined}
      />,
    );
    const input = screen.getByLabelText("Gap");
    const described = (input.getAttribute("aria-describedby") ?? "")
      .split(" ")
      .map((id) => document.getElementById(id)?.textContent);
    expect(described).toEqual(["Along the stop.", "mmmillimetres", "“2o” is not a number."]);
    expect(input.getAttribute("aria-invalid")).toBe("true");
  });
});

describe("a dialog", () => {
  it("is left by its button and by Esc, and says what it is", async () => {
    const onLeave = vi.fn();
    render(
      <Dialog heading="Rename" onLeave={onLeave} actions={<button type="button">Do</button>}>
        <p>Words</p>
      </Dialog>,
    );
    const dialog = await screen.findByRole("dialog", { name: "Rename" });
    fireEvent(dialog, new Event("cancel", { cancelable: true }));
    expect(onLeave).toHaveBeenCalledTimes(1);
  });
});

describe("the heading of a screen", () => {
  function Place() {
    const [step, setStep] = useState("one");
    const heading = useHeadingFocus(step);
    return (
      <Screen
        top={null}
        actions={
          <button type="button" onClick={() => setStep("two")}>
            Next
          </button>
        }
      >
        <h1 ref={heading} tabIndex={-1}>
          Step {step}
        </h1>
      </Screen>
    );
  }

  it("takes the focus whenever another step is shown", async () => {
    render(<Place />);
    await waitFor(() => expect(document.activeElement?.textContent).toBe("Step one"));
    const button = screen.getByRole("button", { name: "Next" });
    button.focus();
    fireEvent.click(button);
    await waitFor(() => expect(document.activeElement?.textContent).toBe("Step two"));
  });
});
