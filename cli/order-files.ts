/** The files of a command line, read one by one, each with the context that its orders are judged in. */
import { type Block, type Choices, type Context, contextOf, parseDocument, toleranceSetById } from '../orders';
import { type BenchFile, BenchFiles } from './bench-files';
import type { Complaints } from './complaints';
import { inputsOf, STANDARD_INPUT } from './inputs';
import { readStandardInput, readText, type TextOrError } from './read-text';
import { noSuchSet } from './unknown-name';

export interface OrderFile {
  readonly kind: 'orders';
  readonly path: string;
  readonly context: Context;
  /** To be gone through once; a block is let go when the next is asked for, and its trees and results go with it. */
  readonly blocks: Iterable<PlacedBlock>;
}

export interface PlacedBlock {
  readonly block: Block;
  /** Number of its first line in the file, counted from 0. */
  readonly firstLine: number;
}

export interface UnreadableFile {
  readonly kind: 'unreadable';
  readonly path: string;
  readonly error: string;
}

/** Complains of what cannot be read or used; a file that cannot be read is given as well, and the others follow. */
export async function* orderFiles(
  paths: readonly string[],
  choices: Choices,
  complaints: Complaints,
): AsyncGenerator<OrderFile | UnreadableFile> {
  const benches = new BenchFiles();
  const taken = (path: string, read: TextOrError, bench: BenchFile | null): OrderFile | UnreadableFile => {
    if ('error' in read) {
      complaints.tell(`${path}: ${read.error}`);
      return { kind: 'unreadable', path, error: read.error };
    }
    if (bench?.error) complaints.tell(`${bench.path}: ${bench.error}`);
    const cut = cutIntoBlocks(read.text, choices, bench);
    const { fallbackStandard } = cut.context;
    if (fallbackStandard !== null && !isKnownSet(fallbackStandard, cut.context))
      complaints.tell(noSuchSet(fallbackStandard).message);
    return { kind: 'orders', path, ...cut };
  };
  for (const input of inputsOf(paths)) {
    if (input.kind === 'nothing') complaints.tell(`${input.path}: ${input.reason}`);
    else if (input.kind === 'empty') process.stderr.write(`lentil: ${input.path}: no .lentil file in this folder\n`);
    else if (input.kind === 'standard-input')
      yield taken(STANDARD_INPUT, await readStandardInput(), benches.nearestIn(process.cwd()));
    else yield taken(input.path, readText(input.absolute), benches.nearestTo(input.absolute));
  }
}

/** The document itself is not kept: only its context, and its blocks from the last to the first. */
function cutIntoBlocks(text: string, choices: Choices, bench: BenchFile | null): Pick<OrderFile, 'context' | 'blocks'> {
  const document = parseDocument(text);
  const context = contextOf(document, choices, bench?.document ? [bench.document] : []);
  return { context, blocks: fromLast(document.blocks.toReversed()) };
}

function* fromLast(rest: Block[]): Generator<PlacedBlock> {
  let firstLine = 0;
  for (let block = rest.pop(); block; block = rest.pop()) {
    yield { block, firstLine };
    firstLine += block.lines.length;
  }
}

/** A built-in set, or a set of the house that the file or its bench file declares. */
const isKnownSet = (name: string, { houses }: Context): boolean =>
  toleranceSetById.has(name.toLowerCase()) || houses.has(name);
