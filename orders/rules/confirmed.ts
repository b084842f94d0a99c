/** What a person has confirmed stays quiet, as long as the line it quotes still reads the same. */
import type { Block } from '../../grammar';
import type { Finding } from '../finding';
import type { Confirmation, Order } from '../model';
import type { Idle } from './blocks/confirmation-idle';
import { ruleOf } from './catalogue';

/**
 * The findings without the confirmed ones, and with one for each confirmation that holds nothing. A confirmation needs a
 * reason and a name.
 */
export function withoutConfirmed(findings: readonly Finding[], { confirmed }: Order, block: Block): readonly Finding[] {
  if (confirmed.length === 0) return findings;
  const idle = confirmed.map((one) => whyIdle(one, block));
  const holding = confirmed.filter((_, at) => idle[at] === null);
  const left = findings.filter((finding) => {
    if (!canBeConfirmed(finding)) return true;
    const quote = quoteOf(block.lines[finding.line]?.text ?? '');
    return !holding.some((one) => one.code === finding.code && quoteOf(one.quote) === quote);
  });
  const told = confirmed.flatMap(({ code, place }, at): Finding[] =>
    idle[at] == null
      ? []
      : [{ code: 'confirmation-idle', level: 'warning', data: { why: idle[at], code }, eye: null, ...place }],
  );
  return [...left, ...told];
}

function whyIdle({ code, quote, why, by }: Confirmation, block: Block): Idle | null {
  if (ruleOf(code) === undefined) return 'unknown-code';
  if (!canBeConfirmed({ code })) return 'not-confirmable';
  if (!why?.trim() || !by?.trim()) return 'unsigned';
  const wanted = quoteOf(quote);
  return block.lines.some(({ text }) => quoteOf(text) === wanted) ? null : 'stale';
}

/**
 * Whether a person may confirm what a finding tells, so that it is told no more. A figure out of tolerance and anything of
 * safety cannot be, nor what the program has not understood: nobody can stand for what was not read.
 */
export function canBeConfirmed({ code, level }: { readonly code: string; readonly level?: unknown }): boolean {
  // A decision against a failed test of safety is an error, and stays one.
  if (code === 'decision-differs' && level === 'error') return false;
  const rule = ruleOf(code);
  if (!rule || rule.family === 'tolerance' || NEVER.has(code)) return false;
  return !(rule.family === 'writing' && (rule.level === 'error' || rule.bars === true));
}

/** Not understood, contradictory or of safety, and no matter of writing alone. */
const NEVER = new Set(['said-twice', 'measured-word', 'standard-unknown', 'negative-add', 'confirmation-idle']);

/** A line as a confirmation quotes it: what stands between its parts does not matter. */
export const quoteOf = (line: string): string => line.trim().replace(/\s+/g, ' ');
