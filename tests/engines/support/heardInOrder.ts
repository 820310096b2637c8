import type { EngineWindow, Told } from "./engines.ts";

/** A heading or a control, as the eye and as a screen reader find it. */
export interface Heard extends Told {
  /** Its tag and class, to know it by in a fault. */
  readonly tag: string;
  readonly focusable: boolean;
  /** Hidden from screen readers, or with nothing of it to be seen. */
  readonly hidden: boolean;
  /** header, main, footer or dialog: within each one reads downward. */
  readonly part: string;
  readonly top: number;
  readonly bottom: number;
}

type Seen = Omit<Heard, "role" | "name">;

const mark = "data-heard";

/** Marks every heading and control that is drawn, or can have the focus, and tells where it stands. */
function seen(marked: string): Seen[] {
  const selector =
    "h1, h2, h3, h4, h5, h6, a[href], button, input:not([type=file]), select, textarea, summary, [role=listbox], [role=option], [tabindex]:not(h1, h2, svg, [type=file])";
  for (const old of document.querySelectorAll(`[${marked}]`)) old.removeAttribute(marked);
  return (
    [...document.querySelectorAll<HTMLElement>(selector)]
      // Only some of the engines have a mouse here, and with it folders to choose.
      .filter((each) => each.checkVisibility() && each.textContent !== "Choose a folder")
      .map((each, place) => {
        each.setAttribute(marked, `${place}`);
        // A radio button is drawn as the label around it.
        const drawn = (each.closest("label") ?? each).getBoundingClientRect();
        const disabled = "disabled" in each && each.disabled === true;
        const unseen =
          drawn.width < 2 ||
          drawn.height < 2 ||
          drawn.right < 0 ||
          getComputedStyle(each).visibility !== "visible";
        return {
          tag: `${each.tagName.toLowerCase()}.${each.className}`,
          focusable: each.tabIndex >= 0 && !disabled,
          hidden: unseen || each.closest("[aria-hidden=true], [inert]") !== null,
          part: each.closest("dialog, header, main, footer")?.tagName.toLowerCase() ?? "",
          top: drawn.top,
          bottom: drawn.bottom,
        };
      })
  );
}

/** What has no role of its own in ARIA each engine calls by another word. */
function roleOf(told: string, tag: string): string {
  return tag.startsWith("summary") ? "summary" : told;
}

/** All headings and controls of the screen, in the order of the page; `mayBe` as in `EngineWindow.told`. */
export async function heardInOrder(
  window: EngineWindow,
  mayBe: readonly Told[] = [],
): Promise<Heard[]> {
  const places = (await window.page.evaluate(seen, mark)) as Seen[];
  const told = await window.told(mark, mayBe);
  if (told.length !== places.length) {
    const names = told.map(({ role, name }) => `${role} ${name}`).join("\n");
    throw new Error(`${places.length} headings and controls stand there, told are:\n${names}`);
  }
  return places.map((place, at) => {
    const { role = "", name = "" } = told[at] ?? {};
    return { ...place, role: roleOf(role, place.tag), name: name.trim() };
  });
}
