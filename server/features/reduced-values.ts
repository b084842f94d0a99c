/** What became of the figures of a line of a reading, where the line does not say it itself. */
import { amountInWords, type Evaluation, prismInWords, type Read, type Step } from '../../orders';
import type { HintSettings } from '../settings';
import { hintFigure, hintPower } from './hint-figures';

/**
 * Powers from drum positions or with the zero taken off, adds by difference, prisms from the ring of the target, and the
 * sum of distances that stand one beside the other; each without the steps that lead there.
 */
export function reducedValues(evaluation: Evaluation, line: number, settings: HintSettings): string[] {
  const { power, nearPower, topPower, add, clockAdd, prism, prismElsewhere, figures } = evaluation.values;
  const isHere = ({ place }: Read<unknown>): boolean => place.line === line;
  const by =
    (...steps: readonly Step['step'][]) =>
    (read: Read<unknown>): boolean =>
      isHere(read) && read.steps.some(({ step }) => steps.includes(step));
  const powers = [power, nearPower, topPower].flatMap((all) => Object.values(all)).filter(by('drum', 'zero', 'mean'));
  const adds = [add, clockAdd].flatMap((all) => Object.values(all)).filter(by('difference', 'clock', 'mean'));
  const prisms = (['R', 'L'] as const).flatMap((eye) =>
    [prism[eye], prismElsewhere[eye]].flatMap((read) =>
      read && by('ring')(read) ? [`${eye} ${prismInWords(read.value, eye)}`] : [],
    ),
  );
  const sums = [figures.pd, figures['near-pd'], figures['optical-centres']].flatMap((all) =>
    all?.R && all.L && isHere(all.R) && isHere(all.L) ? [amountInWords(all.R.value + all.L.value, 'mm')] : [],
  );
  return [
    ...powers.map(({ value }) => hintPower(value, settings)),
    ...adds.map((read) => `${hintFigure(read.value, settings)}${onDial(read, settings)}`),
    ...prisms,
    ...sums,
  ];
}

/** Bench habit takes the plain difference of a lens measure, so it stands beside the converted one. */
function onDial({ steps }: Read<number>, settings: HintSettings): string {
  const [clock] = steps.flatMap((step) => (step.step === 'clock' && step.index !== null ? [step] : []));
  return clock ? ` (${hintFigure(clock.plain, settings)} on the dial)` : '';
}
