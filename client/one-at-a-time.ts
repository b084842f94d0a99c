/**
 * Runs something after a pause, never twice at once; whoever asks while it runs has it run once more afterwards. So a
 * slow answer holds up nothing, and the last state is always the one that is shown.
 */
export class OneAtATime {
  readonly #run: () => Promise<void>;
  readonly #pause: number;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #isRunning = false;
  #isWanted = false;

  /** @param pause milliseconds */
  constructor(run: () => Promise<void>, pause: number) {
    this.#run = run;
    this.#pause = pause;
  }

  ask(): void {
    this.#isWanted = true;
    if (this.#isRunning || this.#timer !== undefined) return;
    this.#timer = setTimeout(() => this.#start(), this.#pause);
  }

  dispose(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#isWanted = false;
  }

  async #start(): Promise<void> {
    this.#timer = undefined;
    this.#isWanted = false;
    this.#isRunning = true;
    try {
      await this.#run();
    } catch {
      // The server may be starting anew; the next edit or move asks again.
    } finally {
      this.#isRunning = false;
      if (this.#isWanted) this.ask();
    }
  }
}
