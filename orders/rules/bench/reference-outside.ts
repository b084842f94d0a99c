import { isWithin, tidy } from '../../exact';
import type { Place } from '../../finding';
import { testLensLimit } from '../../focimeter-limits';
import type { Instrument } from '../../model';
import { isFocimetric } from '../../reduce';
import { amountInWords, signed } from '../../words';
import type { Rule } from '../rule';
import { whileItCounts } from './counting';
import { instrumentsUsed } from './instruments-used';

export const referenceOutside: Rule = {
  code: 'reference-outside',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'An instrument reads one of its test lenses further off than a focimeter may be: 0.06 D up to 5 D, 0.09 up to 10, 0.12 up to 15, 0.18 up to 20 and 0.25 beyond. Its stated zero is taken off first. It is told at the test lens, and as a reservation at every reading taken on that instrument.',
    why: 'Half of a usual lens tolerance is spent on the instrument as it is. One that fails its own test lenses refuses good lenses and passes bad ones; its figures count with this reservation until it has been adjusted or the certificate of the test lens says otherwise.',
    example: { wrong: '  test-lens -10.00 read -9.75', right: '  test-lens -10.00 read -9.94' },
    source: 'ISO 8598:1996, limits of the indication, in the wording of TCVN 8290:2009. The 2014 edition was not seen.',
  },
  message: ({ name, worst }) => {
    const { nominal, read, error, limit } = worst as Failed;
    return `${name} reads its test lens ${signed(nominal)} as ${signed(read)}: ${signed(error)} D off, and ${amountInWords(limit, 'D')} is the most ISO 8598:1996 allows there.`;
  },
  needs: 'test-lens',
  check: ({ order, evaluation, context }, report) => {
    for (const [index, reading] of order.readings.entries()) {
      for (const { instrument, place, lines } of instrumentsUsed(reading, context)) {
        const [worst] = failedTestLenses(instrument);
        if (!worst || !lines.some(isFocimetric)) continue;
        report(place, { name: instrument.name, worst }, { level: whileItCounts(evaluation, index, 'warning') });
      }
    }
  },
};

export interface Failed {
  readonly nominal: number;
  readonly read: number;
  /** Read less nominal with the stated zero taken off, dioptres. */
  readonly error: number;
  readonly limit: number;
  readonly place: Place;
}

/** The test lenses an instrument reads outside its limit, the worst first. */
export function failedTestLenses(instrument: Instrument): readonly Failed[] {
  const failed = instrument.testLenses.flatMap(({ nominal, read, place }): Failed[] => {
    const limit = testLensLimit(instrument, nominal)?.limit;
    const error = tidy(read - (instrument.zero ?? 0) - nominal);
    return limit === undefined || isWithin(error, limit) ? [] : [{ nominal, read, error, limit, place }];
  });
  return failed.sort((a, b) => Math.abs(b.error) / (b.limit || 1) - Math.abs(a.error) / (a.limit || 1));
}
