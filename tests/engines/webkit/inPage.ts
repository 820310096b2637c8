import { queryAllByLabelText, queryAllByRole } from "@testing-library/dom";
import type { Path, Sought, Step } from "./path.ts";

const plain = (text: string) => text.replace(/\s+/g, " ").trim();

function matches(text: string | null, sought: Sought): boolean {
  const found = plain(text ?? "");
  if (sought.kind === "pattern") return new RegExp(sought.source, sought.flags).test(found);
  const wanted = plain(sought.text);
  if (sought.kind === "exactly") return found === wanted;
  return found.toLowerCase().includes(wanted.toLowerCase());
}

/** The innermost elements whose whole text holds what is sought. */
function innermostWith(root: Element, sought: Sought): Element[] {
  const holds = (element: Element) =>
    !/^(SCRIPT|STYLE|TEMPLATE)$/.test(element.tagName) && matches(element.textContent, sought);
  const all = [...root.querySelectorAll("*")].filter(holds);
  return all.filter(
    (element) => !all.some((other) => other !== element && element.contains(other)),
  );
}

function within(root: HTMLElement, step: Step): Element[] {
  const asMatcher = (sought: Sought) => (text: string) => matches(text, sought);
  switch (step.by) {
    case "css":
      return [...root.querySelectorAll(step.selector)];
    case "xpath": {
      const found = document.evaluate(
        step.selector,
        root,
        null,
        XPathResult.ORDERED_NODE_SNAPSHOT_TYPE,
      );
      return Array.from({ length: found.snapshotLength }, (_, place) => found.snapshotItem(place))
        .filter((node) => node instanceof Element)
        .map((node) => node as Element);
    }
    case "role": {
      const { name, level } = step;
      const found = queryAllByRole(root, step.role, {
        ...(name && { name: asMatcher(name) }),
        ...(level !== null && { level }),
      });
      // What a closed <details> holds is drawn nowhere, yet has a display of its own.
      return found.filter((element) => element.checkVisibility());
    }
    case "text":
      return innermostWith(root, step.text);
    case "label":
      return queryAllByLabelText(root, asMatcher(step.text));
    default:
      return [];
  }
}

function apply(from: readonly Element[], step: Step): Element[] {
  switch (step.by) {
    case "hasText":
      return from.filter((element) => matches(element.textContent, step.text));
    case "alsoIn": {
      const others = new Set(resolve(step.path));
      return from.filter((element) => others.has(element));
    }
    case "nth": {
      const chosen = from.at(step.place);
      return chosen ? [chosen] : [];
    }
    default: {
      const found = from.flatMap((root) => within(root as HTMLElement, step));
      return [...new Set(found)];
    }
  }
}

function resolve(path: Path): Element[] {
  return path.reduce<Element[]>(apply, [document.documentElement]);
}

function visible(element: Element): boolean {
  const { width, height } = element.getBoundingClientRect();
  return width > 0 && height > 0 && getComputedStyle(element).visibility === "visible";
}

const parts = ["pointerdown", "mousedown", "pointerup", "mouseup", "click"];
let aim: { readonly guard: (event: Event) => void; met: boolean } | null = null;

/** From now on a pointer meets this element or nothing, until it has met it. */
function aimAt(element: Element): void {
  hasMet();
  const guard = (event: Event) => {
    if (!event.isTrusted || own.met) return;
    if (!event.composedPath().includes(element)) {
      event.preventDefault();
      event.stopImmediatePropagation();
    } else if (event.type === "click") own.met = true;
  };
  const own = { guard, met: false };
  for (const part of parts) addEventListener(part, guard, true);
  aim = own;
}

/** Whether the pointer has met what was aimed at last; ends the aim. */
function hasMet(): boolean {
  const met = aim?.met ?? true;
  for (const part of parts) if (aim) removeEventListener(part, aim.guard, true);
  aim = null;
  return met;
}

declare global {
  interface Window {
    stopfitLooksFor?: {
      resolve: typeof resolve;
      visible: typeof visible;
      aimAt: typeof aimAt;
      hasMet: typeof hasMet;
    };
    stopfitErrors?: string[];
  }
}

window.stopfitLooksFor = { resolve, visible, aimAt, hasMet };
if (!window.stopfitErrors) {
  const errors: string[] = [];
  window.stopfitErrors = errors;
  addEventListener("error", (event) => errors.push(`error: ${event.message}`));
  addEventListener("unhandledrejection", (event) => errors.push(`error: ${event.reason}`));
}
