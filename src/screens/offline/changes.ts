/** What the newest release of a change log brings, a line each, in its own words. */
export function newestChanges(log: string): readonly string[] {
  const [, newest = ""] = log.split(/^## .*$/m);
  return newest
    .split(/^- /m)
    .slice(1)
    .map((line) => line.replace(/\s+/g, " ").trim());
}
