import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { withDigits } from './line-edits';

export const powerImplausible: Rule = {
  code: 'power-implausible',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A power is beyond 40 dioptres, or a prism beyond 40 prism dioptres.',
    why: 'No spectacle lens is that strong. A point was lost or set in the wrong place: 150 stands for 1.50.',
    example: { wrong: 'R -45.00', right: 'R -4.50' },
    fix: 'Moves the point to the left where that gives a power in quarters.',
    source:
      'A French note on reading spectacle corrections (2022). The bound of 40 dioptres is common practice, no source.',
  },
  message: ({ value, largest, of }) =>
    `${Number(value).toFixed(2)} ${of === 'prism' ? 'prism dioptres' : 'dioptres'} is beyond any spectacle lens (${largest}). Where does the point belong?`,
  fixes: pointMoved,
};

function pointMoved(site: FixSite): readonly Fix[] {
  const { value, largest } = site.finding.data;
  return [10, 100]
    .map((by) => Number(value) / by)
    .filter((power) => power <= Number(largest) && Number.isInteger(power * 4))
    .map((power) => {
      const text = withDigits(typed(site), power.toFixed(2));
      return replace(site, `Write ${text}`, text, false);
    });
}
