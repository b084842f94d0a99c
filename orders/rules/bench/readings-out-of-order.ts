import { isLater } from '../../evaluate';
import type { Reading } from '../../model';
import type { Rule } from '../rule';

export const readingsOutOfOrder: Rule = {
  code: 'readings-out-of-order',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A reading stands below one of a later day or hour. The later date counts, whatever the order of the lines.',
    why: 'Readings are written one below the other. A date against that order is a slip more often than not, and then an old reading outranks the one that was just taken.',
    example: {
      wrong: 'reading 2026-11-20\n    R -4.50 -0.75 x 022',
      right: 'reading 2026-11-26\n    R -4.50 -0.75 x 022',
    },
    source: 'Common practice, no source.',
  },
  message: ({ date, above }) =>
    `This reading is of ${date} and stands below one of ${above}, which counts as the newer one. Is the date right?`,
  check: ({ order: { readings } }, report) => {
    for (let at = 1; at < readings.length; at++) {
      const own = readings[at] as Reading;
      const above = readings.slice(0, at).find((one) => isLater(one, own));
      if (above) report(own.place, { date: moment(own), above: moment(above) }, { related: [above.place] });
    }
  },
};

const moment = ({ date, time }: Reading): string => [date, time].filter((part) => part !== null).join(' ');
