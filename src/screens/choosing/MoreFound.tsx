/** How many were found beyond those that are drawn; nothing where all are. */
export function MoreFound({ found, shown }: { found: number; shown: number }) {
  if (found <= shown) return null;
  return <p class="small soft">{found - shown} more. Search to see them.</p>;
}
