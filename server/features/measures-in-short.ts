import { type Measure, percentUsed, subjectInWords } from '../../orders';

const COUNTED: readonly (readonly [Measure['outcome'], string])[] = [
  ['pass', 'inside'],
  ['fail', 'outside'],
  ['not-judged', 'not judged'],
  ['not-read', 'not read'],
];

/** Counts, and the measure nearest to its limit or farthest beyond it: `7 inside, 1 outside · most of its limit used: R axis, 240 %`. */
export function inShort(measures: readonly Measure[]): string {
  const counts = COUNTED.flatMap(([outcome, words]) => {
    const count = measures.filter((one) => one.outcome === outcome).length;
    return count > 0 ? [`${count} ${words}`] : [];
  });
  const worst = worstOf(measures);
  return [counts.join(', '), worst && `most of its limit used: ${worst}`].filter(Boolean).join(' · ');
}

function worstOf(measures: readonly Measure[]): string | null {
  let worst: { readonly measure: Measure; readonly percent: number } | null = null;
  for (const measure of measures) {
    const percent = percentUsed(measure);
    if (percent !== null && percent > (worst?.percent ?? 0)) worst = { measure, percent };
  }
  return worst && `${subjectInWords(worst.measure)}, ${Math.round(worst.percent)} %`;
}
