import { reasonInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import { subjectFirst } from '../read-and-ordered';
import type { Rule } from '../rule';
import { newestReading } from './newest-reading';
import { areApart, isBesideApart } from './repeats';

export const notJudged: Rule = {
  code: 'not-judged',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'Something was read, or is called for, and cannot be judged: the maker compensates and has not said what the lens should read, or the readings were taken in another place. Where the set simply has no limit it is told as information.',
    why: 'A lens made for its position of wear reads differently from the prescription and is right all the same. To hold it against the prescription would refuse good lenses; to pass it would be a guess.',
    example: { wrong: 'compensation by-maker', right: 'verification R -4.37 -0.75 x 022 L -4.12 -1.00 x 168' },
    source:
      'ANSI Z80.1-2015 holds tolerances against the compensated power, as retold in 20/20, “when lenses don’t measure as prescribed”.',
  },
  message: (data) => {
    const measure = data as unknown as Measure;
    const because = measure.because ? reasonInWords(measure.because) : 'it cannot be worked out';
    return `${subjectFirst(measure)} is not judged: ${because}.`;
  },
  needs: 'not-judged',
  check: ({ order, evaluation }, report) => {
    const newest = newestReading(order);
    if (!newest) return;
    for (const measure of evaluation.measures) {
      if (measure.outcome !== 'not-judged' || isToldElsewhere(measure)) continue;
      report(
        measure.place ?? newest.reading.place,
        { ...measure },
        { ...(measure.eye ? { eye: measure.eye } : {}), ...(measure.because === 'no-limit' ? { level: 'info' } : {}) },
      );
    }
  },
};

const isToldElsewhere = (measure: Measure): boolean =>
  goesWithPower(measure) || areApart(measure) || isBesideApart(measure) || measure.because === 'other-surface';

/** Without the maker's figures neither the power nor the add of a lens is judged, and the power tells it. */
const goesWithPower = ({ because, quantity }: Measure): boolean =>
  because === 'verification-missing' && quantity !== 'power';
