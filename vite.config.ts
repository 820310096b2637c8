import preact from "@preact/preset-vite";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";

export default defineConfig({
  base: "./",
  plugins: [preact(), VitePWA({ registerType: "prompt", injectRegister: false })],
  worker: { format: "es" },
  build: { target: "es2022" },
});
