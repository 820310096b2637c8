import { describe, expect, it } from "vitest";
import { speedGroups } from "../../../src/physics/stopTests/speedGroups.ts";

const of = (...speeds: readonly number[]) => speedGroups(Float64Array.from(speeds));

describe("the speeds of a test", () => {
  it("are one where there is one, or all are neighbours within 8 %", () => {
    expect(of(100).count).toBe(1);
    expect(of(100, 101).count).toBe(1);
    expect(of(100).groupOf(5000)).toBe(0);
    expect(of(1, 1.08).count).toBe(1);
    expect(of(1, 1.081).count).toBe(2);
  });

  it("are parted at the mean of their logarithms, whatever their order; half-way is the slower", () => {
    const { count, groupOf } = of(100, 900, 100, 900, 3600);
    expect(count).toBe(3);
    // √(100·900) and √(900·3600).
    expect([1, 100, 299, 301, 900, 1799, 1801, 9999].map(groupOf)).toEqual([
      0, 0, 0, 1, 1, 1, 2, 2,
    ]);
    // e^((ln 1 + ln 4)/2), to the last digit.
    expect(of(1, 4).groupOf(2)).toBe(0);
  });

  it("may run on to 1.3 times the slowest; a sweep beyond is cut into even parts", () => {
    expect(of(1, 1.07, 1.14, 1.22, 1.3).count).toBe(1);
    // 1 to 1.42: two parts, cut at √1.42 = 1.192.
    const two = of(1, 1.07, 1.14, 1.22, 1.3, 1.36, 1.42);
    expect(two.count).toBe(2);
    expect([1.19, 1.194].map(two.groupOf)).toEqual([0, 1]);
    // 100 to 200 in steps of 5 %: ln 2/ln 1.3 = 2.6, so three parts, cut at 126.0 and 158.7, then 1000.
    const sweep = of(
      ...Array.from({ length: 16 }, (_, at) => Math.min(200, 100 * 1.05 ** at)),
      1000,
    );
    expect(sweep.count).toBe(4);
    // Between 200 and 1000: √200000 = 447.2.
    expect([125.9, 126.1, 158.6, 158.9, 447, 448].map(sweep.groupOf)).toEqual([0, 1, 1, 2, 2, 3]);
  });

  it("are twelve at most: thirteen are cut anew, in even steps of their ratio", () => {
    // Thirteen speeds, each twice the one before: 12 groups over a ratio of 2^12, so 2 each.
    const speeds = Array.from({ length: 13 }, (_, at) => 2 ** at);
    const cut = of(...speeds);
    expect(cut.count).toBe(12);
    expect([1, 1.9, 2.1, 1500, 4096].map(cut.groupOf)).toEqual([0, 0, 1, 10, 11]);
    // Twelve stay: parted at 2^½, 2^1½ …
    const own = of(...speeds.slice(0, 12));
    expect(own.count).toBe(12);
    expect(speeds.slice(0, 12).map(own.groupOf)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect([1.4, 1.42, 1.9].map(own.groupOf)).toEqual([0, 1, 1]);
    // Thirteen from 10 on: steps of their ratio still, from the slowest.
    const from10 = of(...speeds.map((speed) => 10 * speed));
    expect([10, 19, 21, 39, 41].map(from10.groupOf)).toEqual([0, 0, 1, 1, 2]);
  });
});
