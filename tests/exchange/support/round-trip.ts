import { expect } from 'vitest';
import { type Import, type Loss, lossInWords } from '../../../exchange';
import { analyse, type Order, tidy } from '../../../orders';

/** The losses as they are told, without their lines. */
export const lossesTold = (losses: readonly Loss[]): readonly string[] =>
  losses.map((loss) => lossInWords({ ...loss, line: null }));

/** The orders of a text that an import gave, which must be free of anything told about its writing. */
export function ordersIn(text: string): readonly Order[] {
  return analyse(text).blocks.flatMap(({ order }) => order ?? []);
}

/** What an import gave, when nothing of it was refused. */
export function importedText({ result, refused }: Import): string {
  expect(refused).toEqual([]);
  return result;
}

const WHERE = new Set(['place', 'withPlace', 'named', 'form']);

/** A value of the model without its places and cylinder forms, figures to a ten-thousandth. */
export const meaning = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (key, part) => (WHERE.has(key) ? undefined : typeof part === 'number' ? tidy(part) : part)) ??
      'null',
  );
