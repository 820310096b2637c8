import { configure } from "@testing-library/preact";
import { afterAll, vi } from "vitest";

/* What a test waits for comes, on a busy machine too; that it does not come is told later, but told. */

const patienceMs = 20_000;

configure({ asyncUtilTimeout: patienceMs });

const { waitFor } = vi;
vi.waitFor = (callback, options) =>
  waitFor(callback, typeof options === "number" ? options : { timeout: patienceMs, ...options });
afterAll(() => {
  vi.waitFor = waitFor;
});
