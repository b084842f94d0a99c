/** Random text that is near to the notation, and the one seed of all random cases. */
import fc from 'fast-check';
import { VOCABULARY } from '../../../grammar';
import { BENCH } from '../../support/lines';

/** Fixed, so that a run can be repeated; the titles of the tests print it. */
export const seed = 20_261_124;

/** Checks a property on many random cases. */
export function holds<Values extends [unknown, ...unknown[]]>(
  numRuns: number,
  ...args: [...{ [Position in keyof Values]: fc.Arbitrary<Values[Position]> }, (...values: Values) => void]
): void {
  const check = args.pop() as (...values: Values) => void;
  const arbitraries = args as unknown as { [Position in keyof Values]: fc.Arbitrary<Values[Position]> };
  fc.assert(fc.property(...arbitraries, check), { seed, numRuns });
}

const words = fc.constantFrom(...new Set(VOCABULARY.flatMap(({ word, also }) => [word, ...also])));
const figures = fc.oneof(
  fc.integer({ min: -2000, max: 2000 }).map((hundredths) => (hundredths / 100).toFixed(2)),
  fc.integer({ min: 0, max: 181 }).map((degrees) => String(degrees).padStart(3, '0')),
  fc.constantFrom(
    '+2.00',
    '−0.75',
    '-4,50',
    '.5',
    '2.',
    '0',
    '63/60',
    '63-60',
    '1/2',
    '7x28',
    '-12',
    '-4.5.0',
    '４.５',
  ),
);
const marks = fc.constantFrom(
  ..."+-−–/@,;()[]□°Δ^∞✓×х→%:='?.!*".split(''),
  '->',
  '=>',
  '[]',
  '#',
  '# ',
  '"',
  '""',
  '“',
  '”',
  '„',
  '«',
  '»',
);
const others = fc.constantFrom(
  'QL-1042',
  'FOC-A',
  'z80.1-2015',
  '2026-11-24',
  '2026-13-01',
  '01/12/2026',
  '14:30',
  'resin-1.50',
  'zip',
  'ordr',
  'glazed',
  'passed',
  'ü',
  'ß',
  '🔍',
  '\u2028',
  '\u0000',
  '\uFEFF',
  '\uD800',
);
const blanks = fc.constantFrom('', ' ', ' ', ' ', '  ', '\t', '\u00A0', '\u2009');

/** A line made of the pieces of the notation in any order. */
export const pieces: fc.Arbitrary<string> = fc
  .array(
    fc.tuple(blanks, fc.oneof({ weight: 4, arbitrary: words }, { weight: 4, arbitrary: figures }, marks, others)),
    { maxLength: 14 },
  )
  .map((parts) => parts.map(([blank, piece]) => blank + piece).join(''));

const GOOD = BENCH.split('\n');

/** A good line of the example with a few characters taken out or put in. */
export const damaged: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom(...GOOD),
    fc.array(fc.tuple(fc.nat(60), fc.nat(2), fc.oneof(marks, figures, words, blanks)), { maxLength: 3 }),
  )
  .map(([line, cuts]) => cuts.reduce((text, [at, drop, put]) => text.slice(0, at) + put + text.slice(at + drop), line));

/** A good line of the example cut short. */
const cut: fc.Arbitrary<string> = fc
  .tuple(fc.constantFrom(...GOOD), fc.nat(50))
  .map(([line, end]) => line.slice(0, end));

/** One line of text of any kind; it holds no line end. */
export const anyLine: fc.Arbitrary<string> = fc
  .oneof(
    { weight: 3, arbitrary: pieces },
    { weight: 3, arbitrary: damaged },
    cut,
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.string({ maxLength: 40 }),
  )
  .map((text) => text.replaceAll(/[\r\n]/g, ''));

/** A text of several lines, good and bad, with line ends of all kinds. */
export const anyText: fc.Arbitrary<string> = fc
  .array(fc.tuple(fc.oneof(anyLine, fc.constantFrom(...GOOD)), fc.constantFrom('\n', '\n', '\r\n', '\r')), {
    maxLength: 16,
  })
  .map((lines) => lines.flat().join(''));
