import { render } from "preact";
import { App } from "./app.tsx";
import { DeskPlace } from "./desk/deskScreen.ts";
import { isDeskUsed } from "./desk/deskUsed.ts";
import { isMarkedOld } from "./oldBrowser.ts";
import { CheckPlace } from "./openCheck/openCheckScreen.ts";
import { whenIdle } from "./parts/whenIdle.ts";
import { followAppearance } from "./preferences.ts";
import { holdInstallOffer } from "./saved/installOffer.ts";
import { placeAt } from "./screens.tsx";
import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/parts.css";
import "./styles/fields.css";
import "./styles/screen.css";
import "./styles/checks.css";

const root = document.getElementById("app");
if (root && !isMarkedOld()) {
  followAppearance();
  holdInstallOffer();
  // The place asked for is fetched before anything is drawn, not after.
  placeAt(location.hash)
    .preload()
    .catch(() => undefined);
  render(<App />, root);
  // What comes after the first screen is fetched once that one is painted.
  whenIdle(() => {
    // What was named already, and could not be said, is said now.
    import("../saying/everyText.ts").then(
      () => render(<App />, root),
      () => undefined,
    );
    CheckPlace.preload().catch(() => undefined);
    if (isDeskUsed()) DeskPlace.preload().catch(() => undefined);
  });
}
