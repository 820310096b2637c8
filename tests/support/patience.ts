import { configure, getConfig } from "@testing-library/preact";
import { afterAll, vi } from "vitest";

/* What a test waits for comes, on a busy machine too; that it does not come is told later, but told. */

const patienceMs = 20_000;

const { getElementError } = getConfig();
configure({
  asyncUtilTimeout: patienceMs,
  // A look in vain while waiting is thrown away: only the last one shows the page, which takes long to print.
  getElementError: (message, container) =>
    Reflect.get(getConfig(), "_disableExpensiveErrorDiagnostics")
      ? Object.assign(new Error(message ?? ""), { name: "TestingLibraryElementError" })
      : getElementError(message, container),
});

const { waitFor } = vi;
vi.waitFor = (callback, options) =>
  waitFor(callback, typeof options === "number" ? options : { timeout: patienceMs, ...options });
afterAll(() => {
  vi.waitFor = waitFor;
});
