/** How often the line is written anew, and how long nothing is said, milliseconds. */
const EVERY = 200;
const QUIET = 1000;

/** A line on the terminal about long work, on standard error and only while the results go somewhere else. */
export class Progress {
  readonly #shown: boolean;
  readonly #start = Date.now();
  #last = 0;

  /** @param intoFile the results go into a file, whatever standard output is */
  constructor(intoFile = false) {
    this.#shown = Boolean(process.stderr.isTTY && (intoFile || !process.stdout.isTTY));
  }

  tell(orders: number, path: string): void {
    if (!this.#shown) return;
    const now = Date.now();
    if (now - this.#start < QUIET || now - this.#last < EVERY) return;
    this.#last = now;
    const width = (process.stderr.columns ?? 80) - 1;
    process.stderr.write(`\r\x1b[K${`${orders} orders read, now ${path}`.slice(0, width)}`);
  }

  clear(): void {
    if (this.#last > 0) process.stderr.write('\r\x1b[K');
  }
}
