/** What the findings of an order do to its verdict. */
import type { Evaluation } from '../evaluate';
import type { Finding } from '../finding';
import { ruleOf } from './catalogue';

/**
 * Whether a finding keeps an acceptance away: what was not understood, contradicts itself or cannot be is never
 * accepted. A code without a rule bars, so that nothing new is let through by being forgotten.
 */
export function barsAcceptance({ code, level }: Pick<Finding, 'code' | 'level'>): boolean {
  const bars = ruleOf(code)?.bars;
  if (bars === true) return true;
  return level === 'error' && bars === undefined;
}

/**
 * The evaluation with what the findings say of it. What bars an acceptance leaves the order incomplete; a warning is a
 * reservation, since a careful person would want to be asked. A reject stays one, and nothing is said of an order that
 * has no reading.
 */
export function withFindings(evaluation: Evaluation, findings: readonly Finding[]): Evaluation {
  if (evaluation.verdict === 'unread' || findings.length === 0) return evaluation;
  const unresolved = codesOf(findings.filter(barsAcceptance));
  if (evaluation.verdict !== 'accept')
    return unresolved.length > 0 && evaluation.verdict === 'incomplete' ? { ...evaluation, unresolved } : evaluation;
  if (unresolved.length > 0) return { ...evaluation, verdict: 'incomplete', reservations: [], unresolved };
  const warned = codesOf(findings.filter(({ level }) => level === 'warning'));
  if (warned.length === 0) return evaluation;
  return { ...evaluation, reservations: [...new Set([...evaluation.reservations, ...warned])] };
}

const codesOf = (findings: readonly Finding[]): readonly string[] => [...new Set(findings.map(({ code }) => code))];
