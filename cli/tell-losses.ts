import { type Loss, lossInWords } from '../exchange';

/** Every loss on a line of its own on standard error. */
export function tellLosses(losses: readonly Loss[]): void {
  if (losses.length === 0) return;
  process.stderr.write(losses.map((loss) => `not carried over: ${lossInWords(loss)}\n`).join(''));
}
