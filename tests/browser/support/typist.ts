/** How a person writes the numbers of a record down. */
export interface Typist {
  readonly unit: "mm" | "in";
  /** A length as it is typed, each time in another of the usual ways. */
  length(mm: number): string;
  tolerance(mm: number): string;
  /** A rate in N/mm or a damping in N·s/mm, in this person's own unit. */
  perLength(newtonsPerMm: number): string;
}

/** NIST SP 811, App. B: 1 lbf/in = 0.175126835246476 N/mm. */
const newtonsPerMmInPoundsPerInch = 0.175126835246476;

export const inMillimetres: Typist = {
  unit: "mm",
  length: String,
  tolerance: String,
  perLength: String,
};

/** Sixty-fourths of an inch, in lowest terms: the finest graduation of a machinist's rule. */
function sixtyFourths(inches: number, joint: string): string {
  let numerator = Math.round(inches * 64);
  let denominator = 64;
  while (numerator % 2 === 0 && denominator > 1) {
    numerator /= 2;
    denominator /= 2;
  }
  const whole = Math.floor(numerator / denominator);
  const rest = numerator % denominator;
  if (rest === 0) return `${whole}`;
  return whole === 0 ? `${rest}/${denominator}` : `${whole}${joint}${rest}/${denominator}`;
}

export function inInches(): Typist {
  const ways: ((inches: number) => string)[] = [
    (inches) => sixtyFourths(inches, " "),
    (inches) => sixtyFourths(inches, "-"),
    (inches) => inches.toFixed(3),
    (inches) => inches.toFixed(2).replace(".", ","),
    (inches) => `${inches.toFixed(3)}"`,
    (inches) => `${(inches * 2.54).toFixed(2)} cm`,
  ];
  let typed = 0;
  return {
    unit: "in",
    length(mm) {
      const way = ways[typed++ % ways.length] ?? String;
      return way(mm / 25.4);
    },
    tolerance: (mm) => (mm / 25.4).toFixed(4),
    perLength: (value) => (value / newtonsPerMmInPoundsPerInch).toFixed(2),
  };
}
