import { Lexer, NotAllInputParsedException } from 'chevrotain';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLine, VOCABULARY } from '../../grammar';
import { LineParser, readerOf, readPower, type Site } from '../../grammar/parser/readers';
import { commentStart } from '../../grammar/text';
import { TOKENS, tokenize } from '../../grammar/tokens';
import { lineWord } from '../../grammar/vocabulary';
import { BENCH } from '../support/lines';
import { holds, pieces, seed } from './support/random-text';

test('one token is enough to choose between any two ways on', () => {
  expect(new LineParser(true).getSerializedGastProductions().length).toBeGreaterThan(30);
});

test('the shapes have no fault that the lexer can find, and their first characters are known', () => {
  const shapes = TOKENS.filter(({ PATTERN }) => PATTERN !== Lexer.NA);
  expect(shapes.length).toBeGreaterThan(20);
  const lexer = new Lexer(shapes, { positionTracking: 'onlyOffset', ensureOptimizations: true });
  expect(lexer.lexerDefinitionErrors).toEqual([]);
});

/** Hands a line to its rule and keeps whatever the rule failed at; text that is left over is no failure. */
function failuresOf(parser: LineParser, line: string, isLimit: boolean): readonly string[] {
  const content = line.slice(0, commentStart(line));
  const tokens = tokenize(content);
  const head = lineWord(tokens[0]?.image ?? '');
  if (!head) return [];
  const reader = head.role === 'eye' ? readPower : readerOf(head.word, isLimit);
  const from = head.role === 'eye' ? 0 : 1;
  const site: Site = { parser, tokens, from, content, head: { word: head.word, start: 0, end: 0 }, again: false };
  reader?.(site);
  const failures = parser.errors.filter((error) => !(error instanceof NotAllInputParsedException));
  parser.errors = [];
  parser.problems = [];
  return failures.map(({ message }) => `${line}: ${message}`);
}

const heads = fc.constantFrom(...VOCABULARY.map(({ word }) => word), 'R -4.50', 'kept L');
const lines = fc.tuple(heads, pieces).map(([head, rest]) => `${head} ${rest}`);

describe(`a line whose first word is known, seed ${seed}`, () => {
  const parser = new LineParser();

  test('never makes a rule fail', () => {
    holds(6000, lines, (line) => {
      for (const isLimit of [false, true]) expect(failuresOf(parser, line, isLimit)).toEqual([]);
    });
  });

  test('never makes a rule fail when it is cut short', () => {
    for (const line of BENCH.split('\n'))
      for (let end = 1; end <= line.length; end++) expect(failuresOf(parser, line.slice(0, end), false)).toEqual([]);
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
