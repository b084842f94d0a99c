import { asEighth, isCoarse } from '../../instrument';
import type { AddReading, Instrument, Measurement, TypedPower } from '../../model';
import { amountInWords, signed } from '../../words';
import type { Rule } from '../rule';
import { instrumentsUsed } from './instruments-used';

export const finerThanStep: Rule = {
  code: 'finer-than-step',
  family: 'bench',
  level: 'hint',
  page: {
    checks:
      'A power or an add is written finer than the smallest step of the instrument it was read on. Eighths are as fine as an instrument in eighths or quarters goes, however they are spelled.',
    why: 'A figure between two marks is an estimate, and its last digit says nothing. It is taken as typed; where it decides, a finer instrument does.',
    example: { wrong: 'R -4.53 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    source: 'Common practice, no source.',
  },
  message: ({ name, step, figures }) => {
    const list = (figures as readonly number[]).map(signed).join(' and ');
    return `${name} shows steps of ${amountInWords(Number(step), 'D')}; ${list} ${(figures as readonly number[]).length > 1 ? 'lie' : 'lies'} between two of them.`;
  },
  needs: 'instrument',
  check: ({ order, context }, report) => {
    for (const reading of order.readings) {
      for (const { instrument, lines } of instrumentsUsed(reading, context)) {
        const { name, step } = instrument;
        if (step === null || step <= 0) continue;
        for (const line of lines) {
          if (line.quantity !== 'power' && line.quantity !== 'add') continue;
          const figures = figuresOf(line).filter((figure) => !isOnStep(figure, step, instrument));
          if (figures.length > 0) report(line.place, { name, step, figures }, line.eye ? { eye: line.eye } : {});
        }
      }
    }
  },
};

function figuresOf(line: Measurement): readonly number[] {
  if (line.quantity === 'power') return powerFigures(line.value);
  return line.quantity === 'add' ? addFigures(line.value) : [];
}

const powerFigures = ({ sphere, cylinder, form }: TypedPower): readonly number[] =>
  cylinder === 0 ? [sphere] : [sphere, form === 'lines' || form === 'meridians' ? sphere + cylinder : cylinder];

/** An engraved add was not read on the instrument, nor was one by the lens measure. */
const addFigures = (add: AddReading): readonly number[] =>
  add.kind === 'drum' ? [add.from, add.to] : add.kind === 'value' && !add.engraved ? [add.value] : [];

/** A step as it is printed: 0.06 stands for a sixteenth, and figures are cut to the decimals that are written. */
function isOnStep(figure: number, step: number, instrument: Instrument): boolean {
  const exact = isCoarse(instrument) ? EIGHTH : Math.abs(step - SIXTEENTH) < 0.005 ? SIXTEENTH : step;
  const taken = asEighth(figure, instrument);
  const off = Math.abs(taken - Math.round(taken / exact) * exact);
  return off < Math.min(CUT, exact / 2 - 1e-6);
}

const EIGHTH = 0.125;
const SIXTEENTH = 0.0625;
/** Half of the last written digit, and a little for binary fractions. */
const CUT = 0.00501;
