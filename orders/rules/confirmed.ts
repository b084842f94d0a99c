/** What a person has confirmed stays quiet, as long as the line it quotes still reads the same. */
import type { Block } from '../../grammar';
import type { Finding } from '../finding';
import type { Order } from '../model';
import { ruleOf } from './catalogue';

/** The findings without the confirmed ones. A failed measure, a missing sign and safety cannot be confirmed away. */
export function withoutConfirmed(findings: readonly Finding[], { confirmed }: Order, block: Block): readonly Finding[] {
  if (confirmed.length === 0) return findings;
  return findings.filter((finding) => {
    if (!canBeConfirmed(finding)) return true;
    const quote = quoteOf(block.lines[finding.line]?.text ?? '');
    return !confirmed.some((one) => one.code === finding.code && quoteOf(one.quote) === quote);
  });
}

/** Whether a person may confirm what a finding tells, so that it is told no more. */
export function canBeConfirmed({ code, level }: { readonly code: string; readonly level?: unknown }): boolean {
  // A decision against a failed test of safety is an error, and stays one.
  if (code === 'decision-differs' && level === 'error') return false;
  return code !== 'sign-missing' && ruleOf(code)?.family !== 'tolerance';
}

/** A line as a confirmation quotes it: what stands between its parts does not matter. */
export const quoteOf = (line: string): string => line.trim().replace(/\s+/g, ' ');
