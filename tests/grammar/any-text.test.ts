import { describe, expect, test } from 'vitest';
import { type BlockKind, opensBlock, parseDocument, parseLine, type Span, VOCABULARY } from '../../grammar';
import { BENCH } from '../support/lines';
import { anyLine, holds, seed } from './support/random-text';

const BLOCKS: readonly (BlockKind | undefined)[] = [undefined, 'tolerance'];

/** Told of a mark inside a figure, or of what is missing behind it, whatever the figure itself says. */
const ABOUT_MARKS = new Set(['look-alike', 'other-spelling', 'prism-mark', 'axis-missing', 'meridian-missing']);

/** Every part of a tree that has a place. */
function placesIn(part: unknown): (Span & { readonly value?: unknown; readonly decimals?: unknown })[] {
  if (typeof part !== 'object' || part === null) return [];
  const inner = Object.values(part).flatMap(placesIn);
  return 'start' in part && 'end' in part ? [part as Span, ...inner] : inner;
}

describe(`any line of text, seed ${seed}`, () => {
  test('has a tree and problems whose places lie inside it', () => {
    holds(4000, anyLine, (line) => {
      for (const block of BLOCKS) {
        const { node, problems } = parseLine(line, block);
        for (const { start, end } of [...placesIn(node), ...problems]) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(end).toBeGreaterThanOrEqual(start);
          expect(end).toBeLessThanOrEqual(line.length);
          expect(Number.isInteger(start) && Number.isInteger(end)).toBe(true);
        }
        for (const { start, end } of problems) expect(end).toBeGreaterThan(start);
      }
    });
  });

  test('is told of wherever a figure was typed and no value taken', () => {
    holds(4000, anyLine, (line) => {
      for (const block of BLOCKS) {
        const { node, problems } = parseLine(line, block);
        for (const figure of placesIn(node)) {
          if (figure.value !== null || !('decimals' in figure)) continue;
          expect(problems.filter(({ start, end }) => start < figure.end && end > figure.start)).not.toEqual([]);
        }
      }
    });
  });

  test('is told one thing of each figure', () => {
    holds(4000, anyLine, (line) => {
      for (const block of BLOCKS) {
        const { node, problems } = parseLine(line, block);
        for (const figure of placesIn(node)) {
          if (!('decimals' in figure)) continue;
          const about = problems.filter(
            ({ code, start, end }) => start >= figure.start && end <= figure.end && !ABOUT_MARKS.has(code),
          );
          expect(about.length).toBeLessThanOrEqual(1);
        }
      }
    });
  });

  test('reads the same whatever line was read before it', () => {
    holds(4000, anyLine, anyLine, (line, before) => {
      const alone = structuredClone(parseLine(line));
      parseLine(before);
      parseLine(before, 'tolerance');
      expect(parseLine(line)).toEqual(alone);
    });
  });

  test('in the place of a line of the example leaves all others as they are', () => {
    const lines = BENCH.split('\n');
    const problemsOf = (text: string) =>
      parseDocument(text).blocks.flatMap((block) => block.lines.map((line) => line.parsed(block.kind).problems));
    const before = problemsOf(BENCH);
    holds(
      1000,
      anyLine,
      anyLine.map(({ length }) => length % lines.length),
      (line, at) => {
        const opener = opensBlock(line) ?? opensBlock(lines[at] as string);
        if (opener !== null) return;
        const after = problemsOf(lines.with(at, line).join('\n'));
        expect(after.toSpliced(at, 1)).toEqual(before.toSpliced(at, 1));
      },
    );
  });
});

const SHOWN = VOCABULARY.filter(({ role }) => role === 'line' || role === 'block' || role === 'eye').flatMap(
  ({ syntax }) => syntax.split(' | '),
);

describe('a line cut short behind its first word stays what it is', () => {
  // What is repeated stands behind `again`, so that word alone is no line yet.
  const lines = [...new Set([...SHOWN, ...BENCH.split('\n')])].filter((line) => !line.startsWith('again'));

  test.each(lines)('%s', (line) => {
    const { node } = parseLine(line);
    for (let end = node.head?.end ?? line.length; end <= line.length; end++) {
      expect(parseLine(line.slice(0, end)).node.kind, line.slice(0, end)).toBe(node.kind);
    }
  });
});

test('the example cut after any character is read', () => {
  for (let end = 0; end <= BENCH.length; end++) {
    const { blocks } = parseDocument(BENCH.slice(0, end));
    for (const { kind, lines } of blocks) for (const line of lines) line.parsed(kind);
    expect(blocks.flatMap(({ lines }) => lines)).toHaveLength(BENCH.slice(0, end).split('\n').length);
  }
});
