import { analyse, type Evaluation, type Measure, type Quantity } from '../../orders';

/** The evaluation of the first order of a text. */
export function judged(text: string): Evaluation {
  const found = analyse(text).blocks.find(({ evaluation }) => evaluation !== null)?.evaluation;
  if (!found) throw new Error('the text holds no order');
  return found;
}

/** The one measure of a quantity and eye; null stands for the pair. */
export function measureOf(text: string, quantity: Quantity, eye: 'R' | 'L' | null = null): Measure {
  const found = judged(text).measures.filter((one) => one.quantity === quantity && one.eye === eye);
  if (found.length !== 1) throw new Error(`${found.length} measures of ${quantity} ${eye ?? ''}`);
  return found[0] as Measure;
}

/** An order with a reading, by its lines; indentation carries no meaning. */
export const pair = (order: string[], reading: string[], head: string[] = ['standard z80.1-2015']): string =>
  [
    ...head,
    'order T-1',
    ...order.map((line) => `  ${line}`),
    '  reading 2026-11-24',
    ...reading.map((line) => `    ${line}`),
  ].join('\n');
