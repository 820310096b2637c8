import preact from "@preact/preset-vite";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "unit",
          environment: "node",
          include: ["tests/{physics,published,records,command-line,compute,sharing}/**/*.test.ts"],
        },
      },
      {
        plugins: [preact()],
        test: {
          name: "component",
          environment: "happy-dom",
          include: ["tests/{screens,storage}/**/*.test.{ts,tsx}"],
        },
      },
      {
        test: {
          name: "browser",
          environment: "node",
          include: ["tests/browser/**/*.test.ts"],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 180_000,
        },
      },
    ],
    coverage: { provider: "v8", include: ["src/physics/**"] },
  },
});
