/** `lentil import`: prescriptions and readings from an open format, as text of the notation. */
import { statSync } from 'node:fs';
import { fromCsv, fromDicomJson, fromFhir, type Import } from '../exchange';
import { LARGEST_TEXT, TOO_LARGE } from '../exchange/safe-json';
import { STANDARD_INPUT } from './inputs';
import { mappingIn } from './mapping-file';
import { print } from './output';
import { readStandardInput, readText, type TextOrError } from './read-text';
import { tellLosses } from './tell-losses';
import { UnusableArgument } from './unusable-argument';

export interface ImportOptions {
  readonly from: 'fhir' | 'dicom' | 'csv';
  readonly mapping?: string;
  readonly strict?: boolean;
}

export async function importFile(path: string, { from, mapping, strict }: ImportOptions): Promise<0 | 1 | 2> {
  if (mapping !== undefined && from !== 'csv') throw new UnusableArgument('--mapping goes with --from csv');
  const read = await textOf(path);
  if ('error' in read) throw new UnusableArgument(`${path}: ${read.error}`);
  const { result, losses, refused } = imported(read.text, from, mapping);
  await print(result);
  tellLosses(losses);
  for (const { message, where } of refused)
    process.stderr.write(`lentil: ${path}: ${where === null ? '' : `${where}: `}${message}\n`);
  if (refused.length > 0) return 2;
  return strict && losses.length > 0 ? 1 : 0;
}

/** A file that no conversion could take is not even read; a character has three bytes at most, and four where it counts twice. */
async function textOf(path: string): Promise<TextOrError> {
  if (path === STANDARD_INPUT) return readStandardInput();
  const size = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  return size > 3 * LARGEST_TEXT ? { error: TOO_LARGE } : readText(path);
}

function imported(text: string, from: ImportOptions['from'], mapping: string | undefined): Import {
  if (from === 'fhir') return fromFhir(text);
  if (from === 'dicom') return fromDicomJson(text);
  return fromCsv(text, mapping === undefined ? {} : { mapping: mappingIn(mapping) });
}
