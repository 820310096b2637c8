import { useLayoutEffect, useState } from "preact/hooks";

const narrowest = 288;

/** The width its holder has for a drawing, px, followed as the window changes. */
export function useChartWidth(widest: number): {
  holder: (element: HTMLDivElement | null) => void;
  width: number;
} {
  const [element, holder] = useState<HTMLDivElement | null>(null);
  const [width, setWidth] = useState(Math.min(328, widest));
  useLayoutEffect(() => {
    if (!element) return;
    const measure = () => {
      const space = element.clientWidth;
      if (space > 0) setWidth(Math.round(Math.min(Math.max(space, narrowest), widest)));
    };
    measure();
    if (typeof ResizeObserver === "undefined") return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [element, widest]);
  return { holder, width };
}
