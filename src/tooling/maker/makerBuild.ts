import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { dirname, extname, join, resolve } from "node:path";
import type { Plugin } from "vite";
import type { Pack } from "../../records/pack/pack.ts";
import { readPackText } from "../../records/pack/readPack.ts";
import "../../saying/everyText.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { accentsOf, withAccents } from "./makerColors.ts";

/** What is more is not kept for use without a signal (vite.config.ts). */
const mostBytes = 4_000_000;
const mostLogoBytes = 200_000;

interface MakersFiles {
  readonly pack: Pack;
  readonly packFile: string;
  readonly packText: string;
  readonly digest: string;
  readonly logo: { readonly file: string; readonly bytes: Buffer } | null;
  readonly accents: Parameters<typeof withAccents>[1] | null;
}

function digestOf(content: string | Buffer): string {
  return createHash("sha256").update(content).digest("hex").slice(0, 16);
}

function refuse(...sentences: readonly string[]): never {
  throw new Error(`The pack of STOPFIT_PACK can't be used.\n${sentences.join("\n")}`);
}

type Logo = NonNullable<MakersFiles["logo"]>;

/** The logo beside the pack, or why it can't be used. */
function readLogo(path: string): Logo | string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch {
    return `${path}: there is no such file. “logo” names a file beside the pack.`;
  }
  if (bytes.length > mostLogoBytes) {
    return `${path} has ${Math.round(bytes.length / 1000)} kB; a logo may have ${mostLogoBytes / 1000} kB.`;
  }
  const type = extname(path).toLowerCase();
  const isPng = bytes.subarray(0, 8).equals(Buffer.from("89504e470d0a1a0a", "hex"));
  const isSvg = /<svg[\s>]/.test(bytes.subarray(0, 2000).toString("utf8"));
  return (type === ".png" ? isPng : isSvg)
    ? { file: `maker-${digestOf(bytes)}${type}`, bytes }
    : `${path} is not the picture that its name says.`;
}

/** What a build would refuse of a maker's color and logo, in sentences. */
export function makerFaults({ maker }: Pick<Pack, "maker">, folder: string): readonly string[] {
  const accents = maker?.color === undefined ? null : accentsOf(maker.color);
  const logo = maker?.logo === undefined ? null : readLogo(join(folder, maker.logo));
  return [
    ...(accents?.ok === false ? [accents.sentence] : []),
    ...(typeof logo === "string" ? [logo] : []),
  ];
}

/** Reads the maker's files, or says in sentences what is wrong with them. */
function readMakersFiles(file: string): MakersFiles {
  const path = resolve(file);
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch {
    return refuse(`${path}: there is no such file.`);
  }
  const read = readPackText(text, path);
  if (!read.ok) return refuse(...read.faults.map(({ sentence }) => inModelUnits(sentence)));
  const pack = read.value;
  if (!pack.edition || !pack.maker) {
    return refuse("It needs an edition and a maker: every check keeps which edition it used.");
  }
  const packText = JSON.stringify(pack);
  if (Buffer.byteLength(packText) > mostBytes) {
    refuse(
      `It has ${(Buffer.byteLength(packText) / 1e6).toFixed(1)} MB; a phone keeps up to ${mostBytes / 1e6} MB. Leave out rows of tests.`,
    );
  }
  const folder = dirname(path);
  const faults = makerFaults(pack, folder);
  if (faults.length > 0) refuse(...faults);
  const { logo, color } = pack.maker;
  const accents = color === undefined ? null : accentsOf(color);
  const picture = logo === undefined ? null : readLogo(join(folder, logo));
  const digest = digestOf(packText);
  return {
    pack,
    packText,
    packFile: `pack-${digest}.json`,
    digest,
    logo: typeof picture === "string" ? null : picture,
    accents: accents?.ok ? accents.accents : null,
  };
}

/**
 * A maker's pack in place of the demonstration's: a file of its own with its digest in its name, kept for
 * use without a signal like every other; what ships in the scripts is no more than its name. Nothing
 * changes where no file is named.
 */
export function makerBuild(file: string | undefined): {
  readonly plugin: Plugin;
  readonly maker: string | null;
  /** Of the light theme; null: the app's own. */
  readonly color: string | null;
} {
  const files = file ? readMakersFiles(file) : null;
  const define = {
    "import.meta.env.VITE_PACK_FILE": JSON.stringify(files?.packFile ?? ""),
    "import.meta.env.VITE_PACK_DIGEST": JSON.stringify(files?.digest ?? ""),
    "import.meta.env.VITE_PACK_MAKER": JSON.stringify(files?.pack.maker?.name ?? ""),
    "import.meta.env.VITE_PACK_LOGO": JSON.stringify(files?.logo?.file ?? ""),
  };
  return {
    maker: files?.pack.maker?.name ?? null,
    color: files?.accents?.light.accent ?? null,
    plugin: {
      name: "maker-build",
      enforce: "pre",
      config: () => ({ define }),
      buildStart() {
        if (!files || this.environment?.name === "ssr") return;
        this.emitFile({ type: "asset", fileName: files.packFile, source: files.packText });
        if (files.logo) {
          this.emitFile({ type: "asset", fileName: files.logo.file, source: files.logo.bytes });
        }
      },
      transform(code, id) {
        if (!files) return null;
        const path = id.replace(/\\/g, "/").replace(/\?.*$/, "");
        if (path.endsWith("/demo-data/pack.json")) {
          const { stops: _stops, platforms: _platforms, ...head } = files.pack;
          return JSON.stringify({ ...head, stops: [], platforms: [] });
        }
        if (files.accents && path.endsWith("/screens/styles/tokens.css")) {
          return withAccents(code, files.accents);
        }
        if (files.accents && path.endsWith("/screens/styles/paper.css")) {
          return code.replace(/--accent: [^;]+;/, `--accent: ${files.accents.light.accent};`);
        }
        return null;
      },
    },
  };
}
