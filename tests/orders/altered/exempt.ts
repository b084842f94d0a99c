/** What may be altered without a question: lines and words that carry no meaning for the verdict, each with its reason. */
import type { Altered } from './survivors';

export interface Exemption {
  readonly what: string;
  readonly because: string;
  readonly covers: (one: Altered) => boolean;
}

const free = (head: string, because: string): Exemption => ({
  what: `the words of \`${head}\``,
  because,
  covers: (one) => one.head === head && one.start > one.before.indexOf(one.before.trim()),
});

const startsBehind = ({ before, start }: Altered, words: RegExp): boolean => words.test(before.slice(0, start));

export const EXEMPTIONS: readonly Exemption[] = [
  free('note', 'Free words for people; nothing is judged by them.'),
  free('ref', 'A reference of the lab or the shop.'),
  free('coating', 'Coatings are free words, and no set of tolerances speaks of them.'),
  free(
    'kind',
    'What an instrument is called only chooses the words of an advice; its step, zero and lenses are figures.',
  ),
  {
    what: 'the colour of a tint',
    because: 'No reading of it is called for; the figures and their keys are not covered by this.',
    covers: ({ head, how, part }) => head === 'tint' && how !== 'moved' && part === 'brown',
  },
  {
    what: 'quoted words',
    because: 'A reason or a remark of a person, as written.',
    covers: (one) => /^[^"]*"[^"]*$/.test(one.before.slice(0, one.start)) || one.part.startsWith('"'),
  },
  {
    what: 'the name of an order',
    because: 'Any name is a name; two orders of one name are told.',
    covers: (one) => one.head === 'order' && startsBehind(one, /order\s+$/),
  },
  {
    what: 'who did it',
    because: 'The signs of people are not known to the program.',
    covers: (one) => startsBehind(one, /\bby\s+$/),
  },
  {
    what: 'figures of a previous pair',
    because: 'It is never judged, only shown.',
    covers: ({ head, how, part }) => head === 'previous' && (how === 'moved' || /^[RL]$/.test(part)),
  },
  {
    what: 'figures of a kept lens',
    because: 'It stays in the frame and is not measured; a real difference to the new one is told on the order.',
    covers: ({ head, how }) => head === 'kept' && how === 'moved',
  },
  {
    what: 'figures of a balance lens',
    because: 'Its power is not judged.',
    covers: ({ head, how, of, part, before }) =>
      how === 'moved' && (head === 'balance' || (of.name === 'a balance lens' && before.trim() === `L ${part}`)),
  },
  {
    what: 'a reading of a lens that is in the frame no more',
    because: 'It stays in the file and does not count.',
    covers: ({ isEarlier, how }) => isEarlier && how === 'moved',
  },
  {
    what: 'who decided, and the words behind it',
    because: 'A decision stands beside the verdict and never changes it.',
    covers: (one) => one.head === 'decided' && startsBehind(one, /decided\s+accept\s+$/),
  },
  {
    what: 'a remark outside every order',
    because: 'No order rests on it.',
    covers: ({ head, block }) => head === 'note' && block !== 'order',
  },
  {
    what: 'the eye of what is alike on both lenses',
    because: 'The reading holds it for both, or measures what nobody called for: the other order is fulfilled as well.',
    covers: ({ head, part, how }) =>
      how !== 'moved' && /^[RL]$/.test(part) && /^(base-curve|thickness|segment|clock|decentre|make)$/.test(head),
  },
  {
    what: 'the eye of a test that both lenses passed',
    because: 'Passed by the pair and by one of its lenses is passed by each.',
    covers: ({ before, part, how }) => how === 'dropped' && /^[RL]$/.test(part) && before.includes('R passed L passed'),
  },
  {
    what: 'an ordered prism within its own tolerance',
    because: 'Half a prism dioptre is what a strong pair may be off; none is as good as either.',
    covers: ({ head, before }) => head === 'prism' && before.trim() === 'prism R 0.50 BU',
  },
];

/** What is still open, and belongs to the rules named; an entry may stand here although nothing needs it any more. */
export const OPEN: readonly Exemption[] = [
  {
    what: 'the power of an order beside the powers of its maker',
    because: 'Whether the two can be one lens is told by `verification-differs`.',
    covers: ({ how, of }) => how === 'moved' && of.lines.some((line) => line.trim().startsWith('verification')),
  },
  {
    what: 'an intermediate add of a lens that has no such part',
    because: 'Whether the design and the add belong together is asked of the order.',
    covers: ({ head, of, how }) => head === 'add' && how === 'moved' && of.name.startsWith('intermediate-unusual'),
  },
  {
    what: 'a whole PD beside prism, and a clock beside the drum',
    because: 'The two are cross-checks of one another; how far they may disagree is for rules of their own.',
    covers: ({ head, how, of }) =>
      how === 'moved' && /^(pd|clock)$/.test(head) && /^(a lens put in again|clock-alone)/.test(of.name),
  },
  {
    what: 'a height of single vision',
    because: 'Both points low alike carry a reservation of their own.',
    covers: ({ head, how }) => head === 'height' && how === 'moved',
  },
  {
    what: 'prism read on a pair that is placed in millimetres',
    because: 'What contradicts itself there is told where centres are placed.',
    covers: ({ head, how, of }) =>
      head === 'prism' && how === 'moved' && of.name === 'single vision with ordered prism',
  },
  {
    what: 'the side of a slab, and of a balance lens',
    because: 'Both are called for, or told, by rules of their own.',
    covers: ({ head, part }) => /^(slab-off|balance)$/.test(head) && /^[RL]$/.test(part),
  },
];

/** Figures for which no set has a tolerance, by the line they stand in and the end of their path in its tree. */
export const WITHOUT_TOLERANCE: readonly (readonly [line: RegExp, path: RegExp, because: string])[] = [
  [
    /^settings frame$/,
    /\.figure$/,
    'The size of a frame is no property of the lenses; what cannot be is told by itself.',
  ],
  [/^settings (as-worn|tested)$/, /\.figure$/, 'How the frame sits is not read on the pair.'],
  [/^design$/, /\.(width|depth|gap|corridor|degression|working)$/, 'The kind of lens, unless its segment is measured.'],
  [/^eye-figure (blank|inset|thinning)$/, /\.value$/, 'What the lab works with; the result is read elsewhere.'],
  [/^(decentre|slab)$/, /./, 'What the lab works with; the result is read elsewhere.'],
  [/^tint$/, /./, 'No reading of it is called for.'],
  [/^(figure reads-to|figure uncertainty|test-lens)$/, /./, 'Of the instrument, which has its own checks.'],
  [/^limit$/, /./, 'A limit is no figure that has one.'],
  [/^(power|powers)$/, /\.meridian$/, 'The meridian of a power; the axis it makes is moved with the other form.'],
  [/^(clock|power|powers)$/, /meridian/, 'Where a lens measure was laid on.'],
  [/^prism$/, /\.degrees$/, 'The direction of a prism; its parts are moved with the amount.'],
  [/^(add|prism|pd|eye-figure height)$/, /./, 'Where the lens has none: uncut, for one distance only, or of no power.'],
];
