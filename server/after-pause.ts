/** So long nothing may have happened, milliseconds. */
const PAUSE = 300;

/** Work that is done when nothing has asked for it for a while. */
export class AfterPause {
  readonly #work: () => Promise<void>;
  readonly #failed: (error: unknown) => void;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #isStopped = false;

  /** @param failed is told why the work failed; the next time it is tried again */
  constructor(work: () => Promise<void>, failed: (error: unknown) => void) {
    this.#work = work;
    this.#failed = failed;
  }

  get isStopped(): boolean {
    return this.#isStopped;
  }

  ask(): void {
    clearTimeout(this.#timer);
    if (!this.#isStopped) this.#timer = setTimeout(() => this.#work().catch(this.#failed), PAUSE);
  }

  /** Nothing is begun any more. */
  stop(): void {
    this.#isStopped = true;
    clearTimeout(this.#timer);
  }
}
