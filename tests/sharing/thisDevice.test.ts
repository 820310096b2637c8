import { afterEach, describe, expect, it, vi } from "vitest";
import {
  isAppleMobile,
  isBrowserOnApple,
  isInstalled,
  isInstalledOnApple,
} from "../../src/sharing/thisDevice.ts";

afterEach(() => vi.unstubAllGlobals());

/** `standalone` is what only Apple's phones and tablets have; `display` the mode that a page asks for. */
function device(standalone: boolean | undefined, display: "standalone" | "browser" | null) {
  vi.stubGlobal("navigator", standalone === undefined ? {} : { standalone });
  const asked = (query: string) => ({ matches: query === `(display-mode: ${display})` });
  vi.stubGlobal("matchMedia", display === null ? undefined : asked);
  return {
    apple: isAppleMobile(),
    installed: isInstalled(),
    browserOnApple: isBrowserOnApple(),
    installedOnApple: isInstalledOnApple(),
  };
}

const apple = { apple: true, installed: false, browserOnApple: true, installedOnApple: false };
const installedApple = {
  apple: true,
  installed: true,
  browserOnApple: false,
  installedOnApple: true,
};
const other = { apple: false, installed: false, browserOnApple: false, installedOnApple: false };

describe("this device", () => {
  it("is an Apple phone in a browser, or one with the app on its home screen", () => {
    expect(device(false, "browser")).toEqual(apple);
    expect(device(false, null)).toEqual(apple);
    expect(device(true, "browser")).toEqual(installedApple);
    expect(device(true, null)).toEqual(installedApple);
    expect(device(false, "standalone")).toEqual(installedApple);
  });

  it("is any other, in a browser or installed", () => {
    expect(device(undefined, "browser")).toEqual(other);
    expect(device(undefined, null)).toEqual(other);
    expect(device(undefined, "standalone")).toEqual({ ...other, installed: true });
  });

  it("is none of these where there is no browser at all", () => {
    vi.stubGlobal("navigator", undefined);
    vi.stubGlobal("matchMedia", undefined);
    expect([isAppleMobile(), isInstalled(), isBrowserOnApple(), isInstalledOnApple()]).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });
});
