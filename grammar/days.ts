/** Whether a date such as `2026-02-29` stands in the calendar. */
export function isDay(iso: string): boolean {
  const [year = 0, month = 0, day = 0] = iso.split('-').map(Number);
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}

/** February has 29 days every fourth year, but not in a century year that 400 does not divide. */
function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
