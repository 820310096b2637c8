import { cleanup, render } from "@testing-library/preact";
import { afterEach, describe, expect, it } from "vitest";
import type { State } from "../../../src/physics/fitment.ts";
import {
  CautionPicture,
  cautionPictureNames,
} from "../../../src/screens/drawings/CautionPicture.tsx";
import { LayoutPicture } from "../../../src/screens/drawings/LayoutPicture.tsx";
import {
  StandingPicture,
  standingPictureNames,
} from "../../../src/screens/drawings/StandingPicture.tsx";
import { StateMark } from "../../../src/screens/drawings/StateMark.tsx";

afterEach(cleanup);

const states: State[] = ["ok", "care", "no", "unsure"];

function expectNamedAndFinite(container: Element): string {
  const svg = container.querySelector("svg");
  const title = svg?.querySelector("title");
  expect(svg?.getAttribute("role")).toBe("img");
  expect(title?.textContent).toMatch(/\w/);
  expect(svg?.outerHTML).not.toMatch(/NaN|Infinity|undefined/);
  const labelled = svg?.getAttribute("aria-labelledby")?.split(" ") ?? [];
  for (const id of labelled) expect(svg?.querySelector(`[id="${id}"]`)).not.toBeNull();
  return title?.textContent ?? "";
}

describe("StateMark", () => {
  it("gives each state its own shape, word and colour", () => {
    const seen = states.map((state) => {
      const { container, unmount } = render(<StateMark state={state} size={32} />);
      const word = expectNamedAndFinite(container);
      const shape = container.querySelector("g")?.innerHTML ?? "";
      const colour = container.querySelector("svg")?.getAttribute("style") ?? "";
      expect(container.querySelector("svg")?.getAttribute("width")).toBe("32");
      unmount();
      return { word, shape, colour };
    });
    for (const aspect of ["word", "shape", "colour"] as const) {
      expect(new Set(seen.map((each) => each[aspect])).size).toBe(states.length);
    }
  });

  it("is silent beside words that say the same", () => {
    const { container } = render(<StateMark state="no" label="" />);
    const svg = container.querySelector("svg");
    expect(svg?.getAttribute("aria-hidden")).toBe("true");
    expect(svg?.hasAttribute("role")).toBe(false);
  });
});

describe("LayoutPicture", () => {
  it("names each layout and makes its stop stand out", () => {
    const titles = (["arm", "damper", "strut", "axle"] as const).map((kind) => {
      const { container, unmount } = render(<LayoutPicture kind={kind} />);
      const title = expectNamedAndFinite(container);
      expect(container.querySelectorAll("path.stop")).toHaveLength(kind === "axle" ? 2 : 1);
      expect(container.querySelector("desc")?.textContent).toMatch(/stop/);
      unmount();
      return title;
    });
    expect(new Set(titles).size).toBe(4);
  });
});

describe("pictograms", () => {
  it.each(standingPictureNames)("has one for standing: %s", (step) => {
    expectNamedAndFinite(render(<StandingPicture step={step} />).container);
  });

  it.each(cautionPictureNames)("has one for the caution: %s", (caution) => {
    expectNamedAndFinite(render(<CautionPicture caution={caution} />).container);
  });
});
