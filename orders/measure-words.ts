/** A measure in words: the one line of a finding or a hint, and the arithmetic behind it. */
import { sources } from '../tables';
import { tidy } from './exact';
import type { Measure } from './measures/measure';
import type { Step } from './reduce';
import { amountInWords, axisFigures, beforeEyeInWords, figure, quantityInWords, signed, valueInWords } from './words';

/** Whose measure it is: `R power`, `L axis`, `PD`. */
export function subjectInWords({ quantity, eye, meridian }: Measure): string {
  const words = quantityInWords(quantity).replace(eye ? / of the pair$/ : /$^/, '');
  const which = quantity === 'power' && meridian === 2 ? 'power of the weaker meridian' : words;
  return eye ? `${eye} ${which}` : which;
}

/** A deviation with its direction: `+0.13 D`, `-0.5 mm`, `2°`. */
export function deviationInWords({ deviation, unit }: Measure): string {
  if (deviation === null) return '';
  if (unit === 'deg') return amountInWords(deviation, unit);
  const sign = tidy(deviation) > 0 ? '+' : tidy(deviation) < 0 ? '-' : '';
  return `${sign}${amountInWords(deviation, unit)}`;
}

/** `deviation +0.13 D, limit 0.12 D`, the short form shown beside a reading. */
export function againstLimit(measure: Measure): string {
  const { limit, deviation, unit } = measure;
  if (deviation === null) return '';
  const limited =
    limit === null
      ? 'no limit in this set'
      : limit.amount === null
        ? 'no limit defined'
        : `limit ${amountInWords(limit.amount, limit.unit)}`;
  return unit === 'prism'
    ? `${amountInWords(deviation, unit)}, ${limited}`
    : `${deviationInWords(measure)}, ${limited}`;
}

/** How the judged figure came about, ordered figure first, one step a line. */
export function arithmetic(measure: Measure): string[] {
  const { ordered, read, unit, limit, steps, beside, because, tooCoarse } = measure;
  const lines: string[] = [];
  if (ordered !== null) lines.push(`ordered ${valueInWords(ordered, unit)}`);
  for (const step of steps) lines.push(stepInWords(step));
  if (read !== null) lines.push(`read ${valueInWords(read, unit)}`);
  if (measure.deviation !== null) lines.push(`deviation ${deviationInWords(measure)}`);
  if (beside) lines.push(`the same error is ${amountInWords(beside.amount, beside.unit)}`);
  if (because) lines.push(reasonInWords(because));
  if (tooCoarse)
    lines.push('one eighth on an instrument that shows no finer: inside, but the instrument cannot decide it');
  if (limit) lines.push(limitInWords(measure));
  return lines;
}

/** Why a measure was not read or not judged, or what was assumed. */
export const reasonInWords = (because: string): string => REASONS[because] ?? because;

const REASONS: Readonly<Record<string, string>> = {
  'worst-split': 'only the sum was read; the worst split is assumed, with the whole error in one lens',
  'from-prism': 'worked out from the prism that each lens makes, by its own power',
  'own-share': 'the order says how the prism is shared, so each lens is compared with its own share',
  'verification-missing': 'the maker compensates and has not said what the lens should read',
  'power-missing': 'the order gives no power that could be read',
  'no-limit': 'the set has no limit for this',
  spread: 'repeated readings lie further apart than the limit, and their mean says nothing',
  'beside-spread': 'repeated readings of another figure of this lens lie too far apart, and the lens is one',
  'accept-when-sure': 'inside the limit, but by less than the instrument is sure of',
  'reject-when-sure': 'outside the limit, but by less than the instrument is sure of',
  'cannot-tell': 'the uncertainty of the instrument is as large as the tolerance; measure with one that is finer',
  'fits-partner': 'held against the other lens, which it has to match',
  'near-point-assumed': 'the place was not said; it is taken for the near point, where an office lens is read',
  'one-place': 'it was measured at one place only, and may be thinner at the other',
  'least-for-safety': 'the least that ANSI Z87.1, as retold, allows any protective prescription lens',
  engraved: 'a segment carries no mark of its add; it has to be measured',
  'other-surface': 'read with the back surface on the stop, which shows this add too strong by as much as decides it',
  'not-defined': 'the set deliberately sets no limit here',
};

function limitInWords({ limit }: Measure): string {
  if (!limit) return '';
  const amount = limit.amount === null ? 'no limit' : `limit ${amountInWords(limit.amount, limit.unit)}`;
  const source = sources.find(({ id }) => id === limit.source)?.title ?? limit.source;
  return `${amount} (${limit.set}, ${limit.row}; ${EVIDENCE[limit.evidence]}: ${source})`;
}

const EVIDENCE = {
  published: 'seen in the published text',
  secondary: 'from a secondary account',
  memory: 'from memory, not seen',
} as const;

/** One step from the typed figure to the judged one. */
export function stepInWords(step: Step): string {
  switch (step.step) {
    case 'drum':
      return `thin lines ${signed(step.thin)}, wide lines ${signed(step.wide)}: cylinder ${signed(step.wide)} - (${signed(step.thin)}) = ${signed(step.cylinder)}`;
    case 'difference':
      return `segment ${signed(step.to)} less distance ${signed(step.from)} = ${signed(step.result)}`;
    case 'clock':
      return step.index === null
        ? `segment ${signed(step.to)} less front ${signed(step.from)} = ${signed(step.plain)}, not converted: the material is not given`
        : `segment ${signed(step.to)} less front ${signed(step.from)} = ${signed(step.plain)} on the dial; times (${figure(step.index, 3)} - 1) / 0.530 = ${signed(step.result)}`;
    case 'slab':
      return step.index === null
        ? `across the line ${signed(step.to)} less beside it ${signed(step.from)}: ${figure(step.plain)} on the dial, not converted: the material is not given`
        : `across the line ${signed(step.to)} less beside it ${signed(step.from)}: ${figure(step.plain)} on the dial; times (${figure(step.index, 3)} - 1) / 0.530 = ${figure(step.result)} Δ`;
    case 'eighth':
      return `${signed(step.from)} stands for the eighth ${signed(step.to)}`;
    case 'zero':
      return `zero ${signed(step.zero)} taken off ${signed(step.from)} = ${signed(step.to)}`;
    case 'engraved':
      return `${signed(step.value)} as engraved on the lens, not measured`;
    case 'ring':
      return `target on ring ${figure(step.ring)} towards ${axisFigures(step.degrees)}°: ${beforeEyeInWords(step)}`;
    case 'sum':
    case 'less':
      return bothInWords(step);
    case 'mean':
      return `mean of ${step.of.length} readings`;
  }
}

/** Both lenses put together: lengths as they are, prism as base in or base up beyond the order. */
function bothInWords({ step, of, right, left, result, unit }: Extract<Step, { step: 'sum' | 'less' }>): string {
  const sign = step === 'sum' ? '+' : '-';
  if (of === 'length') {
    const way = `R ${amountInWords(right, unit)} ${sign} L ${amountInWords(left, unit)}`;
    return `${way} = ${tidy(result) < 0 ? '-' : ''}${amountInWords(result, unit)}`;
  }
  const base = of === 'base-in' ? 'base in' : 'base up';
  return `${base} beyond the order: R ${signed(right)} ${sign} L (${signed(left)}) = ${signed(result)} Δ`;
}
