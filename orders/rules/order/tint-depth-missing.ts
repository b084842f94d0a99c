import { sectionsOf } from '../../../grammar';
import type { Rule } from '../rule';

export const tintDepthMissing: Rule = {
  code: 'tint-depth-missing',
  family: 'order',
  level: 'info',
  page: {
    checks: 'A tint is ordered by its colour alone. A photochromic one has no depth of its own and is left alone.',
    why: 'Brown is anything from a fashion tint to a lens for the glacier, and laboratories call back for it.',
    example: { wrong: 'tint brown', right: 'tint brown absorbs 80' },
    source:
      'A tint without its depth was 5.3 % of office errors in a laboratory survey (Pacific University thesis, 1992).',
  },
  message: ({ colour }) => `How dark is “${colour}”? Write absorbs or transmits, with the per cent.`,
  needs: 'tint-line',
  check: ({ block }, report) => {
    const sections = sectionsOf(block);
    for (const [line, one] of block.lines.entries()) {
      const { node } = one.parsed(block.kind);
      if (node.kind !== 'tint' || sections[line]?.kind !== 'body' || !node.colour) continue;
      const { text, start, end } = node.colour;
      if (node.settings.length === 0 && !node.bare && !/photo|polari[sz]/i.test(text))
        report({ line, start, end }, { colour: text });
    }
  },
};
