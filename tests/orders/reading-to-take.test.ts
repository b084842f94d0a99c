/** Filling in what to expect gives a reading that is accepted: of every example, by every set, and of random orders. */
import { describe, expect, test } from 'vitest';
import {
  type Analysis,
  analyse,
  type BlockAnalysis,
  lineToTakeInText,
  parseDocument,
  readingToTake,
  toleranceSets,
} from '../../orders';
import { analysisOf, examplePaths } from '../exchange/support/examples';
import { holds, linesOf, pairs, seed } from './computed/support/random-orders';

const HEAD = ['standard z80.1-2015'];
const DRUM = ['instrument FOC-A', '  kind manual focimeter', '  reads-to 0.125'];

const order = (lines: readonly string[], head: readonly string[] = HEAD): string =>
  [...head, 'order T-1', ...lines.map((line) => `  ${line}`)].join('\n');

const linesFor = ({ blocks, context }: Analysis, at = blocks.findIndex((one) => one.order)) =>
  readingToTake((blocks[at] as BlockAnalysis).order as NonNullable<BlockAnalysis['order']>, context);

/** The lines with nothing filled in. */
const open = (lines: readonly string[], head?: readonly string[]): readonly string[] =>
  linesFor(analyse(order(lines, head))).map((line) => lineToTakeInText({ ...line, comment: null }, () => '_'));

const remarks = (lines: readonly string[]): readonly (string | null)[] =>
  linesFor(analyse(order(lines))).map(({ comment }) => comment);

/** The text of a block without its readings, and below it the one to take, with what is to be expected. */
function filled(analysis: Analysis, at: number): string {
  const { block, order: model } = analysis.blocks[at] as BlockAnalysis;
  const first = model?.readings[0]?.place.line ?? block.lines.length;
  const own = block.lines.slice(0, first).map(({ text }) => text);
  const bare = analyseWith(analysis, at, own.join('\n'));
  const lines = linesFor(bare).map((line) =>
    lineToTakeInText(line, ({ what, expected }) => (what === 'date' ? '2026-12-01' : (expected ?? ''))),
  );
  return [...own, ...lines.map((line) => `    ${line}`)].join('\n');
}

/** One block of a file by itself, with the standard, the defaults and the instruments of the file. */
function analyseWith({ document, context }: Analysis, at: number, text: string): Analysis {
  const others = document.blocks.filter((one, index) => index !== at && one.kind !== 'order');
  const shared = others.flatMap(({ lines }) => lines.map((line) => line.text)).join('\n');
  const instruments = [...context.instruments.keys()].length > 0 ? [parseDocument(bench)] : [];
  return analyse(`${shared}\n${text}`, { shared: instruments });
}

const bench = ['bench.lentil']
  .map((name) => analysisOf(`examples/${name}`).document.blocks)[0]
  ?.flatMap(({ lines }) => lines.map(({ text }) => text))
  .join('\n') as string;

const readAsOrdered = (analysis: Analysis, at: number) =>
  analyseWith(analysis, at, filled(analysis, at)).blocks.findLast((one) => one.order)?.evaluation;

const verdictOf = (analysis: Analysis, at: number) => {
  const result = readAsOrdered(analysis, at);
  return { verdict: result?.verdict, reservations: result?.reservations };
};

/** Orders that cannot be judged by any reading, and why. */
const NEVER: Readonly<Record<string, string>> = {
  'PR-503': 'the maker has not said what it should read',
  'TS-702': 'a line cannot be read',
  'TS-703': 'the sign of a sphere is missing',
};

/** Orders whose own writing asks a question that no reading answers. */
const ASKED: Readonly<Record<string, readonly string[]>> = { 'TS-701': ['point-missing', 'slash-pair'] };

const examples = examplePaths.flatMap((path) => {
  const analysis = analysisOf(path);
  return analysis.blocks.flatMap(({ order: model }, at) => (model ? [{ name: model.name ?? '', analysis, at }] : []));
});

describe('an example, read exactly as ordered, is accepted', () => {
  test.each(examples)('$name', ({ name, analysis, at }) => {
    const expected = { verdict: NEVER[name] ? 'incomplete' : 'accept', reservations: ASKED[name] ?? [] };
    expect(verdictOf(analysis, at), filled(analysis, at)).toEqual(expected);
  });
});

const KINDS: readonly (readonly string[])[] = [
  ['R -1.00 -0.50 x 020', 'L -1.25', 'pd 62', 'design single-vision'],
  ['R +1.00 -0.50 x 020', 'L +1.25', 'add +2.00', 'pd 62 near 58', 'design single-vision near'],
  ['R -6.00', 'L -6.25 -1.00 x 090', 'pd R 31 L 32', 'height R 18 L 19', 'design single-vision', 'lens resin-1.60'],
  ['R -4.50', 'L -4.00', 'add +2.00', 'pd 63 near 60', 'height 17', 'design bifocal flat-top 28', 'base-curve 4.00'],
  [
    'R +3.50',
    'L +3.00 -0.50 x 090',
    'add +2.50',
    'pd 63 near 60',
    'height 17',
    'design bifocal round 24',
    'frame A 50 B 36 DBL 18 ED 52',
    'lens polycarbonate',
    'base-curve 8.00',
    'thickness centre 4.1',
  ],
  ['R +1.00', 'L +1.00', 'add +2.00', 'pd 63 near 60', 'height 19', 'design bifocal full-width'],
  ['R +0.50', 'L +0.50', 'add +2.50 intermediate +1.25', 'pd 64 near 61', 'height 21', 'design trifocal flat-top 7x28'],
  ['R -2.00', 'L -2.00', 'add +2.25', 'pd R 31 L 32', 'height R 20 L 21', 'design progressive corridor 14'],
  ['R -5.00', 'L -2.00', 'add +2.25', 'pd R 31 L 32', 'height 20', 'design progressive', 'thinning 1.50 BD'],
  [
    'R +1.00 -0.50 x 010',
    'L +1.00',
    'add +2.00',
    'pd R 31 L 32',
    'height 20',
    'design office degression 1.25 working 60',
  ],
  ['R -1.00', 'L -1.25', 'prism R 2.00 BI 0.50 BU  L 2.00 BI', 'pd 62', 'design single-vision'],
  ['R -3.00 -1.00 x 010', 'make R', 'design single-vision', 'thickness centre 2.0 min 1.5', 'base-curve 4.00'],
  ['R -3.00 -1.00 x 010', 'prism R 1.00 BI', 'make R', 'design single-vision', 'supply uncut'],
  ['R -3.00', 'L -3.00', 'kept L -3.00', 'pd 63', 'design single-vision'],
  ['R -3.00', 'balance L', 'pd 63', 'design single-vision'],
  [
    'R -8.00',
    'L -8.00',
    'tested vertex 14',
    'as-worn vertex 11',
    'compensation vertex',
    'pd 63',
    'design single-vision',
  ],
];

const sets = toleranceSets.filter(({ scope }) => scope.includes('glazed')).map(({ id }) => id);

/** What keeps a reading from being accepted, save what the set has no limit for. */
const against = (analysis: Analysis, at: number): readonly string[] =>
  (readAsOrdered(analysis, at)?.measures ?? [])
    .filter(({ outcome, because }) => outcome !== 'pass' && because !== 'no-limit')
    .map(({ outcome, quantity, eye }) => `${outcome} ${eye ?? 'pair'} ${quantity}`);

describe.each(sets)('an order of each kind, read as ordered, leaves nothing open by %s', (set) => {
  test.each(KINDS.map((lines) => ({ lines })))('$lines.0 … $lines.4', ({ lines }) => {
    for (const instruments of [[], DRUM]) {
      const analysis = analyse(order(lines, [`standard ${set}`, ...instruments]));
      const at = analysis.blocks.findIndex((one) => one.order);
      expect(against(analysis, at), filled(analysis, at)).toEqual([]);
      expect(readAsOrdered(analysis, at)?.measures.length).toBeGreaterThan(1);
    }
  });
});

test(`a random order, read as ordered, is accepted (seed ${seed})`, () => {
  holds(200, pairs, (pair) => {
    const lines = linesOf(pair).filter((line) => !line.startsWith('decentre'));
    const analysis = analyse(order([...lines, 'supply glazed']));
    expect(against(analysis, 1), filled(analysis, 1)).toEqual([]);
  });
});

/** The lines that are asked for, and what stands behind them. */
const ROWS: readonly { readonly lines: readonly string[]; readonly open: readonly string[] }[] = [
  {
    lines: KINDS[0] as readonly string[],
    open: ['reading _', 'R _ _ x _', 'L _', 'prism R _  L _', 'pd _'],
  },
  {
    lines: KINDS[3] as readonly string[],
    open: [
      'reading _',
      'R _',
      'L _',
      'add R _ -> _ front-vertex',
      'add L _ -> _ front-vertex',
      'prism R _  L _',
      'pd _ near _',
      'height R _  L _',
      'base-curve R _  L _',
    ],
  },
  {
    lines: KINDS[7] as readonly string[],
    open: [
      'reading _',
      'R _',
      'L _',
      'add R _ engraved',
      'add L _ engraved',
      'prism R _  L _ at prism-point',
      'pd R _  L _',
      'height R _  L _',
    ],
  },
  {
    lines: KINDS[9] as readonly string[],
    open: [
      'reading _',
      'R _ _ x _ at near-point',
      'R _ _ x _ at top',
      'L _ at near-point',
      'L _ at top',
      'prism R _  L _ at prism-point',
      'pd R _  L _',
      'height R _  L _',
    ],
  },
  {
    lines: KINDS[11] as readonly string[],
    open: ['reading _', 'R _ _ x _', 'base-curve R _', 'thickness R centre _ min _'],
  },
  { lines: KINDS[1] as readonly string[], open: ['reading _', 'R _ _ x _', 'L _', 'prism R _  L _', 'pd near _'] },
];

test.each(ROWS)('$lines.0 … $lines.4', ({ lines, open: expected }) => {
  expect(open(lines)).toEqual(expected);
});

test('a drum is read by both positions, after its zero', () => {
  const lines = ['R -1.00 -0.50 x 020', 'L -1.25', 'pd 62', 'design single-vision'];
  expect(open(lines, [...HEAD, ...DRUM]).slice(0, 4)).toEqual([
    'reading _ with FOC-A',
    'zero _',
    'R lines _ / _ x _',
    'L _',
  ]);
});

test('the remark names drum positions and the ring of the target in the segment', () => {
  const lines = [
    'R +3.50',
    'L +3.50',
    'add +2.00',
    'pd 62 near 58',
    'height 17',
    'design bifocal flat-top 28',
    'lens resin-1.50',
    'base-curve 8.00',
    'thickness centre 4.0',
    'frame A 50 B 38 DBL 18 ED 54',
  ];
  // By hand: front 8.00 x 0.498 / 0.53 = 7.517, back 3.50 - 7.517 / (1 - 0.00267 x 7.517) = -4.171, and from the front
  // 7.517 - 4.171 / (1 + 0.00267 x 4.171) = 3.392.
  expect(remarks(lines)[3]).toMatch(
    /^front surface on the stop; expect \+3\.39 -> \+5\.39 on the thin lines, target on ring \d\.\d\d in the segment$/,
  );
});

test('what was read already is left out, and all comes back once nothing is missing', () => {
  const text = [
    ...HEAD,
    'order T-1',
    'R -1.00',
    'L -1.25',
    'pd 62',
    'design single-vision',
    'supply glazed',
    'reading 2026-11-24',
    'R -1.00',
    'pd 62',
  ];
  const openIn = (lines: readonly string[]) =>
    linesFor(analyse(lines.join('\n'))).map((line) => lineToTakeInText({ ...line, comment: null }, () => '_'));
  expect(openIn(text)).toEqual(['reading _', 'L _', 'prism R _  L _']);
  expect(openIn([...text, 'L -1.25', 'prism R 0 L 0'])).toEqual(['reading _', 'R _', 'L _', 'prism R _  L _', 'pd _']);
});

test('an order without a power to make still has its lens read, and one without anything calls for nothing', () => {
  expect(open(['R 1.25', 'L -1.25', 'pd 62'])).toContain('R _');
  expect(linesFor(analyse('order T-1\n  make R\n  kept R'))).toEqual([]);
});

test('without a tolerance set the lines are those of a set for the supply', () => {
  expect(open(KINDS[0] as readonly string[], [])).toEqual(ROWS[0]?.open);
});
