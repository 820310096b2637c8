import { commonTokens, declareClassPlugin, PluginKind, tokens } from "@stryker-mutator/api/plugin";
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import { bundleTests } from "./bundle.mjs";

const stryker = () => {
  globalThis.__stryker__ ??= {};
  return globalThis.__stryker__;
};

/**
 * A test runner for Stryker that keeps the tests loaded and runs them in its own process: the tests of
 * the calculation are plain functions, and thousands of mutants must be tried on a small machine. Only
 * a mutant of what runs as a module is loaded has everything loaded anew.
 */
class InProcessRunner {
  static inject = tokens(commonTokens.options);

  constructor(options) {
    this.options = options.inProcess;
    this.loads = 0;
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    if (this.options.needsWindow) await giveWindow();
    this.address = await bundleTests(this.options);
  }

  /** Declares the tests; what their modules do as they are loaded is done again each time. */
  async load() {
    this.loads += 1;
    await import(`${this.address}?load=${this.loads}`);
    this.tests = new Map(globalThis.declaredTests.map((test) => [test.name, test]));
  }

  async dryRun() {
    const state = stryker();
    state.activeMutant = undefined;
    state.hitCount = undefined;
    try {
      await this.load();
    } catch (error) {
      return { status: DryRunStatus.Error, errorMessage: String(error?.stack ?? error) };
    }
    const tests = [];
    for (const test of this.tests.values()) {
      state.currentTestId = test.name;
      tests.push(await resultOf(test));
      state.currentTestId = undefined;
    }
    this.timeOf = new Map(tests.map(({ name, timeSpentMs }) => [name, timeSpentMs]));
    return { status: DryRunStatus.Complete, tests, mutantCoverage: state.mutantCoverage };
  }

  async mutantRun({ activeMutant, mutantActivation, testFilter, hitLimit, reloadEnvironment }) {
    const state = stryker();
    state.hitCount = hitLimit === undefined ? undefined : 0;
    state.hitLimit = hitLimit;
    const whole =
      this.options.loadAnew.some((name) => activeMutant.fileName.endsWith(name)) ||
      mutantActivation === "static" ||
      reloadEnvironment === true;
    // A process that follows one that took too long has no tests yet.
    const unsound = this.dirty === true || this.tests === undefined;
    if (!whole && unsound) await this.reloadSound();
    if (whole) {
      this.dirty = true;
      state.activeMutant = activeMutant.id;
      try {
        await this.load();
      } catch (error) {
        const tests = [failure("loading the tests", error)];
        return this.outcome(tests);
      }
    }
    state.activeMutant = activeMutant.id;
    const timeOf = (name) => this.timeOf?.get(name) ?? 0;
    // The quick tests first: the first that fails ends it.
    const names = [...(testFilter ?? this.tests.keys())].sort((a, b) => timeOf(a) - timeOf(b));
    const tests = [];
    for (const name of names) {
      const test = this.tests.get(name);
      // A mutant that keeps a test from being declared has made it fail.
      const result =
        test === undefined ? failure(name, new Error("not declared")) : await resultOf(test);
      tests.push(result);
      if (result.status === TestStatus.Failed) break;
    }
    state.activeMutant = undefined;
    return this.outcome(tests);
  }

  async reloadSound() {
    stryker().activeMutant = undefined;
    await this.load();
    this.dirty = false;
  }

  outcome(tests) {
    const state = stryker();
    state.activeMutant = undefined;
    const passed = determineHitLimitReached(state.hitCount, state.hitLimit);
    return toMutantRunResult(passed ?? { status: DryRunStatus.Complete, tests });
  }
}

/** What of a browser the tests of the storage look at. */
export async function giveWindow() {
  const { Window } = await import("happy-dom");
  const window = new Window({ url: "http://localhost:3000/" });
  const names = [
    "document",
    "localStorage",
    "sessionStorage",
    "StorageEvent",
    "PageTransitionEvent",
  ];
  Object.assign(globalThis, { window: globalThis });
  for (const name of names)
    Object.defineProperty(globalThis, name, {
      value: window[name],
      configurable: true,
      writable: true,
    });
  // Events stay Node's: what listens to the window or the document is told by those.
  for (const listened of [globalThis, window.document]) {
    const target = new EventTarget();
    for (const name of ["addEventListener", "removeEventListener", "dispatchEvent"]) {
      listened[name] = target[name].bind(target);
    }
  }
}

function failure(name, error) {
  return {
    id: name,
    name,
    timeSpentMs: 0,
    status: TestStatus.Failed,
    failureMessage: String(error?.message ?? error),
  };
}

async function resultOf(test) {
  const start = performance.now();
  try {
    await test.run();
    const timeSpentMs = performance.now() - start;
    return { id: test.name, name: test.name, timeSpentMs, status: TestStatus.Success };
  } catch (error) {
    return failure(test.name, error);
  }
}

export const strykerPlugins = [
  declareClassPlugin(PluginKind.TestRunner, "in-process", InProcessRunner),
];

/** The runner's own options, which Stryker would warn of otherwise. */
export const strykerValidationSchema = {
  properties: { inProcess: { type: "object" } },
};
