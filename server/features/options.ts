import type { Abilities } from '../abilities';
import type { Settings } from '../settings';

/** What a feature may take into account besides the text and the place. */
export interface Options {
  readonly abilities: Abilities;
  readonly settings: Settings;
}
