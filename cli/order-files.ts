/** The files of a command line, read one by one, each with the context that its orders are judged in. */
import {
  analysesIn,
  type Context,
  contextOfText,
  type LongText,
  longText,
  type PlacedAnalysis,
  toleranceSetById,
} from '../orders';
import type { Complaints } from './complaints';
import { type ElsewhereOfFile, ordersElsewhere } from './elsewhere';
import { type Input, inputsOf, STANDARD_INPUT } from './inputs';
import { readStandardInput, readText, type TextOrError } from './read-text';
import type { Surroundings, SurroundingsOfFile } from './surroundings';
import { noSuchSet } from './unknown-name';

export interface OrderFile {
  readonly kind: 'orders';
  readonly path: string;
  readonly context: Context;
  /** Of its blocks; to be gone through once, for what was given is let go when the next is asked for. */
  readonly analyses: Iterable<PlacedAnalysis>;
}

export interface UnreadableFile {
  readonly kind: 'unreadable';
  readonly path: string;
  readonly error: string;
}

/** A text that was read, cut into its blocks, with the context that its orders are judged in. */
export interface OpenedText {
  readonly kind: 'orders';
  readonly text: LongText;
  readonly context: Context;
}

/** Complains of what cannot be read or used; a file that cannot be read is given as well, and the others follow. */
export async function* orderFiles(
  paths: readonly string[],
  surroundings: Surroundings,
  complaints: Complaints,
): AsyncGenerator<OrderFile | UnreadableFile> {
  const inputs: Input[] = [];
  for await (const input of inputsOf(paths)) inputs.push(input);
  const elsewhere = ordersElsewhere(inputs);
  const taken = (path: string, read: TextOrError, absolute: string | null): OrderFile | UnreadableFile => {
    const opened = openText(path, read, surroundings.of(absolute), elsewhere(absolute));
    for (const complaint of opened.complaints) complaints.tell(complaint);
    if (opened.file.kind === 'unreadable') return opened.file;
    const { text, context } = opened.file;
    return { kind: 'orders', path, context, analyses: analysesIn(text.cuts, text.holding, context) };
  };
  for (const input of inputs) {
    if (input.kind === 'nothing' || input.kind === 'empty') tellInput(input, complaints);
    else if (input.kind === 'standard-input') yield taken(STANDARD_INPUT, await readStandardInput(), null);
    else yield taken(input.path, readText(input.absolute), input.absolute);
  }
}

/** A path that leads nowhere is complained of; a folder without files is only told. */
export function tellInput(input: Extract<Input, { kind: 'nothing' | 'empty' }>, complaints: Complaints): void {
  if (input.kind === 'nothing') complaints.tell(`${input.path}: ${input.reason}`);
  else process.stderr.write(`lentil: ${input.path}: no .lentil file in this folder\n`);
}

/** A text as it was read, made ready to be judged, and what is to be complained of. */
export function openText(
  path: string,
  read: TextOrError,
  around: SurroundingsOfFile,
  elsewhere: ElsewhereOfFile,
): { readonly file: OpenedText | UnreadableFile; readonly complaints: readonly string[] } {
  if ('error' in read)
    return { file: { kind: 'unreadable', path, error: read.error }, complaints: [`${path}: ${read.error}`] };
  const unusable = around.settings.error;
  // Whether it is accepted hangs on what they say.
  if (unusable !== null) return { file: { kind: 'unreadable', path, error: unusable }, complaints: [unusable] };
  const text = longText(read.text);
  const context = contextOfText(text, { ...around.choices, elsewhere: new Map(elsewhere) }, around.shared);
  const { fallbackStandard } = context;
  const complaints = [...around.complaints];
  if (fallbackStandard !== null && !isKnownSet(fallbackStandard, context))
    complaints.push(noSuchSet(fallbackStandard).message);
  return { file: { kind: 'orders', text, context }, complaints };
}

/** A built-in set, or a set of the house that the file or its bench file declares. */
const isKnownSet = (name: string, { houses }: Context): boolean =>
  toleranceSetById.has(name.toLowerCase()) || houses.has(name);
