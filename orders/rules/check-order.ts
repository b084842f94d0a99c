/** Runs every check over one order, in the order of the catalogue. */
import type { Finding } from '../finding';
import { RULES } from './catalogue';
import { causeFindings } from './cause/check-causes';
import type { Report, Rule, Subject } from './rule';

const CHECKS = RULES.filter((rule): rule is Rule & { check: NonNullable<Rule['check']> } => rule.check !== undefined);

export function checkOrder(subject: Subject): Finding[] {
  // A cause comes before the measures that hang under it.
  const findings: Finding[] = causeFindings(subject);
  // One report for all rules: making one for each of a hundred would cost more than most checks do.
  let current: Rule | undefined;
  const report: Report = (place, data = {}, { eye = null, related, level: own } = {}) => {
    const { code, level } = current as Rule;
    const given = own ?? (typeof level === 'function' ? level(data, 'order') : level);
    const { line, start, end } = place;
    findings.push({ code, level: given, data, eye, line, start, end, ...(related ? { related } : {}) });
  };
  for (const rule of CHECKS) {
    current = rule;
    rule.check(subject, report);
  }
  return findings;
}
