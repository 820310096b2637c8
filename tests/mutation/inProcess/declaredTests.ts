import {
  chai,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from "@vitest/expect";

/*
 * Stands in for "vitest" in the bundle that mutants run in: vitest's own matchers, and as much of
 * describe and it as the tests of the calculation use. Tests are declared once and run many times.
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

const declared: DeclaredTest[] = [];
Reflect.set(globalThis, "declaredTests", declared);
let prefix = "";

/** Names need not read as vitest's do, but be one test's alone. */
function named(name: string, run: () => unknown): void {
  const whole = `${prefix}${name}`;
  const twins = declared.filter(
    (test) => test.name === whole || test.name.startsWith(`${whole} #`),
  );
  declared.push({ name: twins.length === 0 ? whole : `${whole} #${twins.length + 1}`, run });
}

function within(name: string, fill: () => void): void {
  const outer = prefix;
  prefix = `${outer}${name} > `;
  fill();
  prefix = outer;
}

function listOf(row: unknown): unknown[] {
  return Array.isArray(row) ? row : [row];
}

const each =
  (declare: (name: string, body: () => unknown) => void) =>
  (rows: readonly unknown[]) =>
  (name: string, body: (...values: unknown[]) => unknown) => {
    rows.forEach((row, index) => {
      declare(`${name} (${index + 1})`, () => body(...listOf(row)));
    });
  };

export const it = Object.assign(named, { each: each(named) });
export const test = it;
export const describe = Object.assign(within, {
  each: each((name, body) => within(name, () => void body())),
});
