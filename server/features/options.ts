import type { Abilities } from '../abilities';
import type { Settings } from '../settings';

/** What a feature may take into account besides the text and the place. */
export interface Options {
  readonly abilities: Abilities;
  readonly settings: Settings;
  /** The day at the bench, as it is written: `2026-11-24`. */
  readonly today: string;
}
