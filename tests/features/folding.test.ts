import { expect, test } from 'vitest';
import { folding } from '../../server/features/folding';
import { options, sample } from './support/sample';

/** Compares the first and the last line of each fold, by their texts. */
function checkFolds(
  text: string,
  expected: readonly (readonly [string, string])[],
  mostFolds = Number.POSITIVE_INFINITY,
) {
  const { abilities, ...rest } = options();
  const folds = folding(
    sample(text).snapshot,
    { textDocument: { uri: '' } },
    { abilities: { ...abilities, mostFolds }, ...rest },
  );
  const lines = text.split('\n').map((line) => line.trim());
  expect(folds.map(({ startLine, endLine }) => [lines[startLine], lines[endLine]])).toEqual(expected);
}

const TEXT = `# the bench
standard z80.1-2015

order A
  R -1.00
  L -1.00

  reading 2026-11-24
    R -1.00
    L -1.00
  reading 2026-11-25
    R -1.00

# a remake
order B
instrument FOC-A
  reads-to 0.125
`;

test('blocks and readings fold, without the blank lines and comments at their ends', () => {
  checkFolds(TEXT, [
    ['order A', 'R -1.00'],
    ['reading 2026-11-24', 'L -1.00'],
    ['reading 2026-11-25', 'R -1.00'],
    ['instrument FOC-A', 'reads-to 0.125'],
  ]);
});

test('a line of the order below a reading stays outside the fold of the reading', () => {
  checkFolds('order A\n  R -1.00\n  reading 2026-11-24\n    R -1.00\n  end\n  pd 64\n', [
    ['order A', 'pd 64'],
    ['reading 2026-11-24', 'R -1.00'],
  ]);
});

test('an editor with a limit gets no more folds than that', () => {
  checkFolds(TEXT, [['order A', 'R -1.00']], 1);
});
