/** A clock may have been wrong and set back since; what is further ahead than this is no date, ms. */
const clocksDifferMs = 366 * 86_400_000;

/** The moment, or `now` where it lies ahead of it or is none. ISO 8601, UTC. */
export function notAhead(moment: string, now: Date = new Date()): string {
  const time = Date.parse(moment);
  return time <= now.getTime() ? moment : now.toISOString();
}

/** The first moment that is far ahead. */
export function farAhead(now: Date = new Date()): string {
  return new Date(now.getTime() + clocksDifferMs).toISOString();
}

/** Does it lie so far ahead that no clock gives it? False where it is no moment. */
export function isFarAhead(moment: string, now: Date = new Date()): boolean {
  return Date.parse(moment) > now.getTime() + clocksDifferMs;
}

/** The moment; `now` where it lies far ahead or is none. */
export function notFarAhead(moment: string, now: Date = new Date()): string {
  return isFarAhead(moment, now) || Number.isNaN(Date.parse(moment)) ? now.toISOString() : moment;
}

/** The moment that a day stands for, noon in UTC; now where it is empty, null where it is no day that was. */
export function instantOfDay(day: string, now: Date = new Date()): string | null {
  if (day.trim() === "") return now.toISOString();
  const time = Date.parse(`${day.trim()}T12:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day.trim()) || Number.isNaN(time)) return null;
  const instant = new Date(time).toISOString();
  return instant.startsWith(day.trim()) && time <= now.getTime() + 86_400_000 ? instant : null;
}
