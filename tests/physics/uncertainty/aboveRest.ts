/**
 * Travel above rest that is passed as often as allowed, mm, on a road of class C at 60 km/h and
 * kurtosis 5: σ times the level at which the greater of exp(−z²/2) and (1 + u)·exp(−u), u = √3·z, is
 * V·N/(ν0·1000), found by halving; σ² = D·M/2c, ν0 = √(kt/M)/2π, D = 2π²·n0²·Gd(n0)·V.
 *
 * @param dampingNsPerMm mean of bump and rebound
 * @param allowed contacts per km, less than half as many as there are passages of the mean
 */
export function aboveRest(massKg: number, tyreNPerMm: number, dampingNsPerMm: number, allowed = 2) {
  const speed = 60 / 3.6;
  const intensity = 2 * Math.PI ** 2 * 0.1 ** 2 * 256e-6 * speed;
  const sigma = 1000 * Math.sqrt((intensity * massKg) / (2 * 1000 * dampingNsPerMm));
  const upcrossings = Math.sqrt((1000 * tyreNPerMm) / massKg) / (2 * Math.PI);
  const share = (speed * allowed) / (upcrossings * 1000);
  let low = 0;
  let high = 40;
  for (let halving = 0; halving < 100; halving++) {
    const z = (low + high) / 2;
    const u = Math.sqrt(3) * z;
    if (Math.max(Math.exp((-z * z) / 2), (1 + u) * Math.exp(-u)) > share) low = z;
    else high = z;
  }
  return sigma * low;
}
