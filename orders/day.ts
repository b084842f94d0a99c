/** The day of checking, asked for only where texts come in: the rest of the program is told it, and knows no clock. */

/** A day of the calendar where the clock stands, not in Greenwich, as year-month-day. */
export const dayOf = (moment: Date): string =>
  [moment.getFullYear(), moment.getMonth() + 1, moment.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');

/** The variable of the environment that says another day, or `none` to hold no date against any. */
const VARIABLE = 'LENTIL_TODAY';
const DAY = /^\d{4}-\d\d-\d\d$/;

/**
 * The day against which dates are held, year-month-day: that of the clock, unless the environment says another one, so
 * that an old folder can be judged as of its own time. Null where it says `none`.
 */
export function dayOfChecking(): string | null {
  const { process } = globalThis as {
    readonly process?: { readonly env?: Readonly<Record<string, string | undefined>> };
  };
  const said = process?.env?.[VARIABLE]?.trim();
  if (said === 'none') return null;
  return said && DAY.test(said) ? said : dayOf(new Date());
}
