/** Days as `2026-11-24`, counted in whole days without time zones. */

const DAY = 86_400_000;

const numberOf = (day: string): number => Date.parse(`${day}T00:00:00Z`) / DAY;
const dayOf = (number: number): string => new Date(number * DAY).toISOString().slice(0, 10);

/** Days from the first to the second, negative where the second is earlier. */
export const daysBetween = (from: string, to: string): number => numberOf(to) - numberOf(from);

/** The Monday of its week. */
export function mondayOf(day: string): string {
  const number = numberOf(day);
  // Day 0, the first of 1970, was a Thursday.
  return dayOf(number - ((((number + 3) % 7) + 7) % 7));
}

/** The week of ISO 8601, such as `2026-W48`: weeks begin on Monday and belong to the year that holds their Thursday. */
export function weekOf(day: string): string {
  const thursday = numberOf(mondayOf(day)) + 3;
  const year = dayOf(thursday).slice(0, 4);
  const week = Math.floor((thursday - numberOf(`${year}-01-01`)) / 7) + 1;
  return `${year}-W${String(week).padStart(2, '0')}`;
}
