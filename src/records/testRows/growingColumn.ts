/** Numbers added one by one, kept as a typed array that doubles as it fills. */
export class GrowingColumn {
  length = 0;
  #kept = new Float64Array(4096);

  push(value: number): void {
    if (this.length === this.#kept.length) {
      const larger = new Float64Array(2 * this.length);
      larger.set(this.#kept);
      this.#kept = larger;
    }
    this.#kept[this.length++] = value;
  }

  /** Drops what lies beyond the first `length` values. */
  trim(length: number): void {
    this.length = Math.min(this.length, length);
  }

  values(): Float64Array {
    return this.#kept.slice(0, this.length);
  }
}
