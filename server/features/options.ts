import type { Abilities } from '../abilities';
import type { Lookup } from '../names/lookup';
import type { Settings } from '../settings';

/** What a feature may take into account besides the text and the place. */
export interface Options {
  readonly abilities: Abilities;
  readonly settings: Settings;
  /** The day at the bench, as it is written: `2026-11-24`. */
  readonly today: string;
  /** The names of all files, open or not; put together when asked for. */
  readonly names: () => Lookup;
  /** Whether the names of all files in the workspace are known by now. */
  readonly isEveryFileRead: () => boolean;
}
