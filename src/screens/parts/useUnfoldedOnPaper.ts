import { useEffect } from "preact/hooks";

/** Unfolds what encloses `selector` while the page is printed: paper has no line to tap. */
export function useUnfoldedOnPaper(selector: string): void {
  useEffect(() => {
    let unfolded: HTMLDetailsElement[] = [];
    const unfold = () => {
      const around = [...document.querySelectorAll(selector)].map((each) =>
        each.closest("details"),
      );
      unfolded = around.filter((details) => details !== null).filter(({ open }) => !open);
      for (const details of unfolded) details.open = true;
    };
    const fold = () => {
      for (const details of unfolded) details.open = false;
      unfolded = [];
    };
    addEventListener("beforeprint", unfold);
    addEventListener("afterprint", fold);
    return () => {
      removeEventListener("beforeprint", unfold);
      removeEventListener("afterprint", fold);
    };
  }, [selector]);
}
