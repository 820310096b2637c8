import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";

const sources = readdirSync("src", { recursive: true, encoding: "utf8" })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => ({ file, code: readFileSync(join("src", file), "utf8") }));

it.each([
  ["printing", /\b(window|globalThis)\.print\b/, ["screens/parts/printing.ts"]],
  ["the share sheet", /navigator\.(share|canShare)\b/, ["sharing/shareFile.ts"]],
  ["the clipboard", /navigator\.clipboard\b/, ["sharing/shareFile.ts"]],
  ["lasting storage", /\.persist\?\.\(|\.persisted\?\.\(/, ["screens/saved/persistence.ts"]],
  ["choosing a folder", /webkitdirectory" in/, ["screens/parts/folderChoice.ts"]],
] as const)("one file knows %s of the platform, with its fallback", (_, used, files) => {
  const users = sources.filter(({ code }) => used.test(code)).map(({ file }) => file);
  expect(users).toEqual(files);
});
