import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { Disclosure } from "../parts/Disclosure.tsx";
import { isPractised } from "./practice.ts";

/** What one reads in the first checks and knows then: folded afterwards, a tap away. Never for cautions. */
export function Known({ summary, children }: { summary: string; children: ComponentChildren }) {
  const [folded] = useState(isPractised);
  return folded ? <Disclosure summary={summary}>{children}</Disclosure> : children;
}

/** A question that was settled before its screen was opened, as by the other side: folded likewise. */
export function Decided({
  known,
  summary,
  children,
}: {
  known: boolean;
  summary: string;
  children: ComponentChildren;
}) {
  const [settled] = useState(known);
  return settled ? <Known summary={summary}>{children}</Known> : children;
}
