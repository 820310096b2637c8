/**
 * Travel above rest that is passed as often as allowed, mm, on a road of class C at 60 km/h (model,
 * section 4): σ·√(2·ln(ν0·1000/(V·N))), σ² = D·M/2c, ν0 = √(kt/M)/2π, D = 2π²·n0²·Gd(n0)·V.
 *
 * @param dampingNsPerMm mean of bump and rebound
 * @param allowed contacts per km
 */
export function aboveRest(massKg: number, tyreNPerMm: number, dampingNsPerMm: number, allowed = 2) {
  const speed = 60 / 3.6;
  const intensity = 2 * Math.PI ** 2 * 0.1 ** 2 * 256e-6 * speed;
  const sigma = 1000 * Math.sqrt((intensity * massKg) / (2 * 1000 * dampingNsPerMm));
  const upcrossings = Math.sqrt((1000 * tyreNPerMm) / massKg) / (2 * Math.PI);
  return sigma * Math.sqrt(2 * Math.log((upcrossings * 1000) / (speed * allowed)));
}
