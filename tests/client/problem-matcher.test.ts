import { expect, test } from 'vitest';
import { type Ink, textWriter } from '../../exchange';
import { analyse } from '../../orders';
import manifest from '../../package.json';
import { written } from '../exchange/support/written';

const plain = new Proxy({} as Ink, { get: () => (text: string) => text });

test('findings that the command prints are matched with their places, and nothing else is', () => {
  const text = 'order A\n  L -1.00\n  R 1.50\n  note "[not-a-code]"\n';
  const lines = written(textWriter(plain), [['jobs/a b.lentil', analyse(text)]]).split('\n');
  const { regexp, file, line, column, severity, code } = manifest.contributes.problemMatchers[0]?.pattern ?? {};
  const pattern = new RegExp(regexp ?? '');
  const found = lines.flatMap((printed) => {
    const parts = pattern.exec(printed);
    return parts ? [[file, line, column, severity, code].map((at) => parts[at ?? 0])] : [];
  });
  expect(found).toContainEqual(['jobs/a b.lentil', '3', '5', 'error', 'sign-missing']);
  expect(found.filter(([path]) => path !== 'jobs/a b.lentil')).toEqual([]);
});
