import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import preact from "@preact/preset-vite";
import { build, defineConfig, type Plugin, type ResolvedConfig } from "vite";
import { VitePWA, type VitePWAOptions } from "vite-plugin-pwa";

import packageFile from "./package.json" with { type: "json" };
import { type DeskAddress, readDeskAddress } from "./src/engine/address.ts";
import { layoutKinds } from "./src/physics/layouts/layoutKinds.ts";
import "./src/saying/everyText.ts";
import { inModelUnits } from "./src/saying/modelUnits.ts";
import { classFieldsWrapped } from "./src/tooling/classFields.ts";
import { makerBuild } from "./src/tooling/maker/makerBuild.ts";
import { wordsInBuild } from "./src/tooling/words/wordsInBuild.ts";

/** STOPFIT_WORDS=pseudo builds the app in the language for tests. */
const words = () => wordsInBuild(process.env.STOPFIT_WORDS === "pseudo" ? "pseudo" : "en");

/** The desk that this build sends to, where STOPFIT_DESK names one; nothing of it is in the app otherwise. */
function deskOfBuild(text = process.env.STOPFIT_DESK ?? ""): DeskAddress | null {
  // The page's script and the service worker's both read it from here.
  process.env.VITE_DESK = text;
  if (text === "") return null;
  const address = readDeskAddress(text);
  if (!address.ok) throw new Error(`STOPFIT_DESK: ${inModelUnits(address.fault.sentence)}`);
  return address.value;
}
const desk = deskOfBuild();

const { plugin: maker, maker: makerName, color: makerColor } = makerBuild(process.env.STOPFIT_PACK);

/** `early` is the one script that may stand in the page itself. */
const contentSecurityPolicy = (early: string) => [
  "default-src 'none'",
  `script-src 'self' '${early}'`,
  "style-src 'self'",
  "img-src 'self' data: blob:",
  desk === null ? "connect-src 'self'" : `connect-src 'self' ${desk.url}`,
  "worker-src 'self'",
  "manifest-src 'self'",
  "media-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'none'",
];

/** What settles theme and text size before the first paint, as a script to stand in the page. */
async function earlyScript(): Promise<string> {
  const built = await build({
    configFile: false,
    publicDir: false,
    logLevel: "warn",
    build: {
      write: false,
      // So plain that a browser too old for the app can still run it, to say so.
      target: "es2015",
      lib: { entry: "src/screens/early.ts", formats: ["iife"], name: "early" },
    },
  });
  const output = (Array.isArray(built) ? built : [built]).flatMap((each) =>
    "output" in each ? each.output : [],
  );
  const chunk = output.find((each) => each.type === "chunk");
  if (!chunk) throw new Error("early.ts gave no script.");
  return chunk.code.trim();
}

/**
 * Built pages load nothing but the app's own files, and run no script in the page but the early one,
 * named by its hash; the development server needs inline scripts of its own.
 */
function earlyScriptAndPolicy(): Plugin {
  let policyWanted = false;
  return {
    name: "early-script-and-policy",
    configResolved: ({ command }) => {
      policyWanted = command === "build";
    },
    transformIndexHtml: async () => {
      const early = await earlyScript();
      const hash = `sha256-${createHash("sha256").update(early).digest("base64")}`;
      const script = { tag: "script", children: early, injectTo: "head" as const };
      const policy = {
        tag: "meta",
        attrs: {
          "http-equiv": "Content-Security-Policy",
          content: contentSecurityPolicy(hash).join("; "),
        },
        injectTo: "head-prepend" as const,
      };
      return policyWanted ? [policy, script] : [script];
    },
  };
}

/** A service worker can't fetch code later: without a desk it must not have what sends to one. */
function withoutSending(): Plugin {
  const nothing = "\0nothing-to-send";
  return {
    name: "without-sending",
    enforce: "pre",
    resolveId: (id) => (desk === null && /sendFromWorker\.ts$/.test(id) ? nothing : null),
    load: (id) => (id === nothing ? "export const sendFromWorker = async () => undefined;" : null),
  };
}

/** The first screen knows layouts by name alone: it gets the names, without the motions that they stand for. */
function layoutsByName(): Plugin {
  return {
    name: "layouts-by-name",
    load: (id) =>
      /physics\/layouts\/layoutKinds\.ts$/.test(id)
        ? `export const layoutKinds = ${JSON.stringify(layoutKinds)};`
        : null,
  };
}

let built: ResolvedConfig | undefined;
function rememberConfig(): Plugin {
  return {
    name: "remember-config",
    configResolved: (config) => {
      built ??= config;
    },
  };
}

type ManifestTransform = NonNullable<
  VitePWAOptions["injectManifest"]["manifestTransforms"]
>[number];

/** What only a desk reads: a phone does without what takes archives and mails apart. */
const onlyForDesks = /\/unpack(Worker)?-[^/]+\.js$/;

/** The service worker keeps a file only if it is the one that this build made. */
const withIntegrity: ManifestTransform = async (entries) => {
  const outDir = resolve(built?.root ?? ".", built?.build.outDir ?? "dist");
  const manifest = await Promise.all(
    entries.map(async (entry) => {
      const content = await readFile(resolve(outDir, entry.url));
      const digest = createHash("sha256").update(content).digest("base64");
      const forDesks = onlyForDesks.test(entry.url) ? { forDesks: true } : {};
      return { ...entry, ...forDesks, integrity: `sha256-${digest}` };
    }),
  );
  return { manifest, warnings: [] };
};

export default defineConfig({
  base: "./",
  define: {
    "import.meta.env.VITE_RELEASE": JSON.stringify(process.env.VITE_RELEASE ?? packageFile.version),
  },
  plugins: [
    words(),
    maker,
    preact(),
    layoutsByName(),
    earlyScriptAndPolicy(),
    classFieldsWrapped(),
    rememberConfig(),
    VitePWA({
      registerType: "prompt",
      injectRegister: false,
      strategies: "injectManifest",
      srcDir: "src/screens/offline",
      filename: "serviceWorker.ts",
      includeManifestIcons: false,
      injectManifest: {
        globPatterns: ["**/*.{js,css,html,svg,png,json}"],
        maximumFileSizeToCacheInBytes: 4_000_000,
        manifestTransforms: [withIntegrity],
        buildPlugins: { vite: [words(), withoutSending(), classFieldsWrapped()] },
      },
      manifest: {
        id: "./",
        name: makerName === null ? "Stopfit" : `Stopfit, ${makerName}`,
        short_name: "Stopfit",
        description: "Tells whether a bump stop fits this vehicle as it stands.",
        lang: "en",
        start_url: "./",
        scope: "./",
        display: "standalone",
        background_color: "#edf1ef",
        theme_color: makerColor ?? "#0c4c82",
        categories: ["utilities", "productivity"],
        share_target: {
          action: "./receive",
          method: "POST",
          enctype: "multipart/form-data",
          params: {
            title: "title",
            text: "text",
            url: "url",
            files: [{ name: "check", accept: ["text/plain", "application/json", ".txt", ".json"] }],
          },
        },
        file_handlers: [
          { action: "./", accept: { "application/json": [".json"], "text/plain": [".txt"] } },
        ],
        icons: [
          { src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
          { src: "icon-192.png", sizes: "192x192", type: "image/png", purpose: "any" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
          {
            src: "icon-maskable-512.png",
            sizes: "512x512",
            type: "image/png",
            purpose: "maskable",
          },
        ],
      },
    }),
  ],
  worker: { format: "es", plugins: () => [words(), classFieldsWrapped()] },
  build: {
    // The oldest that have what the app needs (src/screens/oldBrowser.ts): Safari 15.4 with classFields.ts.
    target: ["safari16", "chrome108", "firefox121"],
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        // The first screen lists them all: without names it is half a kilobyte less.
        chunkFileNames: "assets/[hash:7].js",
        codeSplitting: {
          // Few files: through the service worker each costs an old phone some milliseconds.
          groups: [
            { name: "first", tags: ["$initial"], priority: 3 },
            { name: "check", test: /screens[\\/]openCheck[\\/]CheckPlace/, priority: 2 },
            { name: "answer", test: /screens[\\/]answer[\\/]AnswerScreen/, priority: 1 },
          ],
        },
      },
    },
  },
});
