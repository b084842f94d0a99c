import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLine, VOCABULARY } from '../../grammar';
import { LineParser } from '../../grammar/parser/readers';
import { holds, pieces, seed } from './support/random-text';

test('one token is enough to choose between any two ways on', () => {
  expect(new LineParser(true).getSerializedGastProductions().length).toBeGreaterThan(30);
});

const heads = fc.constantFrom(...VOCABULARY.map(({ word }) => word), 'again R', 'again add', 'R -4.50', 'kept L');
const lines = fc.tuple(heads, pieces).map(([head, rest]) => `${head} ${rest}`);

describe(`a line whose first word is known, seed ${seed}`, () => {
  test('never makes a rule fail', () => {
    holds(6000, lines, (line) => {
      for (const block of [undefined, 'tolerance'] as const)
        expect(parseLine(line, block).problems.map(({ code }) => code)).not.toContain('line-unfinished');
    });
  });

  test('is told of one value once, in the order of the line', () => {
    holds(4000, lines, (line) => {
      // What is missing beside a figure, and how a letter looks, are other matters than the figure itself.
      const problems = parseLine(line).problems.filter(({ code }) => code !== 'axis-missing' && code !== 'look-alike');
      const spans = problems.map(({ start, end }) => `${start} to ${end}`);
      expect(spans).toEqual([...new Set(spans)]);
      expect(problems.map(({ start }) => start)).toEqual(problems.map(({ start }) => start).sort((a, b) => a - b));
    });
  });
});
