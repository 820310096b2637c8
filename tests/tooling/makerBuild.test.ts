import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import type { Maker, Pack } from "../../src/records/pack/pack.ts";
import { makerBuild } from "../../src/tooling/maker/makerBuild.ts";

const folder = mkdtempSync(join(tmpdir(), "stopfit-maker-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const own: Maker = { name: "Halden Lane Garage", code: "HALDEN" };

function packFile(change: Partial<Pack> = {}, maker: Partial<Maker> = {}): string {
  const file = join(folder, "pack.json");
  writeFileSync(file, JSON.stringify({ ...demoPack, maker: { ...own, ...maker }, ...change }));
  return file;
}

function besides(name: string, content: string): string {
  writeFileSync(join(folder, name), content);
  return name;
}

describe("a build with a maker's pack", () => {
  it("is the demonstration's where none is named", () => {
    expect(makerBuild(undefined)).toMatchObject({ maker: null, color: null });
  });

  it("has the maker's name and color", () => {
    const logo = besides("mark.svg", '<svg xmlns="http://www.w3.org/2000/svg"/>');
    expect(makerBuild(packFile({}, { color: "#5A2A6E", logo }))).toMatchObject({
      maker: "Halden Lane Garage",
      color: "#5a2a6e",
    });
  });

  it("refuses a color that words can't be read in, with the nearest that can be", () => {
    expect(() => makerBuild(packFile({}, { color: "#ffcc00" }))).toThrow(
      /The color #ffcc00 has a contrast of 1\.3 : 1 .* words need 4\.5 : 1\. The nearest one that has it is #[0-9a-f]{6}\./,
    );
    expect(() => makerBuild(packFile({}, { color: "gold" }))).toThrow(/color such as #0c4c82/);
  });

  it("refuses a logo that is not there, too large or no picture", () => {
    expect(() => makerBuild(packFile({}, { logo: "none.png" }))).toThrow(/there is no such file/);
    const large = besides("large.svg", `<svg>${" ".repeat(200_001)}</svg>`);
    expect(() => makerBuild(packFile({}, { logo: large }))).toThrow(/a logo may have 200 kB/);
    const other = besides("other.png", "<svg></svg>");
    expect(() => makerBuild(packFile({}, { logo: other }))).toThrow(
      /is not the picture that its name says/,
    );
    expect(() => makerBuild(packFile({}, { logo: "../mark.svg" }))).toThrow(/beside the library/);
  });

  it("refuses a pack that is not there, from the future, or without an edition", () => {
    expect(() => makerBuild(join(folder, "nowhere.json"))).toThrow(/there is no such file/);
    const later = { version: 3 } as unknown as Partial<Pack>;
    expect(() => makerBuild(packFile(later))).toThrow(/newer version of Stopfit/);
    const { edition: _, ...without } = demoPack;
    const file = packFile();
    writeFileSync(file, JSON.stringify({ ...without, maker: own }));
    expect(() => makerBuild(file)).toThrow(/needs an edition and a maker/);
  });
});
