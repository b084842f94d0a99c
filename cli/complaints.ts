import type { Progress } from './progress';

/** What cannot be used is told on standard error, each thing once; the rest of the work goes on. */
export class Complaints {
  readonly #progress: Progress;
  readonly #told = new Set<string>();

  constructor(progress: Progress) {
    this.#progress = progress;
  }

  /** Whether there was any. */
  get any(): boolean {
    return this.#told.size > 0;
  }

  tell(text: string): void {
    if (this.#told.has(text)) return;
    this.#told.add(text);
    this.#progress.clear();
    process.stderr.write(`lentil: ${text}\n`);
  }
}
