import type { Eye } from '../../../grammar';
import { isLess, tidy } from '../../exact';
import type { Placed } from '../../model';
import type { Report, Rule } from '../rule';

/** How far eyes turn in to read, millimetres in the plane of the lens: 2 to 3 an eye at 40 to 25 cm. */
const MOST = { pair: 9, eye: 4.5 } as const;

export const nearPdImplausible: Rule = {
  code: 'near-pd-implausible',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'The near PD is more than 9 mm narrower than the distance PD, or that of one eye by more than 4.5 mm.',
    why: 'Eyes turn in by about 1.5 to 3 mm each to read. A larger step puts the segments or the reading centres beside the line of sight; one figure was probably misread.',
    example: { wrong: 'pd 63 near 50', right: 'pd 63 near 60' },
    source:
      'The geometry of two lines of sight that meet at 25 cm, 27 mm in front of the centres of rotation: (PD / 2) x 27 / (250 + 27), about 3 mm for a PD of 63. The bound is half as much again.',
  },
  message: ({ near, far }) =>
    `The near PD of ${near} mm is far narrower than the distance PD of ${far} mm. Is it right?`,
  check: ({ order: { pd, nearPd } }, report) => {
    compare(pd.binocular, nearPd.binocular, MOST.pair, null, report);
    compare(pd.R, nearPd.R, MOST.eye, 'R', report);
    compare(pd.L, nearPd.L, MOST.eye, 'L', report);
  },
};

function compare(
  far: Placed<number> | null,
  near: Placed<number> | null,
  most: number,
  eye: Eye | null,
  report: Report,
): void {
  if (!far || !near || !isLess(most, tidy(far.value - near.value))) return;
  report(near.place, { near: near.value, far: far.value }, { ...(eye ? { eye } : {}), related: [far.place] });
}
