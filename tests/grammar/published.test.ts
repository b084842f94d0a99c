import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parseDocument } from '../../grammar';
import { formatText } from '../../grammar/format';
import { firstSheet, secondSheet } from '../published/oblique-meridian';
import { bothForms, flatTransposition, opticalCross } from '../published/transposition';
import { said } from '../support/lines';

const FOLDER = join(import.meta.dirname, '..', 'samples', 'published');

/** The prescriptions of printed exercises; each file names its page. */
const FILES = {
  'flat-transposition': flatTransposition,
  'both-forms': bothForms,
  'optical-cross': opticalCross,
  'oblique-meridian': [...firstSheet, ...secondSheet],
};

const ids = (from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, at) => `1-${String(from + at).padStart(2, '0')}`);

const read = (name: string): string => readFileSync(join(FOLDER, `${name}.lentil`), 'utf8');

test('the files hold the exercises 1-01 to 1-22 and 1-29 to 1-57', () => {
  const names = Object.keys(FILES).flatMap((name) => [...read(name).matchAll(/^order (.*)$/gm)].map(([, id]) => id));
  expect(names).toEqual([...ids(1, 22), ...ids(29, 57)]);
});

describe.each(Object.entries(FILES))('%s', (name, rows) => {
  const text = read(name);
  const { blocks } = parseDocument(text);

  test('is told of nothing', () => {
    const told = blocks.flatMap(({ kind, lines }) =>
      lines.flatMap((line) => line.parsed(kind).problems.map(({ code }) => `${code}: ${line.text}`)),
    );
    expect(told).toEqual([]);
  });

  test('is laid out', () => {
    expect(formatText(parseDocument(text))).toBe(text);
  });

  test.each(rows.map(({ id, input }) => [id, input] as const))('%s says the printed lens', (id, input) => {
    const block = blocks.find(({ lines }) => lines[0]?.text === `order ${id}`);
    const [, power, make] = (block?.lines ?? []).map(({ text: line }) => said(line));
    expect(make).toEqual({ kind: 'eyes', which: 'make', eyes: ['R'] });
    expect(power).toEqual({
      kind: 'power',
      entries: [
        {
          eye: 'R',
          power: {
            form: 'sphero-cylinder',
            sphere: asPrinted(input.sphere),
            ...(input.cylinder === 0 ? {} : { cylinder: asPrinted(input.cylinder), axis: input.axis }),
          },
        },
      ],
    });
  });
});

/** The sheets print eighths cut after two digits: -1.62 for -1.625. */
const asPrinted = (power: number): number => Math.trunc(power * 100) / 100 + 0;
