/** Runs every check over one order, in the order of the catalogue, and keeps what a person has confirmed quiet. */
import type { Finding } from '../finding';
import { RULES } from './catalogue';
import type { Report, Rule, Subject } from './rule';

const CHECKS = RULES.filter((rule): rule is Rule & { check: NonNullable<Rule['check']> } => rule.check !== undefined);

export function checkOrder(subject: Subject): Finding[] {
  const findings: Finding[] = [];
  for (const { code, level, check } of CHECKS) {
    const report: Report = (place, data = {}, { eye = null, related, level: own } = {}) => {
      const given = own ?? (typeof level === 'function' ? level(data, 'order') : level);
      findings.push({ code, level: given, data, eye, ...place, ...(related ? { related } : {}) });
    };
    check(subject, report);
  }
  if (subject.order.confirmed.length === 0) return findings;
  return findings.filter((finding) => !isConfirmed(finding, subject));
}

/** A confirmation holds while the line it quotes still reads the same; errors of safety cannot be confirmed away. */
function isConfirmed({ code, line }: Finding, { order, block }: Subject): boolean {
  const text = block.lines[line]?.text.trim().replace(/\s+/g, ' ');
  return (
    !UNCONFIRMABLE.has(code) &&
    order.confirmed.some((one) => one.code === code && one.quote.trim().replace(/\s+/g, ' ') === text)
  );
}

const UNCONFIRMABLE = new Set(['sign-missing', 'impact-failed', 'thickness-outside']);
