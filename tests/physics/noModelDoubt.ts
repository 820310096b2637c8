/**
 * In place of `modelDoubt.ts`, for tests of how the doubt of readings alone goes through the formulas:
 * `vi.mock(…/modelDoubt.ts, () => import(…/noModelDoubt.ts))`.
 */
export const modelDoubt = {
  carriesWheel: 0,
  fourBar: 0,
  instantCentre: 0,
  typed: 0,
  prior: 0,
  strutArm: 0,
  axle: 0,
  straight: 0,
};
