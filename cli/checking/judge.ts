/** Judges tasks one after the other, on whatever thread. */
import type { FindingsWriter } from '../../exchange';
import {
  analysesIn,
  type BlockAnalysis,
  blockAt,
  type Context,
  type Cuts,
  contextOfText,
  type LongText,
} from '../../orders';
import type { ElsewhereOfFile } from '../elsewhere';
import { openText } from '../order-files';
import { readText, type TextOrError } from '../read-text';
import { Surroundings, type SurroundingsOfFile } from '../surroundings';
import type { ResultCache } from './cache';
import type { FilePath, Part, Task, Told, Wanted } from './task';
import { Utf8 } from './utf8';
import { writerFor } from './writers';

interface OpenFile {
  readonly path: string;
  readonly holding: LongText['holding'];
  readonly context: Context;
  /** Whether warnings count as errors. */
  readonly strict: boolean;
}

export class Judge {
  readonly #writer: FindingsWriter;
  readonly #text = new Utf8();
  readonly #surroundings: Surroundings;
  readonly #cache: ResultCache | null;
  /** The file whose parts come in, and what holds for all of it: worked out once, since findings ask for the very block that holds. */
  #open: OpenFile | null = null;

  private constructor(wanted: Wanted, cache: ResultCache | null) {
    this.#writer = writerFor(wanted);
    this.#surroundings = new Surroundings(wanted.settings);
    this.#cache = cache;
  }

  /** A cache is loaded only where one is wanted: what it is made of takes as long to load as a small file to judge. */
  static async for(wanted: Wanted): Promise<Judge> {
    const { cache } = wanted;
    if (cache === null) return new Judge(wanted, null);
    const { ResultCache } = await import('./cache');
    return new Judge(wanted, new ResultCache({ ...wanted, cache }));
  }

  told(task: Task): Told[] {
    if (task.kind === 'unreadable') return [task];
    return task.kind === 'part' ? this.#part(task.file, task.part) : task.files.flatMap((file) => this.#file(file));
  }

  #file({ path, absolute, elsewhere }: FilePath): Told[] {
    const read = readText(absolute as string);
    const around = this.#surroundings.of(absolute);
    const tell = (): Told[] => this.#whole(path, read, around, elsewhere);
    if (!this.#cache || absolute === null) return tell();
    return this.#cache.told({ absolute, part: 0, restsOn: [path, read, around.stamp, elsewhere] }, tell);
  }

  #whole(path: string, read: TextOrError, around: SurroundingsOfFile, elsewhere: ElsewhereOfFile): Told[] {
    const { file, complaints } = openText(path, read, around, elsewhere);
    const told = complaints.map((text): Told => ({ kind: 'complaint', text }));
    if (file.kind === 'unreadable') return [...told, file];
    const { text, context } = file;
    return [
      ...told,
      { kind: 'open', path },
      this.#written({ path, holding: text.holding, context, strict: around.settings.strict }, text.cuts),
      { kind: 'close' },
    ];
  }

  #part(file: FilePath, part: Part): Told[] {
    const { path, absolute, elsewhere } = file;
    const tell = (): Told[] => this.#blocks(file, part);
    if (!this.#cache || absolute === null) return tell();
    const restsOn = [
      path,
      { ...part, sharedNames: [...part.sharedNames] },
      this.#surroundings.of(absolute).stamp,
      elsewhere,
    ];
    return this.#cache.told({ absolute, part: part.number, restsOn }, tell);
  }

  #blocks(file: FilePath, part: Part): Told[] {
    const written = this.#written(this.#openFile(file, part), part.cuts, part.first);
    return [
      ...(part.number === 0 ? [{ kind: 'open', path: file.path } as const] : []),
      written,
      ...(part.isLast ? [{ kind: 'close' } as const] : []),
    ];
  }

  #openFile({ path, absolute, elsewhere }: FilePath, { holding, sharedNames }: Part): OpenFile {
    if (this.#open?.path === path) return this.#open;
    const blocks = new Map(holding.map(([at, cut]) => [at, blockAt(cut, 0)]));
    const { choices, shared, settings } = this.#surroundings.of(absolute);
    const context = contextOfText(
      { holding: blocks, sharedNames },
      { ...choices, elsewhere: new Map(elsewhere) },
      shared,
    );
    this.#open = { path, holding: blocks, context, strict: settings.strict };
    return this.#open;
  }

  #written({ path, holding, context, strict }: OpenFile, cuts: Cuts, first = 0): Told {
    const part = this.#writer.part(path, strict);
    let orders = 0;
    let failed = false;
    for (const { analysis, firstLine } of analysesIn(cuts, holding, context, first)) {
      if (analysis.order) orders++;
      failed ||= fails(analysis, strict);
      this.#text.add(part.block(analysis, firstLine));
    }
    return { kind: 'part', text: this.#text.take(), note: part.note(), orders, failed };
  }
}

function fails({ evaluation, findings }: BlockAnalysis, strict: boolean): boolean {
  if (evaluation && evaluation.unresolved.length > 0) return true;
  return findings.some(({ level }) => level === 'error' || (strict && level === 'warning'));
}
