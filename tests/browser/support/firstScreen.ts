import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

/** The scripts and styles that the page itself asks for: what the first screen waits for. */
export function firstScreenFiles(dist: string): string[] {
  const page = readFileSync(join(dist, "index.html"), "utf8");
  return [...page.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/g)].map(
    ([, file]) => file ?? "",
  );
}

export function gzippedBytes(dist: string, files: readonly string[]): number {
  return files.reduce((sum, file) => sum + gzipSync(readFileSync(join(dist, file))).length, 0);
}
