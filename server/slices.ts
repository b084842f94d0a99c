/** Long work in slices that let other messages through. */
import { turn } from './turn';

/** So long is worked before others get their turn, milliseconds. */
const SLICE = 10;

export class Slices {
  #end = 0;

  /** To be asked after each step; only then is it worth waiting for `next`. */
  get isOver(): boolean {
    return performance.now() >= this.#end;
  }

  /** Lets what has come in meanwhile be heard, and begins the next slice. */
  async next(): Promise<void> {
    await turn();
    this.#end = performance.now() + SLICE;
  }
}
