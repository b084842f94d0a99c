import { isLess } from '../../exact';
import type { FindingData, Level } from '../../finding';
import { indicationLimit, zeroLimit } from '../../focimeter-limits';
import { zeroOf } from '../../instrument';
import type { Instrument } from '../../model';
import { amountInWords, signed } from '../../words';
import type { Rule } from '../rule';
import { whileItCounts } from './counting';
import { instrumentsUsed } from './instruments-used';

export const instrumentOffZero: Rule = {
  code: 'instrument-off-zero',
  family: 'bench',
  level: ({ gross }) => (gross ? 'warning' : 'info'),
  page: {
    checks:
      'With nothing on the stop the instrument shows more than it may: beyond 0.03 D (0.02 D on a display in hundredths) it is told as information, beyond 0.06 D as a warning, and an acceptance is then one with reservations.',
    why: 'The zero is taken off every absolute power and drops out of adds. But an instrument that far off has a dirty or unfocused eyepiece or has been knocked, and what it is off by elsewhere nobody knows. Focus the eyepiece, set the zero, read again.',
    example: { wrong: 'zero +0.09', right: 'zero +0.03' },
    source:
      'ISO 8598:1996, limit of the indication at 0 D (0.06 D), in the wording of TCVN 8290:2009; zero within 0.03 D or 0.02 D by a Chinese verification rule, second hand.',
  },
  message: ({ zero, limit, gross, name, taken }) => {
    const whose = name ? `${name} shows` : 'The drum shows';
    const most = `${amountInWords(Number(limit), 'D')} ${gross ? 'is the most ISO 8598:1996 allows' : 'is what a verification rule asks for'}`;
    const off = taken ? ' It is taken off the powers read on it.' : '';
    return `${whose} ${signed(Number(zero))} with nothing on the stop; ${most}.${off}`;
  },
  check: ({ order, evaluation, context }, report) => {
    for (const [index, reading] of order.readings.entries()) {
      const own = context.instruments.get(reading.with ?? '') ?? null;
      const said = reading.zero && zeroTrouble(reading.zero.value, own);
      const tell = (place: Parameters<typeof report>[0], data: FindingData): void => {
        const level: Level = data.gross ? 'warning' : 'info';
        report(place, { ...data, taken: true }, { level: whileItCounts(evaluation, index, level) });
      };
      if (reading.zero && said) tell(reading.zero.place, said);
      for (const { instrument, place, lines } of instrumentsUsed(reading, context)) {
        const isOff = lines.some(
          (line) =>
            line.quantity === 'power' &&
            instrument.zero !== null &&
            zeroOf(line, reading, instrument) === instrument.zero,
        );
        const trouble = isOff && !reading.zero ? zeroTrouble(instrument.zero ?? 0, instrument) : null;
        // A small one is told where the instrument is declared, and not once more for each job.
        if (trouble?.gross) tell(place, trouble);
      }
    }
  },
};

/** Whether a zero is worse than it may be; null where it is in order. `gross` beyond the limit of the indication itself. */
export function zeroTrouble(
  zero: number,
  instrument: Instrument | null,
): { readonly zero: number; readonly limit: number; readonly gross: boolean; readonly name: string | null } | null {
  const name = instrument?.name ?? null;
  const most = indicationLimit(0)?.limit ?? Number.POSITIVE_INFINITY;
  if (isLess(most, Math.abs(zero))) return { zero, limit: most, gross: true, name };
  const fine = zeroLimit(instrument)?.limit ?? most;
  return isLess(fine, Math.abs(zero)) ? { zero, limit: fine, gross: false, name } : null;
}
