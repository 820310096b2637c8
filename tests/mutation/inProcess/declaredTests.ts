import {
  chai,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from "@vitest/expect";
import { fn, restoreAllMocks, spyOn } from "@vitest/spy";
import { FakeClock } from "./fakeClock.ts";

/*
 * Stands in for "vitest" in the bundle that mutants run in: vitest's own matchers and spies, and as much of
 * the rest as these tests use. Tests are declared once and run many times.
 */

export interface DeclaredTest {
  readonly name: string;
  readonly run: () => unknown;
}

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = Object.assign(
  (value: unknown, message?: string) => chai.expect(value, message),
  chai.expect,
);
setState({ assertionCalls: 0, currentTestName: "" }, expect as never);
Reflect.set(globalThis, GLOBAL_EXPECT, expect);

type Hook = () => unknown;

/** A group of tests: its name goes before theirs, its hooks around each. */
interface Group {
  readonly name: string;
  readonly before: Hook[];
  readonly after: Hook[];
  readonly outer: Group | null;
}

const declared: DeclaredTest[] = [];
Reflect.set(globalThis, "declaredTests", declared);
const groupOf = (name: string, outer: Group | null): Group => ({
  name,
  before: [],
  after: [],
  outer,
});
let group = groupOf("", null);

/** Opens a group for the tests of one file, whose hooks are its alone. */
export function beginFile(name: string): void {
  group = groupOf(`${name} > `, null);
}

/** Outermost first. */
function groupsOf(inner: Group): Group[] {
  return inner.outer === null ? [inner] : [...groupsOf(inner.outer), inner];
}

async function runWithin(inner: Group, body: Hook): Promise<void> {
  const groups = groupsOf(inner);
  try {
    for (const { before } of groups) for (const hook of before) await hook();
    await body();
  } finally {
    for (const { after } of [...groups].reverse()) for (const hook of after) await hook();
  }
}

/** Names need not read as vitest's do, but be one test's alone. */
function named(name: string, first: unknown, second?: unknown): void {
  const body = (typeof first === "function" ? first : second) as Hook;
  const own = group;
  const whole = `${own.name}${name}`;
  const twins = declared.filter(
    (test) => test.name === whole || test.name.startsWith(`${whole} #`),
  );
  declared.push({
    name: twins.length === 0 ? whole : `${whole} #${twins.length + 1}`,
    run: () => runWithin(own, body),
  });
}

function within(name: string, first: unknown, second?: unknown): void {
  const outer = group;
  group = groupOf(`${outer.name}${name} > `, outer);
  ((typeof first === "function" ? first : second) as Hook)();
  group = outer;
}

export const beforeEach = (hook: Hook): void => void group.before.push(hook);
export const afterEach = (hook: Hook): void => void group.after.push(hook);
/** Done before the first test that is run, whichever that is. */
export function beforeAll(hook: Hook): void {
  let done: unknown;
  group.before.push(async () => {
    done ??= Promise.resolve(hook());
    await done;
  });
}
export const afterAll = (_: Hook): void => undefined;

const stubbed = new Map<string, PropertyDescriptor | undefined>();
const clock = new FakeClock();

/** As much of `vi` as the tests use. */
export const vi = {
  fn,
  spyOn,
  restoreAllMocks,
  setConfig: () => undefined,
  stubGlobal(name: string, value: unknown): void {
    if (!stubbed.has(name)) stubbed.set(name, Object.getOwnPropertyDescriptor(globalThis, name));
    Object.defineProperty(globalThis, name, { value, writable: true, configurable: true });
  },
  unstubAllGlobals(): void {
    for (const [name, before] of stubbed) {
      if (before) Object.defineProperty(globalThis, name, before);
      else Reflect.deleteProperty(globalThis, name);
    }
    stubbed.clear();
  },
  useFakeTimers: (options?: { readonly toFake?: readonly string[]; readonly now?: Date }): void =>
    clock.install(options),
  setSystemTime: (time: Date | number | string): void => clock.set(new Date(time).getTime()),
  advanceTimersByTimeAsync: (ms: number): Promise<void> => clock.advance(ms),
  useRealTimers: (): void => clock.uninstall(),
  async waitFor<Value>(look: () => Value | Promise<Value>): Promise<Value> {
    for (let left = 200; ; left -= 1) {
      try {
        return await look();
      } catch (error) {
        if (left === 0) throw error;
        await new Promise((done) => setTimeout(done, 5));
      }
    }
  },
};

function listOf(row: unknown): unknown[] {
  return Array.isArray(row) ? row : [row];
}

const each =
  (declare: (name: string, body: () => unknown) => void) =>
  (rows: readonly unknown[]) =>
  (name: string, first: unknown, second?: unknown) => {
    const body = (typeof first === "function" ? first : second) as (
      ...values: unknown[]
    ) => unknown;
    rows.forEach((row, index) => {
      declare(`${name} (${index + 1})`, () => body(...listOf(row)));
    });
  };

export const it = Object.assign(named, { each: each(named) });
export const test = it;
export const describe = Object.assign(within, {
  each: each((name, body) => within(name, () => void body())),
});
