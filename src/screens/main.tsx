import { render } from "preact";
import { App, CheckPlace } from "./app.tsx";
import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/parts.css";
import "./styles/checks.css";

const root = document.getElementById("app");
if (root) {
  render(<App />, root);
  // What comes after the first screen is fetched once that one is painted.
  const whenIdle = globalThis.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 300));
  whenIdle(() => {
    CheckPlace.preload().catch(() => undefined);
  });
}
