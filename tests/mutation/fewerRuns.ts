import fc, { type DoubleConstraints, type Parameters } from "fast-check";

export * from "fast-check";

/*
 * fast-check as the tests under mutation have it: a property is tried a few times, always the same ones,
 * and doubles between two bounds are spread evenly between them instead of over all powers of ten, most
 * of which are next to nothing. A mutant that needs more is one for a test with exact values.
 */

/** Records are checked whole in many of their properties, which takes long: those are tried fewer times. */
const mostRuns = /^(records|sharing|storage)/.test(process.env.STOPFIT_MUTATED ?? "") ? 5 : 25;

function assertFewer<Values>(
  property: fc.IRawProperty<Values>,
  parameters?: Parameters<Values>,
): unknown {
  // A property with promises is one itself: its test waits for it.
  return fc.assert(property as fc.IProperty<Values>, {
    ...parameters,
    seed: 1,
    endOnFailure: true,
    numRuns: Math.min(parameters?.numRuns ?? mostRuns, mostRuns),
  });
}

const steps = 2 ** 30;

function evenDouble(constraints: DoubleConstraints = {}): fc.Arbitrary<number> {
  const { min, max } = constraints;
  if (min === undefined || max === undefined) return fc.double(constraints);
  return fc
    .integer({ min: 0, max: steps })
    .map((step) => Math.min(max, min + ((max - min) * step) / steps));
}

export default { ...fc, assert: assertFewer, double: evenDouble };
