/** Near misses: which known word was probably meant. */
import { distance } from 'fastest-levenshtein';

/**
 * The candidate nearest to a mistyped word, or null when none is near: at most one slip in words of up to four
 * letters and two in longer ones. Compared without regard to case; the first of equals wins.
 */
export function nearestWord(typed: string, candidates: readonly string[]): string | null {
  const word = typed.toLowerCase();
  const most = word.length <= 4 ? 1 : 2;
  let best: string | null = null;
  let least = most + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) >= least) continue;
    const slips = distance(word, candidate.toLowerCase());
    if (slips < least && slips < candidate.length) {
      least = slips;
      best = candidate;
    }
  }
  return best;
}
