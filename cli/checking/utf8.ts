/** Characters to begin with: some orders in brief. */
const FIRST = 64 * 1024;

/** UTF-8 takes at most so many bytes for a UTF-16 unit. */
const MOST_BYTES = 3;

/**
 * Gathers text as UTF-8. Bytes go from thread to thread without being copied, where text would be copied twice and
 * turned into bytes by the one thread that all others wait for. The place they are gathered in is used again and again.
 */
export class Utf8 {
  #bytes = Buffer.allocUnsafeSlow(FIRST);
  #length = 0;

  add(text: string): void {
    if (text === '') return;
    const most = this.#length + text.length * MOST_BYTES;
    if (most > this.#bytes.length) {
      const larger = Buffer.allocUnsafeSlow(2 * most);
      this.#bytes.copy(larger, 0, 0, this.#length);
      this.#bytes = larger;
    }
    this.#length += this.#bytes.write(text, this.#length);
  }

  /** What was gathered, in memory of its own; what comes next begins anew. */
  take(): Uint8Array<ArrayBuffer> {
    const taken = new Uint8Array(Buffer.allocUnsafeSlow(this.#length).buffer);
    taken.set(this.#bytes.subarray(0, this.#length));
    this.#length = 0;
    return taken;
  }
}
