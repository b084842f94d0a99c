import { type Rule, typed } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

export const useMissing: Rule = {
  code: 'use-missing',
  family: 'order',
  level: 'error',
  page: {
    checks: 'A single-vision lens is ordered with an add, and nothing says whether it is for distance or for near.',
    why: 'The distance power and the near power differ by the whole add. The written power is always the one for distance; the lens to be made is another one when it is for reading.',
    example: { wrong: 'design single-vision', right: 'design single-vision near' },
    fix: 'Says the use. An intermediate use also needs its own addition, such as `intermediate +1.25`.',
    source: 'Reading adds head the office errors of a laboratory survey, 30.5 % (Pacific University thesis, 1992).',
  },
  message: () => 'A single-vision lens with an add: for distance or for near?',
  fixes: (site) =>
    (['distance', 'near'] as const).map((use) => ({
      title: `It is for ${use}`,
      safe: false,
      edits: [
        { line: site.finding.line, start: site.finding.end, end: site.finding.end, text: typed(site) && ` ${use}` },
      ],
    })),
  needs: 'single-vision',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      madeLenses(order).flatMap((lens) => {
        const { design, add } = lens;
        const isUnsaid = design?.value.type === 'single-vision' && design.value.use === null && add !== null;
        return isUnsaid ? [{ lens, place: design.place, related: [add.place] }] : [];
      }),
    );
  },
};
