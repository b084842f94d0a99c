/** What is wrong with an instrument by itself, told where it is declared. */
import type { Finding } from '../../finding';
import type { Instrument } from '../../model';
import { impossibleIn } from './instrument-impossible';
import { zeroTrouble } from './instrument-off-zero';
import { failedTestLenses } from './reference-outside';

/** @param today the day of checking, or null */
export function instrumentFindings(instrument: Instrument, today: string | null): readonly Finding[] {
  const { name, zero, zeroPlace } = instrument;
  const trouble = zero === null ? null : zeroTrouble(zero, instrument);
  const ofZero: Finding[] =
    trouble && zeroPlace
      ? [
          {
            code: 'instrument-off-zero',
            level: trouble.gross ? 'warning' : 'info',
            data: { ...trouble, taken: true },
            eye: null,
            ...zeroPlace,
          },
        ]
      : [];
  const ofLenses = failedTestLenses(instrument).map(
    (worst): Finding => ({
      code: 'reference-outside',
      level: 'warning',
      data: { name, worst },
      eye: null,
      ...worst.place,
    }),
  );
  const impossible = impossibleIn(instrument, today).map(
    ({ place, ...data }): Finding => ({
      code: 'instrument-impossible',
      level: 'error',
      data: { name, ...data },
      eye: null,
      ...place,
    }),
  );
  return [...ofZero, ...ofLenses, ...impossible];
}
