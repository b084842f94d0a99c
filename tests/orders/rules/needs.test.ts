/** A check that is left out because nothing it needs is there would have found nothing. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { analyse, type Finding, RULES } from '../../../orders';
import { checkOrders, checkOrdersByAll } from '../../../orders/rules/check-orders';
import { JOB, put, written } from '../../support/job';

/** Every sample and example, and a job with the wrong line of every rule in its order or in its reading. */
const TEXTS: readonly (readonly [name: string, text: string])[] = [
  ...['examples', 'tests/samples'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.lentil'))
      .map((name) => [name, readFileSync(`${folder}/${name}`, 'utf8')] as const),
  ),
  ...RULES.flatMap(({ code, page: { example } }) =>
    [example.wrong, example.right].flatMap((lines) => [
      [`${code} in the order`, written({ ...JOB, order: lines.split('\n').reduce(put, JOB.order) })] as const,
      [`${code} in the reading`, written({ ...JOB, reading: lines.split('\n').reduce(put, JOB.reading) })] as const,
    ]),
  ),
];

test.each(TEXTS)('%s', (_, text) => {
  const { blocks, context } = analyse(text, { nearPercent: 50, guard: 'accept-when-sure' });
  for (const { block, order, evaluation } of blocks) {
    if (!order || !evaluation) continue;
    const subject = { order, evaluation, context, block };
    const [needed, all]: [Finding[], Finding[]] = [[], []];
    checkOrders([{ subject, findings: needed }]);
    checkOrdersByAll([{ subject, findings: all }]);
    expect(needed).toEqual(all);
  }
});

test('some checks are left out, or nothing is held to anything here', () => {
  expect(RULES.filter(({ needs }) => needs !== undefined).length).toBeGreaterThan(20);
});
