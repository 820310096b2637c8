import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { showAppearance } from "../../../src/screens/appearance.ts";
import {
  changePreferences,
  followAppearance,
  forgetPreferencesInMemory,
  preferences,
} from "../../../src/screens/preferences.ts";
import { choose, freshPhone, heading, startApp, tap, tick } from "../startApp.tsx";

const name = "Settings";
const root = () => document.documentElement.dataset;

function phoneIs(scheme: "light" | "dark") {
  const listeners = new Set<() => void>();
  const state = { scheme };
  vi.stubGlobal("matchMedia", (query: string) => ({
    get matches() {
      return query.includes(state.scheme);
    },
    addEventListener: (_: string, listener: () => void) => listeners.add(listener),
    removeEventListener: (_: string, listener: () => void) => listeners.delete(listener),
  }));
  return {
    turns(next: "light" | "dark") {
      state.scheme = next;
      for (const listener of listeners) listener();
    },
  };
}

beforeEach(() => freshPhone());

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
  changePreferences({ theme: "phone", text: "usual" });
});

describe("how it looks", () => {
  it("follows the phone until a theme is chosen", () => {
    const phone = phoneIs("light");
    followAppearance();
    showAppearance({ theme: "phone", text: "usual" });
    expect(root().theme).toBe("light");
    phone.turns("dark");
    expect(root().theme).toBe("dark");
    changePreferences({ theme: "sun" });
    expect(root().theme).toBe("sun");
    phone.turns("light");
    expect(root().theme).toBe("sun");
  });

  it("is changed in another tab as well", () => {
    followAppearance();
    localStorage.setItem("stopfit.preferences", JSON.stringify({ theme: "dark", text: "large" }));
    window.dispatchEvent(new StorageEvent("storage", { key: "stopfit.preferences" }));
    expect({ ...root() }).toMatchObject({ theme: "dark", text: "large" });
    expect(preferences().theme).toBe("dark");
  });

  it("colours the browser's bar like the page", () => {
    const bar = document.createElement("meta");
    bar.name = "theme-color";
    document.head.append(bar);
    showAppearance({ theme: "sun", text: "usual" });
    expect(bar.content).toBe("#ffffff");
    bar.remove();
  });
});

describe("the settings", () => {
  it("are reached from the list, keep at once what is chosen, and lead back", async () => {
    startApp();
    await heading(/^(Checks on this phone|Will this bump stop)/);
    const link = await screen.findByRole("link", { name });
    location.hash = link.getAttribute("href") ?? "";
    await heading(name);
    await choose(/^US/);
    await choose(/^Sunlight/);
    await choose("Largest");
    await choose(/^The phone's keyboard/);
    await tick(/^Keep the screen on/);
    forgetPreferencesInMemory();
    expect(preferences()).toMatchObject({
      length: "in",
      theme: "sun",
      text: "largest",
      keys: "phone",
      awake: false,
      speak: false,
    });
    expect({ ...root() }).toMatchObject({ theme: "sun", text: "largest" });
    const back = vi.spyOn(history, "back");
    await tap("Done");
    expect(back.mock.calls.length + Number(location.hash === "#/")).toBeGreaterThan(0);
  });

  it("say so where no voice of this phone can read numbers back", async () => {
    vi.stubGlobal("speechSynthesis", {
      getVoices: () => [{ lang: "en-GB", localService: false }],
      addEventListener: () => undefined,
    });
    startApp("#/looks");
    await heading(name);
    await tick(/^Read numbers aloud/);
    await screen.findByText(/speak through a server/);
    expect(preferences().speak).toBe(true);
  });

  it("keep the tools, and none that are unknown", () => {
    changePreferences({ tools: { near: "caliper", angle: "level" } });
    forgetPreferencesInMemory();
    expect(preferences().tools).toEqual({ near: "caliper", angle: "level" });
    localStorage.setItem("stopfit.preferences", '{"tools":{"near":"laser","mass":"wheelScales"}}');
    forgetPreferencesInMemory();
    expect(preferences().tools).toEqual({ mass: "wheelScales" });
  });

  it("show the words of a theme without a check or a store", async () => {
    startApp("#/looks");
    await heading(name);
    await waitFor(() => expect(screen.getAllByRole("radio").length).toBeGreaterThan(8));
    fireEvent.click(screen.getByRole("radio", { name: /^Dark/ }));
    expect(root().theme).toBe("dark");
  });
});
