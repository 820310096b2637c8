/**
 * Uniform 32-bit integers from xoshiro128** 1.1: D. Blackman & S. Vigna, "Scrambled linear
 * pseudorandom number generators", ACM Trans. Math. Softw. 47 (2021) 36. Period 2^128 − 1.
 *
 * Each reading draws from a stream of its own, so that its draws depend on nothing but the seed and
 * its id: neither on the order of a record's fields nor on what else was measured. Everything is
 * integer arithmetic, the same on every machine.
 */
export class RandomSource {
  #a: number;
  #b: number;
  #c: number;
  #d: number;

  /** State of four 32-bit words, not all zero. */
  constructor(state: readonly [number, number, number, number]) {
    [this.#a, this.#b, this.#c, this.#d] = state;
  }

  /**
   * The stream of one name under one seed (any integer; its low 32 bits count). The name's FNV-1a hash
   * and the seed start a Weyl sequence, whose terms, mixed by MurmurHash3's finaliser, are the state.
   */
  static stream(seed: number, name: string): RandomSource {
    let hash = 0x811c9dc5;
    for (let index = 0; index < name.length; index++) {
      hash = Math.imul(hash ^ name.charCodeAt(index), 0x01000193);
    }
    let counter = mixed(hash ^ mixed(seed | 0));
    const word = () => {
      counter = (counter + 0x9e3779b9) | 0;
      return mixed(counter);
    };
    return new RandomSource([word() | 1, word(), word(), word()]);
  }

  /** The next integer, 0 … 2^32 − 1. */
  nextInteger(): number {
    const product = Math.imul(this.#b, 5);
    const result = Math.imul((product << 7) | (product >>> 25), 9);
    const shifted = this.#b << 9;
    this.#c ^= this.#a;
    this.#d ^= this.#b;
    this.#b ^= this.#c;
    this.#a ^= this.#d;
    this.#c ^= shifted;
    this.#d = (this.#d << 11) | (this.#d >>> 21);
    return result >>> 0;
  }

  /** The next number of a uniform distribution on −1 … 1, ends excluded; steps of 2^−31. */
  nextSymmetric(): number {
    return (this.nextInteger() - 2147483647.5) / 2147483648;
  }

  /** The next number of a uniform distribution on 0 … 1. */
  nextUniform(): number {
    return (1 + this.nextSymmetric()) / 2;
  }

  /** The next number of a standard normal distribution. Box & Muller, Ann. Math. Stat. 29 (1958) 610. */
  nextNormal(): number {
    return (
      Math.sqrt(-2 * Math.log(this.nextUniform())) * Math.cos(2 * Math.PI * this.nextUniform())
    );
  }

  /** Adds draws of a rectangular distribution on ±halfWidth (≥ 0) to each number of `out`. */
  addRectangular(out: Float32Array | Float64Array, halfWidth: number): void {
    const scale = halfWidth / 2147483648;
    for (let index = 0; index < out.length; index++) {
      out[index] = out[index] + scale * (this.nextInteger() - 2147483647.5);
    }
  }

  /**
   * Adds draws of a normal distribution with mean 0 and the given standard deviation (≥ 0) to each
   * number of `out`, in pairs by the polar method: Marsaglia & Bray, SIAM Rev. 6 (1964) 260; Knuth,
   * The Art of Computer Programming, vol. 2, 3.4.1.
   */
  addNormal(out: Float32Array | Float64Array, standardDeviation: number): void {
    for (let index = 0; index < out.length; index += 2) {
      let x: number;
      let y: number;
      let square: number;
      do {
        x = this.nextSymmetric();
        y = this.nextSymmetric();
        square = x * x + y * y;
      } while (square >= 1);
      const scale = standardDeviation * Math.sqrt((-2 * Math.log(square)) / square);
      out[index] = out[index] + scale * x;
      // Past the end of an odd number of them the array takes nothing.
      out[index + 1] = out[index + 1] + scale * y;
    }
  }
}

/** MurmurHash3's 32-bit finaliser: every input bit reaches every output bit. */
function mixed(word: number): number {
  let bits = word;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return bits ^ (bits >>> 16);
}
