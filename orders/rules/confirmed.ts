/** What a person has confirmed stays quiet, as long as the line it quotes still reads the same. */
import type { Block } from '../../grammar';
import type { Finding } from '../finding';
import type { Order } from '../model';
import { ruleOf } from './catalogue';

/** The findings without the confirmed ones. A failed measure, a missing sign and safety cannot be confirmed away. */
export function withoutConfirmed(findings: readonly Finding[], { confirmed }: Order, block: Block): readonly Finding[] {
  if (confirmed.length === 0) return findings;
  return findings.filter(({ code, line, level }) => {
    // A decision against a failed test of safety is an error, and stays one.
    if (code === 'decision-differs' && level === 'error') return true;
    if (code === 'sign-missing' || ruleOf(code)?.family === 'tolerance') return true;
    const text = evenly(block.lines[line]?.text ?? '');
    return !confirmed.some((one) => one.code === code && evenly(one.quote) === text);
  });
}

const evenly = (text: string): string => text.trim().replace(/\s+/g, ' ');
