/** Enough to make a write worth its while, and little enough that a reader sees results early. */
const CHUNK = 64 * 1024;

/** Writes text to a stream in chunks, no faster than it is read. When the reader has gone the rest is dropped quietly. */
export class Output {
  readonly #stream: NodeJS.WritableStream;
  #parts: string[] = [];
  #length = 0;
  #closed = false;

  constructor(stream: NodeJS.WritableStream) {
    this.#stream = stream;
    // Without a listener a reader that has gone would end the process with a stack.
    stream.on('error', () => undefined);
  }

  /** True once nobody reads any more. */
  get isClosed(): boolean {
    return this.#closed;
  }

  /** Keeps the text for the next chunk; true when it is time to flush. */
  add(text: string): boolean {
    if (text === '') return false;
    this.#parts.push(text);
    this.#length += text.length;
    return this.#length >= CHUNK;
  }

  async flush(): Promise<void> {
    const text = this.#parts.join('');
    this.#parts = [];
    this.#length = 0;
    if (this.#closed || text === '') return;
    const error = await new Promise<NodeJS.ErrnoException | null | undefined>((done) => {
      this.#stream.write(text, done);
    });
    if (!error) return;
    if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_DESTROYED') throw error;
    this.#closed = true;
  }
}

/** Writes one text to standard output. */
export async function print(text: string): Promise<void> {
  const output = new Output(process.stdout);
  output.add(text);
  await output.flush();
}
