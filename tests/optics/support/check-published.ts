import { expect, test } from 'vitest';
import type { PublishedAnswer, Tolerance } from '../../published/answer';
import { publishedSources } from '../../published/sources';

/** Runs one test for each printed answer: every printed value must come out, to the digit printed. */
export function checkPublished<Input>(
  answers: readonly PublishedAnswer<Input>[],
  compute: (input: Input) => object,
): void {
  for (const answer of answers) {
    const source = publishedSources[answer.source];
    test(`${answer.id} ${source.title}, ${source.where} (grade ${source.grade})`, () => {
      const computed = new Map<string, number>(Object.entries(compute(answer.input)));
      expect(Object.keys(answer.printed).length).toBeGreaterThan(0);
      for (const [name, printed] of Object.entries(answer.printed)) {
        const value = computed.get(name) ?? Number.NaN;
        expect(agrees(name, value, printed, answer.tolerance), `${name} printed ${printed} computed ${value}`).toBe(
          true,
        );
      }
    });
  }
}

function agrees(name: string, value: number, printed: number, tolerance: Tolerance): boolean {
  if (tolerance === 'eighth') return Math.abs(value * 8 - Math.round(printed * 8)) < 1e-9;
  if (tolerance === 'nearest eighth') return Math.abs(value * 8 - Math.round(printed * 8)) <= 0.5;
  if (tolerance === 'cut to hundredths') return Math.trunc(value * 100) === Math.round(printed * 100);
  const most = typeof tolerance === 'number' ? tolerance : (tolerance[name] ?? Number.NaN);
  return Math.abs(value - printed) <= most;
}
