import type { Eye } from '../../../grammar';
import { isLess } from '../../exact';
import type { Distances } from '../../model';
import type { Report, Rule } from '../rule';

export const pdImplausible: Rule = {
  code: 'pd-implausible',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'A binocular PD lies outside 45 to 80 mm, a near one outside 40 to 80, or the PD of one eye outside 20 to 40.5.',
    why: 'Hardly anybody has such eyes. A distance and a near PD taken for the right and the left one make such figures, and so does a half taken for the whole.',
    example: { wrong: 'pd R 62 L 59', right: 'pd 62 near 59' },
    source: 'Question pages on PD slips such as 62/59. The bounds of one eye are common practice, no source.',
  },
  message: ({ value, least, most }) => `A PD of ${value} mm is outside ${least} to ${most} mm. Is it the right one?`,
  check: ({ order: { pd, nearPd } }, report) => {
    tell(pd, 45, report);
    tell(nearPd, 40, report);
  },
};

const WIDEST = 80;
const ONE_EYE = { least: 20, most: 40.5 };

function tell(distances: Distances, least: number, report: Report): void {
  const look = (eye: Eye | null, bounds: { readonly least: number; readonly most: number }): void => {
    const one = distances[eye ?? 'binocular'];
    if (!one || !(isLess(one.value, bounds.least) || isLess(bounds.most, one.value))) return;
    report(one.place, { value: one.value, ...bounds }, eye ? { eye } : {});
  };
  look(null, { least, most: WIDEST });
  look('R', ONE_EYE);
  look('L', ONE_EYE);
}
