/** Runs every check over one order, in the order of the catalogue. */
import type { Finding } from '../finding';
import { RULES } from './catalogue';
import { causeFindings } from './cause/check-causes';
import type { Report, Rule, Subject } from './rule';

const CHECKS = RULES.filter((rule): rule is Rule & { check: NonNullable<Rule['check']> } => rule.check !== undefined);

export function checkOrder(subject: Subject): Finding[] {
  // A cause comes before the measures that hang under it.
  const findings: Finding[] = causeFindings(subject);
  for (const { code, level, check } of CHECKS) {
    const report: Report = (place, data = {}, { eye = null, related, level: own } = {}) => {
      const given = own ?? (typeof level === 'function' ? level(data, 'order') : level);
      findings.push({ code, level: given, data, eye, ...place, ...(related ? { related } : {}) });
    };
    check(subject, report);
  }
  return findings;
}
