import { existsSync, readFileSync } from "node:fs";
import { posix } from "node:path";
import { codeOf, compiledFolder } from "./catalogue.ts";

const firstFile = "src/screens/main.tsx";
const importOrExport = /^(?:import|export)\s(?!type\s)(?:[^;"]*?\sfrom\s)?"(\.[^"]+)";/gm;
const importOfWords = /^import \* as messages from "([^"]+)";$/m;
export const messageSaid = /(?<![\w./])messages\s*\.\s*(\w+)/g;

/**
 * The codes of the messages that are named by what the first screen loads: by files that it imports, and those
 * that they do. Physics computes nothing there: it has only names for what the other screens show.
 */
export function firstMessages(start = firstFile): ReadonlySet<string> {
  const files = new Set<string>();
  const codes = new Set<string>();
  const open = [start];
  for (let file = open.pop(); file !== undefined; file = open.pop()) {
    if (files.has(file) || file.startsWith(compiledFolder) || !existsSync(file)) continue;
    files.add(file);
    const code = readFileSync(file, "utf8");
    for (const [, path = ""] of code.matchAll(importOrExport)) {
      open.push(posix.join(posix.dirname(file), path));
    }
    const [, words] = importOfWords.exec(code) ?? [];
    if (words === undefined || file.startsWith("src/physics/")) continue;
    const room = posix
      .join(posix.dirname(file), words)
      .slice(compiledFolder.length + 1)
      .replace(/\.ts$/, "");
    for (const [, key = ""] of code.matchAll(messageSaid)) codes.add(codeOf(room, key));
  }
  return codes;
}
