/** Runs every check that has something to look at over some orders, in the order of the catalogue. */
import type { Finding } from '../finding';
import { RULES } from './catalogue';
import { causeFindings } from './cause/check-causes';
import { bitOf, thereIn } from './needs';
import type { Report, Rule } from './rule';
import type { Subject } from './subject';

/** An order with what is told of it. */
export interface Checked {
  readonly subject: Subject;
  readonly findings: Finding[];
}

type Checking = Rule & { readonly check: NonNullable<Rule['check']> };

const CHECKS = RULES.filter((rule): rule is Checking => rule.check !== undefined).map((rule) => ({
  rule,
  needs: rule.needs === undefined ? 0 : bitOf(rule.needs),
}));

/** Adds what is told of each order to its findings. */
export const checkOrders = (orders: readonly Checked[]): void => check(orders, thereIn);

/** The same by every check, whether it has something to look at or not; to hold the other one to. */
export const checkOrdersByAll = (orders: readonly Checked[]): void => check(orders, () => EVERYTHING);

const EVERYTHING = -1;

/** Check by check and not order by order: the code of one check is warm by the second order that it looks at. */
function check(orders: readonly Checked[], whatIsIn: (subject: Subject) => number): void {
  // A cause comes before the measures that hang under it.
  for (const { subject, findings } of orders) for (const cause of causeFindings(subject)) findings.push(cause);
  const there = orders.map(({ subject }) => whatIsIn(subject));
  // One report for all rules: making one for each of a hundred would cost more than most checks do.
  let current: Rule | undefined;
  let told: Finding[] = [];
  const report: Report = (place, data = {}, { eye = null, related, level: own } = {}) => {
    const { code, level } = current as Rule;
    const given = own ?? (typeof level === 'function' ? level(data, 'order') : level);
    const { line, start, end } = place;
    const finding: Finding = { code, level: given, data, eye, line, start, end };
    told.push(related ? { ...finding, related } : finding);
  };
  for (const { rule, needs } of CHECKS) {
    current = rule;
    for (let at = 0; at < orders.length; at++) {
      if (((there[at] as number) & needs) !== needs) continue;
      const { subject, findings } = orders[at] as Checked;
      told = findings;
      rule.check(subject, report);
    }
  }
}
