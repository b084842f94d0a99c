/** What has to hold of a trial: verdicts of the model, one verdict for one pair, and enough of everything to mean it. */
import { expect } from 'vitest';
import { inWords, type Outcome, type Trial, wrongOnes } from './trial';

export function expectOneVerdict(what: string, trial: Trial): void {
  const { outcomes, dropped } = trial;
  const counts = new Map<string, number>();
  for (const { judged } of outcomes) counts.set(judged.verdict, (counts.get(judged.verdict) ?? 0) + 1);
  const wrong = wrongOnes(trial);
  const share = dropped / (dropped + outcomes.length);
  console.info(
    `${what}: ${[...counts].map(([verdict, count]) => `${count} ${verdict}`).join(', ')}; ` +
      `${(100 * share).toFixed(1)} % too near to a limit; ${wrong.length} wrong`,
  );
  expect(wrong.slice(0, 3).map(inWords)).toEqual([]);
  expect(wrong).toHaveLength(0);
  expect(unlike(outcomes).slice(0, 3)).toEqual([]);
  expect(share).toBeLessThan(0.15);
  // A trial is no use where everything comes out alike.
  for (const verdict of ['accept', 'reject']) expect(counts.get(verdict) ?? 0).toBeGreaterThan(outcomes.length / 10);
}

/** Pairs that got two verdicts though both ways of writing tell the same of them. */
function unlike(outcomes: readonly Outcome[]): readonly string[] {
  const found = new Map<string, Outcome>();
  return outcomes.flatMap((one) => {
    const [pair] = one.written.name.split('.');
    const key = `${pair} ${JSON.stringify(one.written.known)}`;
    const other = found.get(key);
    if (!other) found.set(key, one);
    return other && other.verdict !== one.verdict ? [`${inWords(other)}\n${inWords(one)}`] : [];
  });
}
