/** On the page's root where the browser is too old: nothing of the app starts then. */
const mark = "data-too-old";

/** What the app uses and older browsers lack; each is told by asking for it, never by the browser's name. */
function hasWhatIsNeeded(): boolean {
  return (
    typeof Object.hasOwn === "function" &&
    typeof Array.prototype.at === "function" &&
    typeof Array.prototype.findLast === "function" &&
    typeof structuredClone === "function" &&
    typeof HTMLDialogElement === "function" &&
    typeof CSS === "object" &&
    CSS.supports("selector(:has(a))")
  );
}

const words = [
  "<h1>This browser is too old for Stopfit</h1>",
  "<p>Update the phone's browser, or open this page in another one.",
  "Stopfit needs iOS 15.4, Chrome 108 or Firefox 121, or newer.</p>",
  "<p>Checks that are saved here stay as they are.</p>",
].join(" ");

/** Before anything else of the app: true where it can't run, which the page then says by itself. */
export function isOldBrowser(): boolean {
  if (hasWhatIsNeeded()) return false;
  document.documentElement.setAttribute(mark, "");
  document.addEventListener("DOMContentLoaded", () => {
    const place = document.getElementById("app");
    if (place) place.innerHTML = `<main class="no-app">${words}</main>`;
  });
  return true;
}

export function isMarkedOld(): boolean {
  return document.documentElement.hasAttribute(mark);
}
