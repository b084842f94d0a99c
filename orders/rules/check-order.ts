/** Runs every check that has something to look at over one order, in the order of the catalogue. */
import type { Finding } from '../finding';
import { RULES } from './catalogue';
import { causeFindings } from './cause/check-causes';
import { isThere, thereIn } from './needs';
import type { Report, Rule, Subject } from './rule';

type Checking = Rule & { readonly check: NonNullable<Rule['check']> };

const CHECKS = RULES.filter((rule): rule is Checking => rule.check !== undefined);

/** Orders of one kind need the same checks, so a list is made once for each kind. */
const CHECKS_FOR = new Map<number, readonly Checking[]>();

/** Kinds of orders whose lists are kept: far more than any bench has, and not without end. */
const MOST_KINDS = 1000;

function checksFor(subject: Subject): readonly Checking[] {
  const there = thereIn(subject);
  const known = CHECKS_FOR.get(there);
  if (known) return known;
  const checks = CHECKS.filter(({ needs }) => needs === undefined || isThere(there, needs));
  if (CHECKS_FOR.size >= MOST_KINDS) CHECKS_FOR.clear();
  CHECKS_FOR.set(there, checks);
  return checks;
}

/** Adds what is told of an order to the findings. */
export const checkOrder = (subject: Subject, findings: Finding[]): void => check(subject, checksFor(subject), findings);

/** The same by every check, whether it has something to look at or not; to hold the other one to. */
export const checkOrderByAll = (subject: Subject, findings: Finding[]): void => check(subject, CHECKS, findings);

function check(subject: Subject, checks: readonly Checking[], findings: Finding[]): void {
  // A cause comes before the measures that hang under it.
  for (const cause of causeFindings(subject)) findings.push(cause);
  // One report for all rules: making one for each of a hundred would cost more than most checks do.
  let current: Rule | undefined;
  const report: Report = (place, data = {}, { eye = null, related, level: own } = {}) => {
    const { code, level } = current as Rule;
    const given = own ?? (typeof level === 'function' ? level(data, 'order') : level);
    const { line, start, end } = place;
    const finding: Finding = { code, level: given, data, eye, line, start, end };
    findings.push(related ? { ...finding, related } : finding);
  };
  for (const rule of checks) {
    current = rule;
    rule.check(subject, report);
  }
}
