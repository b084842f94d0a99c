/** Medians of repeated runs, and a table to print them in. */

export interface Row {
  readonly what: string;
  readonly ours: string;
  readonly peer: string;
  readonly ratio: string;
}

export const middle = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[times.length >> 1] as number;

/** Median of so many runs, milliseconds. One run before them warms the code up. */
export async function median(runs: number, run: () => unknown): Promise<number> {
  await run();
  const times: number[] = [];
  for (let at = 0; at < runs; at++) {
    globalThis.gc?.();
    const start = performance.now();
    await run();
    times.push(performance.now() - start);
  }
  return middle(times);
}

export const perSecond = (count: number, milliseconds: number): string =>
  `${Math.round((count / milliseconds) * 1000).toLocaleString('en')}/s`;
export const inMs = (milliseconds: number): string => `${milliseconds.toFixed(milliseconds < 10 ? 2 : 0)} ms`;
export const times = (slow: number, fast: number): string => `${(slow / fast).toFixed(1)} x`;

export function print(title: string, rows: readonly Row[]): void {
  console.log(`\n${title}`);
  console.table(rows.map(({ what, ours, peer, ratio }) => ({ what, Lentil: ours, peer, 'peer / Lentil': ratio })));
}
