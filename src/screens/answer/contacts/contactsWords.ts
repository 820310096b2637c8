/** How often, in words: "12.3 per km", "once in 850 km", "less than once in a million km". */
export function contactsText(perKm: number): string {
  if (!Number.isFinite(perKm)) return "unknown";
  if (perKm >= 0.995) return `${Number(perKm.toPrecision(3))} per km`;
  if (perKm < 1e-6) return "less than once in a million km";
  const kilometres = Number((1 / perKm).toPrecision(2));
  return `once in ${kilometres.toLocaleString("en").replace(/,/g, "\u202f")} km`;
}
