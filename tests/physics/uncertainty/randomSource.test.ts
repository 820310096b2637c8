import { describe, expect, it } from "vitest";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";

const word = (value: bigint) => BigInt.asUintN(32, value);

/** FNV-1a of ASCII text, 32 bits (Fowler, Noll, Vo), in whole numbers of any length. */
function fnv1a(text: string): bigint {
  let hash = 2166136261n;
  for (const character of text) {
    hash = word((hash ^ BigInt(character.charCodeAt(0))) * 16777619n);
  }
  return hash;
}

/** fmix32 of MurmurHash3 (Appleby), likewise. */
function finalised(value: bigint): bigint {
  let bits = word(value);
  bits = word((bits ^ (bits >> 16n)) * 0x85ebca6bn);
  bits = word((bits ^ (bits >> 13n)) * 0xc2b2ae35n);
  return bits ^ (bits >> 16n);
}

/** Four terms of a Weyl sequence by 2³² over the golden ratio, finalised; the first made odd. */
function stateOf(seed: number, name: string): readonly [number, number, number, number] {
  const start = finalised(fnv1a(name) ^ finalised(BigInt(seed)));
  const term = (count: bigint) => finalised(start + count * 0x9e3779b9n);
  return [Number(term(1n) | 1n), Number(term(2n)), Number(term(3n)), Number(term(4n))];
}

const many = (source: RandomSource) => Array.from({ length: 20 }, () => source.nextInteger());

describe("the stream of a name", () => {
  // Published check values, from memory: the FNV reference's "foobar", and MurmurHash3 x86 32 of no
  // bytes, which is the finaliser of its seed.
  it("is compared with hashes that meet their published values", () => {
    expect(fnv1a("")).toBe(0x811c9dc5n);
    expect(fnv1a("a")).toBe(0xe40c292cn);
    expect(fnv1a("foobar")).toBe(0xbf9cf968n);
    expect(finalised(0n)).toBe(0n);
    expect(finalised(1n)).toBe(0x514e28b7n);
    expect(finalised(0xffffffffn)).toBe(0x81f16f39n);
  });

  it.each([
    [0, ""],
    [1, "a"],
    [20_080_101, "left.gap tool"],
    [-7, "pivotToStop scatter"],
    [4_294_967_301, "right.limits.0 tool"],
  ])("starts from the hash of name and seed: %d, %s", (seed, name) => {
    expect(many(RandomSource.stream(seed, name))).toEqual(
      many(new RandomSource(stateOf(seed, name))),
    );
  });

  it("takes the low 32 bits of its seed", () => {
    expect(many(RandomSource.stream(2 ** 32 + 5, "gap"))).toEqual(
      many(RandomSource.stream(5, "gap")),
    );
  });
});

describe("numbers of a distribution", () => {
  const state = [1, 2, 3, 4] as const;
  // The first two integers from this state are 11520 and 0 (see the published ones).
  const uniform = (integer: number) => (integer - (2 ** 32 - 1) / 2) / 2 ** 31;

  it("between −1 and 1 stand in the middle of 2³² equal steps", () => {
    const source = new RandomSource(state);
    expect([source.nextSymmetric(), source.nextSymmetric()]).toEqual([uniform(11520), uniform(0)]);
  });

  it("of a rectangular one are added, the half-width times as great", () => {
    const out = Float64Array.of(100, 200, 300);
    new RandomSource(state).addRectangular(out.subarray(0, 2), 8);
    expect([...out]).toEqual([100 + 8 * uniform(11520), 200 + 8 * uniform(0), 300]);
  });

  it("of a normal one are added by the polar method, pair by pair within the unit circle", () => {
    const uniforms = new RandomSource(state);
    const wanted: number[] = [];
    let refused = 0;
    while (wanted.length < 40) {
      const x = uniforms.nextSymmetric();
      const y = uniforms.nextSymmetric();
      const radius = Math.hypot(x, y);
      if (radius >= 1) {
        refused++;
        continue;
      }
      // √(−2·ln r²) along the pair's direction, Knuth 3.4.1, algorithm P.
      const length = 3 * Math.sqrt(-4 * Math.log(radius));
      wanted.push(100 + (length * x) / radius, 100 + (length * y) / radius);
    }
    expect(refused).toBeGreaterThan(0);
    const out = new Float64Array(40).fill(100);
    new RandomSource(state).addNormal(out, 3);
    for (const [index, value] of out.entries()) expect(value).toBeCloseTo(wanted[index] ?? 0, 10);
  });

  it("take as many integers of the stream as they need, no more", () => {
    const after = (take: (source: RandomSource, out: Float64Array) => void) => {
      const source = new RandomSource(state);
      take(source, new Float64Array(4));
      return source.nextInteger();
    };
    // The first pair of this state lies outside of the unit circle, both numbers being near −1.
    const integers = many(new RandomSource(state));
    expect(after((source, out) => source.addRectangular(out, 1))).toBe(integers[4]);
    const pairs = Array.from({ length: 10 }, (_, pair) => {
      const [x = 0, y = 0] = integers.slice(2 * pair).map(uniform);
      return Math.hypot(x, y) < 1;
    });
    const second = pairs.indexOf(true, pairs.indexOf(true) + 1);
    expect(pairs[0]).toBe(false);
    expect(after((source, out) => source.addNormal(out, 1))).toBe(integers[2 * second + 2]);
  });
});
