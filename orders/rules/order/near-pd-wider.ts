import type { Eye } from '../../../grammar';
import { isLess } from '../../exact';
import type { Placed } from '../../model';
import type { Report, Rule } from '../rule';

export const nearPdWider: Rule = {
  code: 'near-pd-wider',
  family: 'order',
  level: 'warning',
  bars: true,
  page: {
    checks: 'The near PD is wider than the distance PD, of the pair or of one eye.',
    why: 'Eyes turn in to read. The two figures were probably exchanged, or one was misread.',
    example: { wrong: 'pd 60 near 63', right: 'pd 63 near 60' },
    source: 'Common practice, no source.',
  },
  message: ({ near, far }) => `The near PD of ${near} mm is wider than the distance PD of ${far} mm.`,
  check: ({ order: { pd, nearPd } }, report) => {
    compare(pd.binocular, nearPd.binocular, report, null);
    compare(pd.R, nearPd.R, report, 'R');
    compare(pd.L, nearPd.L, report, 'L');
  },
};

function compare(far: Placed<number> | null, near: Placed<number> | null, report: Report, eye: Eye | null): void {
  if (!far || !near || !isLess(far.value, near.value)) return;
  report(near.place, { near: near.value, far: far.value }, { ...(eye ? { eye } : {}), related: [far.place] });
}
