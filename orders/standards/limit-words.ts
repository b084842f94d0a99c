import type { ToleranceSet } from '../../tables';
import { amountInWords } from '../words';

type PowerLimit = ToleranceSet['power'][number]['rows'][number]['meridian']['limit'];
type PrismLimit = NonNullable<ToleranceSet['pairPrism']>[number]['rows'][number]['limit'];

/** A limit either way as a table shows it: `± 0.13 D`, `± 2 % of the meridian`. */
export function limitInWords(limit: PowerLimit): string {
  if (limit.kind === 'not-defined') return 'none set';
  if (limit.kind === 'percent') return `± ${limit.percent} % of the ${limit.of}`;
  return `± ${amountInWords(limit.amount, limit.unit)}`;
}

export function prismLimitInWords(limit: PrismLimit): string {
  if (limit.kind === 'prism') return amountInWords(limit.amount, 'prism');
  if (limit.kind === 'shift') return amountInWords(limit.mm, 'mm');
  return `${amountInWords(limit.amount, 'prism')} + that of ${amountInWords(limit.mm, 'mm')}`;
}

/** A one-sided limit. */
export const atMostInWords = ({ amount, unit }: Extract<PowerLimit, { kind: 'absolute' }>): string =>
  `at most ${amountInWords(amount, unit)}`;
