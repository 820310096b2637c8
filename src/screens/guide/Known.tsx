import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { Disclosure } from "../parts/Disclosure.tsx";
import { isPractised } from "./practice.ts";

/** What one reads in the first checks and knows then: folded afterwards, a tap away. Never for cautions. */
export function Known({ summary, children }: { summary: string; children: ComponentChildren }) {
  const [folded] = useState(isPractised);
  return folded ? <Disclosure summary={summary}>{children}</Disclosure> : children;
}
