import { isLess, roundTo, tidy } from '../../exact';
import type { Measure } from '../../measures/measure';
import { EYES } from '../../model';
import { uncertaintyOf } from '../../uncertainty';
import { amountInWords, signed } from '../../words';
import type { Rule } from '../rule';

export const addReadTwoWays: Rule = {
  code: 'add-read-two-ways',
  family: 'bench',
  level: ({ apart }) => (apart ? 'warning' : 'hint'),
  page: {
    checks:
      'The add of one lens was read on the focimeter and with a lens measure in the same reading. Both are shown; the focimeter decides.',
    levels: 'A hint while the two agree; a warning once they differ by more than both tools can show.',
    why: 'Two tools on one add are the habit of a careful bench: the focimeter reads it through the lens, the lens measure feels the step of the curve. Where they differ, one was misread, the material is another, or the segment is fused.',
    example: {
      wrong: 'add R -4.50 -> -2.50 front-vertex\n    clock R +4.00 -> +7.00',
      right: 'add R -4.50 -> -2.50 front-vertex',
    },
    source:
      'Common practice, no source: the dial of a lens measure is taken to an eighth, an undeclared focimeter to 0.06 D (ISO 8598:1996, limit of the indication, in the wording of TCVN 8290:2009).',
  },
  message: ({ eye, drum, clock, apart, most }) => {
    const both = `${eye} add ${signed(roundTo(Number(drum), 2))} on the focimeter, ${signed(roundTo(Number(clock), 2))} with the lens measure`;
    return apart
      ? `${both}: more apart than both tools explain (${amountInWords(roundTo(Number(most), 2), 'D')}). Read both again; the focimeter decides until then.`
      : `${both}. They agree.`;
  },
  needs: 'difference',
  check: ({ evaluation: { values } }, report) => {
    for (const eye of EYES) {
      const [drum, clock] = [values.add[eye], values.clockAdd[eye]];
      if (!drum || !clock || drum.reading !== clock.reading) continue;
      const most = tidy(
        (uncertaintyOf(drum.instrument, 'D' satisfies Measure['unit'], drum.value) ?? FOCIMETER) + DIAL,
      );
      const apart = isLess(most, Math.abs(drum.value - clock.value));
      const data = { eye, drum: drum.value, clock: clock.value, apart, most };
      report(clock.place, data, { eye, related: [drum.place], level: apart ? 'warning' : 'hint' });
    }
  },
};

/** Dioptres. Common practice, no source, and the limit of the indication up to 5 D. */
const DIAL = 0.125;
const FOCIMETER = 0.06;
