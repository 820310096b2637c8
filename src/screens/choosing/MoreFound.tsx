import * as messages from "../../words/compiled/screens/choosing.ts";
/** How many were found beyond those that are drawn; nothing where all are. */
export function MoreFound({ found, shown }: { found: number; shown: number }) {
  if (found <= shown) return null;
  return <p class="small soft">{messages.moreSearchToSee({ found: found - shown })}</p>;
}
