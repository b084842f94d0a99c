/** Enough to make a write worth its while, and little enough that a reader sees results early. */
const CHUNK = 64 * 1024;

/** Writes text to a stream in chunks, no faster than it is read. When the reader has gone the rest is dropped quietly. */
export class Output {
  readonly #stream: NodeJS.WritableStream;
  #parts: (string | Uint8Array)[] = [];
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

  /** Keeps text, or bytes that stand for it, for the next chunk; true when it is time to flush. */
  add(text: string | Uint8Array): boolean {
    if (text.length === 0) return false;
    this.#parts.push(text);
    this.#length += text.length;
    return this.#length >= CHUNK;
  }

  async flush(): Promise<void> {
    const parts = this.#parts;
    this.#parts = [];
    this.#length = 0;
    for (const chunk of chunksOf(parts)) if (!this.#closed) await this.#send(chunk);
  }

  async #send(chunk: Uint8Array): Promise<void> {
    const error = await new Promise<NodeJS.ErrnoException | null | undefined>((done) => {
      this.#stream.write(chunk, done);
    });
    if (!error) return;
    if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_DESTROYED') throw error;
    this.#closed = true;
  }
}

/** Small parts together, so that they go out in one write; a large one as it is, since copying it would take longer. */
function* chunksOf(parts: readonly (string | Uint8Array)[]): Generator<Uint8Array> {
  let small: Uint8Array[] = [];
  for (const part of parts) {
    const bytes = typeof part === 'string' ? Buffer.from(part) : part;
    if (bytes.length < CHUNK) small.push(bytes);
    else {
      if (small.length > 0) yield Buffer.concat(small);
      small = [];
      yield bytes;
    }
  }
  if (small.length > 0) yield Buffer.concat(small);
}

/** Writes one text to standard output. */
export async function print(text: string): Promise<void> {
  const output = new Output(process.stdout);
  output.add(text);
  await output.flush();
}
