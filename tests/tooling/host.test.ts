import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { safety } from "../../src/tooling/serve.mjs";

const sample = readFileSync("src/tooling/host/nginx.conf", "utf8");

describe("the sample host", () => {
  it.each(Object.entries(safety))("sends %s as the app's own server does", (name, value) => {
    expect(sample).toContain(`add_header ${name} "${value}" always;`);
  });

  it("keeps only files with a hash in their name", () => {
    expect(sample).toMatch(/default +"no-cache";/);
    expect(sample).toMatch(/~\^\/assets\/ +"public, max-age=31536000, immutable";/);
  });
});
