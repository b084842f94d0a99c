import { type LineNode, type PrismComponent, sectionsOf } from '../../../grammar';
import type { Rule } from '../rule';

export const prismRepeated: Rule = {
  code: 'prism-repeated',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'The prism of one lens, ordered or read, has two parts along the same line, two horizontal or two vertical ones, or a part without a base beside another part.',
    why: 'One of the two may belong to the other eye, or be a base word that slipped. Until it is told apart they are added up, which is hardly what was meant.',
    example: { wrong: 'prism R 2.00 BI 3.00 BI', right: 'prism R 2.00 BI' },
    source: 'Common practice, no source.',
  },
  message: ({ direction }) =>
    direction === null
      ? 'One part of this prism has no base: does it belong to the other eye?'
      : `Two ${direction} prisms in one lens: does one of them belong to the other eye?`,
  needs: 'prism-line',
  check: ({ block }, report) => {
    const sections = sectionsOf(block);
    for (const [line, one] of block.lines.entries()) {
      const kind = sections[line]?.kind;
      if (kind !== 'body' && kind !== 'reading') continue;
      for (const parts of prismsIn(one.parsed(block.kind).node)) {
        if (parts.length < 2) continue;
        const bare = parts.find(({ base, degrees }) => base === null && degrees === null);
        // An amount that wants its base, or that could not be read, is told as such.
        const isToldElsewhere =
          parts.some(({ amount }) => amount.value === null) || (kind === 'body' && bare?.amount.value !== 0);
        if (bare && !isToldElsewhere) report({ line, start: bare.start, end: bare.end }, { direction: null });
        for (const [direction, bases] of DIRECTIONS) {
          const along = parts.filter(({ amount, base }) => amount.value && base && bases.includes(base));
          const [first, second] = [along[0], along.at(-1)];
          if (first && second && first !== second) report({ line, start: first.start, end: second.end }, { direction });
        }
      }
    }
  },
};

const DIRECTIONS: readonly (readonly [direction: string, bases: readonly string[]])[] = [
  ['horizontal', ['in', 'out']],
  ['vertical', ['up', 'down']],
];

/** The prisms of each lens that a line orders. */
function prismsIn(node: LineNode): readonly (readonly PrismComponent[])[] {
  if (node.kind === 'prism') return node.entries.map(({ value }) => value);
  return node.kind === 'power' ? node.entries.map(({ prism }) => prism) : [];
}
