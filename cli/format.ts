/** `lentil format`: lays files out, or only tells which ones would change. */
import { format as layOut } from '../orders';
import { type Input, inputsOf } from './inputs';
import { print } from './output';
import { readStandardInput, readText, reasonOf, type TextOrError } from './read-text';
import { replaceFile } from './replace-file';

export interface FormatOptions {
  readonly check?: boolean;
}

type Done = 'as it was' | 'laid out' | 'unusable';

/** Standard input is laid out on standard output; files are written in place. */
export async function format(paths: readonly string[], { check = false }: FormatOptions): Promise<0 | 1 | 2> {
  const done: Done[] = [];
  for await (const input of inputsOf(paths)) done.push(await take(input, check));
  if (done.includes('unusable')) return 2;
  return check && done.includes('laid out') ? 1 : 0;
}

async function take(input: Input, check: boolean): Promise<Done> {
  if (input.kind === 'nothing') return complain(input.path, input.reason);
  if (input.kind === 'empty') {
    process.stderr.write(`lentil: ${input.path}: no .lentil file in this folder\n`);
    return 'as it was';
  }
  const isStandardInput = input.kind === 'standard-input';
  const path = isStandardInput ? '-' : input.path;
  const read: TextOrError = isStandardInput ? await readStandardInput() : readText(input.absolute);
  if ('error' in read) return complain(path, read.error);
  const text = layOut(read.text);
  if (isStandardInput && !check) await print(text);
  if (text === read.text) return 'as it was';
  if (check || !isStandardInput) await print(`${path}\n`);
  if (check || isStandardInput) return 'laid out';
  try {
    await replaceFile(input.absolute, text);
  } catch (error) {
    return complain(path, reasonOf(error));
  }
  return 'laid out';
}

function complain(path: string, reason: string): 'unusable' {
  process.stderr.write(`lentil: ${path}: ${reason}\n`);
  return 'unusable';
}
