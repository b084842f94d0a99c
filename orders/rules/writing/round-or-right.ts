import { type Rule, replace, typed } from '../rule';

export const roundOrRight: Rule = {
  code: 'round-or-right',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'A line says `R-22` and nothing else: a round segment as the trade writes it, or a power of the right lens.',
    why: 'Either reading is possible, and they are two products: a bifocal, and a lens of -22.00. Nothing is taken until one of them is written out.',
    example: { wrong: 'R-22', right: 'R22' },
    fix: 'Writes the round segment, or the power with its decimals.',
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `“${word}”: a round segment, or the power of the right lens? Write it out.`,
  fixes: (site) => {
    const width = /\d+/.exec(typed(site))?.[0] ?? '';
    return [
      replace(site, `It is a segment: write design round ${width}`, `design round ${width}`, false),
      replace(site, `It is the power: write R -${width}.00`, `R -${width}.00`, false),
    ];
  },
};
