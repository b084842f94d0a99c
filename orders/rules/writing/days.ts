/** Whether the calendar has this day, written as ISO 8601 has it: `2026-11-24`. */
export function isDay(iso: string): boolean {
  const date = new Date(`${iso}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(iso);
}
