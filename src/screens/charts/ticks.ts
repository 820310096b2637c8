/** Round values (1, 2 or 5 times a power of ten apart) within [from, to], about `count` of them. */
export function linearTicks(from: number, to: number, count: number): number[] {
  if (!(to > from) || count < 1) return [];
  const rough = (to - from) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= rough * 0.999) ?? 10 * power;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Array.from({ length: last - first + 1 }, (_, i) =>
    Number(((first + i) * step).toFixed(decimals)),
  );
}
