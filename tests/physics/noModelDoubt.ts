import { linkages } from "../../src/physics/kinematics/linkages.ts";

/**
 * In place of `modelDoubt.ts`, for tests of how the doubt of readings alone goes through the formulas:
 * `vi.mock(…/modelDoubt.ts, () => import(…/noModelDoubt.ts))`.
 */
export const modelDoubt = Object.fromEntries(Object.keys(linkages).map((name) => [name, 0]));
