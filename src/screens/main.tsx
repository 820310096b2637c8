import { render } from "preact";
import { App, CheckPlace, DeskPlace } from "./app.tsx";
import { isDeskUsed } from "./desk/deskUsed.ts";
import { holdInstallOffer } from "./kept/installOffer.ts";
import { followAppearance } from "./preferences.ts";
import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/parts.css";
import "./styles/fields.css";
import "./styles/screen.css";
import "./styles/checks.css";

followAppearance();
holdInstallOffer();
const root = document.getElementById("app");
if (root) {
  // Fetched beside the first screen's own files, not after them.
  if (location.hash.startsWith("#/desk")) DeskPlace.preload().catch(() => undefined);
  render(<App />, root);
  // What comes after the first screen is fetched once that one is painted.
  const whenIdle = globalThis.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 300));
  whenIdle(() => {
    CheckPlace.preload().catch(() => undefined);
    if (isDeskUsed()) DeskPlace.preload().catch(() => undefined);
  });
}
