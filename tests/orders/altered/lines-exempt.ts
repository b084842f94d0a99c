/** Which lines may be left out, said again or exchanged without a question, each with its reason. */
interface Line {
  readonly line: string;
  readonly head: string;
  readonly part: 'order' | 'reading' | 'earlier';
  readonly of: { readonly name: string; readonly lines: readonly string[] };
}

interface Reason {
  readonly what: string;
  readonly because: string;
  readonly covers: (one: Line) => boolean;
}

const heads = (what: string, part: Line['part'], pattern: RegExp, because: string): Reason => ({
  what,
  because,
  covers: (one) => one.part === part && pattern.test(one.head),
});

export const NOT_CALLED_FOR: readonly Reason[] = [
  heads(
    'papers of an order',
    'order',
    /^(note|ref|due|coating|tint|previous|rx|remake-of|purpose)$/,
    'Nothing is measured by them.',
  ),
  heads(
    'the frame and how it sits',
    'order',
    /^(frame|as-worn|tested|supply|blank|decentre|lens)$/,
    'The lab works with them; a PD or a height says as well that the pair is glazed.',
  ),
  heads(
    'what may be ordered and need not',
    'order',
    /^(base-curve|thickness|slab-off|split|thinning|make|kept|balance|standard)$/,
    'Without the line something else is ordered, which the reading fulfils as well.',
  ),
  {
    what: 'a single-vision design',
    because: 'An order without a design and without an add is one of single vision.',
    covers: ({ part, head, line }) => part === 'order' && head === 'design' && line.includes('single-vision'),
  },
  {
    what: 'the height of single vision where prism is read',
    because: 'Without a height the centre stands before the pupil, which the prism shows.',
    covers: ({ part, head, of }) =>
      part === 'order' && head === 'height' && of.lines.some((line) => /^\s*prism R 0 L 0|^\s*prism R 2/.test(line)),
  },
  {
    what: 'compensation that another line says',
    because: 'A verification is what the maker says; equal distances leave nothing to convert.',
    covers: ({ part, head }) => part === 'order' && head === 'compensation',
  },
  heads('what people say', 'reading', /^(note|decided)$/, 'It is no measurement.'),
  heads(
    'tests that were recorded',
    'reading',
    /^(impact|cosmetic|marking)$/,
    'Called for where the order is for safety, and there told.',
  ),
  heads('a zero within the tolerance', 'reading', /^zero$/, 'A drum that was not looked at may be right.'),
  heads('an earlier reading', 'earlier', /./, 'It counts no more.'),
];

export const SAID_AGAIN: readonly Reason[] = [
  heads('a repeat', 'reading', /^again$/, 'One more of many; their spread is looked at.'),
];

/** The figures behind the word of an eye, a part of nothing left out. */
const figuresOf = (line: string, eye: string): readonly number[] =>
  [...line.matchAll(new RegExp(`\\b${eye}\\b([^RL]*)`, 'g'))]
    .flatMap(([, part]) => [...(part ?? '').matchAll(/[+-]?\d+(?:\.\d+)?/g)])
    .map(([figure]) => Number(figure));

export const ALIKE: readonly Reason[] = [
  {
    what: 'two values that differ by no more than their tolerance',
    because: 'The other order of them is right as well.',
    covers: ({ line, head }) => {
      const [right = [], left = []] = ['R', 'L'].map((eye) => figuresOf(line, eye));
      const limit = /^(pd|height|segment)$/.test(head)
        ? 1
        : head === 'prism'
          ? 0.33
          : head === 'base-curve'
            ? 0.75
            : 0.12;
      return right.length === left.length && right.every((figure, at) => Math.abs(figure - (left[at] ?? 0)) <= limit);
    },
  },
];

/** What is still open, and belongs to the rules named; an entry may stand here although nothing needs it any more. */
export const OPEN_LINES: readonly Reason[] = [
  {
    what: 'replaced',
    because: 'Reading until it fits is told by a rule of its own.',
    covers: ({ head }) => head === 'replaced',
  },
  { what: 'tint', because: 'Told once the model holds tints.', covers: ({ head }) => head === 'tint' },
  {
    what: 'prism beside places',
    because: 'Prism that contradicts places read beside it is told where centres are placed.',
    covers: ({ head, of }) => head === 'prism' && of.name === 'single vision with ordered prism',
  },
];
