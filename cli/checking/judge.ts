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
import { type BenchFile, BenchFiles } from '../bench-files';
import { openText } from '../order-files';
import { readText, type TextOrError } from '../read-text';
import type { ResultCache } from './cache';
import type { FilePath, Part, Task, Told, Wanted } from './task';
import { Utf8 } from './utf8';
import { writerFor } from './writers';

interface OpenFile {
  readonly path: string;
  readonly holding: LongText['holding'];
  readonly context: Context;
}

export class Judge {
  readonly #wanted: Wanted;
  readonly #writer: FindingsWriter;
  readonly #text = new Utf8();
  readonly #benches = new BenchFiles();
  readonly #cache: ResultCache | null;
  /** The file whose parts come in, and what holds for all of it: worked out once, since findings ask for the very block that holds. */
  #open: OpenFile | null = null;

  private constructor(wanted: Wanted, cache: ResultCache | null) {
    this.#wanted = wanted;
    this.#writer = writerFor(wanted);
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

  #file({ path, absolute }: FilePath): Told[] {
    const read = readText(absolute as string);
    const bench = this.#benches.nearestTo(absolute);
    const tell = (): Told[] => this.#whole(path, read, bench);
    if (!this.#cache || absolute === null) return tell();
    return this.#cache.told({ absolute, part: 0, restsOn: [path, read, said(bench)] }, tell);
  }

  #whole(path: string, read: TextOrError, bench: BenchFile | null): Told[] {
    const { file, complaints } = openText(path, read, bench, this.#wanted.choices);
    const told = complaints.map((text): Told => ({ kind: 'complaint', text }));
    if (file.kind === 'unreadable') return [...told, file];
    const { text, context } = file;
    return [...told, { kind: 'open', path }, this.#written(path, text.cuts, text.holding, context), { kind: 'close' }];
  }

  #part(file: FilePath, part: Part): Told[] {
    const { path, absolute } = file;
    const tell = (): Told[] => this.#blocks(file, part);
    if (!this.#cache || absolute === null) return tell();
    const restsOn = [path, { ...part, sharedNames: [...part.sharedNames] }, said(this.#benches.nearestTo(absolute))];
    return this.#cache.told({ absolute, part: part.number, restsOn }, tell);
  }

  #blocks(file: FilePath, part: Part): Told[] {
    const { holding, context } = this.#openFile(file, part);
    const written = this.#written(file.path, part.cuts, holding, context, part.first);
    return [
      ...(part.number === 0 ? [{ kind: 'open', path: file.path } as const] : []),
      written,
      ...(part.isLast ? [{ kind: 'close' } as const] : []),
    ];
  }

  #openFile({ path, absolute }: FilePath, { holding, sharedNames }: Part): OpenFile {
    if (this.#open?.path === path) return this.#open;
    const blocks = new Map(holding.map(([at, cut]) => [at, blockAt(cut, 0)]));
    const bench = this.#benches.nearestTo(absolute)?.document;
    const context = contextOfText({ holding: blocks, sharedNames }, this.#wanted.choices, bench ? [bench] : []);
    this.#open = { path, holding: blocks, context };
    return this.#open;
  }

  #written(path: string, cuts: Cuts, holding: LongText['holding'], context: Context, first = 0): Told {
    const part = this.#writer.part(path);
    let orders = 0;
    let failed = false;
    for (const { analysis, firstLine } of analysesIn(cuts, holding, context, first)) {
      if (analysis.order) orders++;
      failed ||= this.#fails(analysis);
      this.#text.add(part.block(analysis, firstLine));
    }
    return { kind: 'part', text: this.#text.take(), note: part.note(), orders, failed };
  }

  #fails({ evaluation, findings }: BlockAnalysis): boolean {
    const { strict } = this.#wanted;
    if (evaluation && evaluation.unresolved.length > 0) return true;
    return findings.some(({ level }) => level === 'error' || (strict && level === 'warning'));
  }
}

/** Whatever a bench file adds to a result. */
const said = (bench: BenchFile | null): unknown => bench && [bench.path, bench.text, bench.error];
