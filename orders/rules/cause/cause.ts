/** What every rule of a cause shares: it explains, and its message says what is left and what fits as well. */
import type { Explanation } from '../../causes/explanation';
import type { Scene } from '../../causes/scene';
import type { FindingData } from '../../finding';
import type { Rule, RulePage } from '../rule';

/** A rule that may explain what fails. */
export interface Cause extends Rule {
  readonly explain: (scene: Scene) => readonly Explanation[];
}

/** What each finding of a cause holds beside its own figures. */
export interface CauseData {
  /** Failed measures that it does not explain, in words. */
  readonly rest: readonly string[];
  /** Codes of the causes that fit as well. */
  readonly tied: readonly string[];
}

/**
 * A cause is told as info: what is outside is an error by itself, and a cause is the likeliest of several stories. It
 * stands first where the failed measures stand, and they hang under it.
 */
export const cause = (
  code: string,
  page: RulePage,
  inWords: (data: FindingData) => string,
  explain: Cause['explain'],
): Cause => ({
  code,
  family: 'cause',
  level: 'info',
  page,
  message: (data) => {
    const { rest, tied } = data as unknown as CauseData;
    const unexplained = rest.length > 0 ? ` Not explained by it: ${rest.join(', ')}.` : '';
    const others = tied.map((other) => `“${other}”`).join(' and ');
    const equal = tied.length > 0 ? ` ${others} ${tied.length > 1 ? 'fit' : 'fits'} the figures as well.` : '';
    return `${inWords(data)}${unexplained}${equal}`;
  },
  explain,
});
