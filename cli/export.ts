/** `lentil export`: orders and readings in an open format, with what could not be carried over told on standard error. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Conversion, type Loss, toCsv, toDicomFile, toDicomJson, toFhir, toOrdersJson } from '../exchange';
import { type Analysis, analyse } from '../orders';
import { STANDARD_INPUT } from './inputs';
import { mappingIn } from './mapping-file';
import { print } from './output';
import { readStandardInput, readText, reasonOf } from './read-text';
import { givenSettings } from './settings-files';
import { Surroundings } from './surroundings';
import { tellLosses } from './tell-losses';
import { unknownName } from './unknown-name';
import { UnusableArgument } from './unusable-argument';

export interface ExportOptions {
  readonly to: 'fhir' | 'dicom' | 'json' | 'csv';
  readonly order?: string;
  readonly strict?: boolean;
  /** File with the columns of a table. */
  readonly mapping?: string;
  /** Folder for one DICOM file for each measurement. */
  readonly files?: string;
}

export async function exportFile(path: string, options: ExportOptions): Promise<0 | 1> {
  const { to, order, strict, mapping, files } = options;
  if (mapping !== undefined && to !== 'csv') throw new UnusableArgument('--mapping goes with --to csv');
  if (files !== undefined && to !== 'dicom') throw new UnusableArgument('--files goes with --to dicom');
  const analysis = await analysisOf(path);
  checkName(analysis, order);
  const chosen = order === undefined ? {} : { order };
  const losses = files === undefined ? await written(analysis, chosen, options) : intoFolder(analysis, chosen, files);
  tellLosses(losses);
  return strict && losses.length > 0 ? 1 : 0;
}

type Chosen = { readonly order?: string };

async function written(analysis: Analysis, chosen: Chosen, { to, mapping }: ExportOptions): Promise<readonly Loss[]> {
  const { result, losses } = converted(analysis, chosen, to, mapping);
  await print(typeof result === 'string' ? result : `${JSON.stringify(result, null, 2)}\n`);
  return losses;
}

function converted(
  analysis: Analysis,
  chosen: Chosen,
  to: ExportOptions['to'],
  mapping: string | undefined,
): Conversion<unknown> {
  if (to === 'fhir') return toFhir(analysis, chosen);
  if (to === 'dicom') return toDicomJson(analysis, chosen);
  if (to === 'json') return toOrdersJson(analysis, chosen);
  return toCsv(analysis, { ...chosen, ...(mapping === undefined ? {} : { mapping: mappingIn(mapping) }) });
}

/** The name of a file is the identity of its measurement, so writing the same once more changes nothing. */
function intoFolder(analysis: Analysis, chosen: Chosen, folder: string): readonly Loss[] {
  const { result, losses } = toDicomJson(analysis, chosen);
  const files = result.map((set) => ({ name: `${set['00080018']?.Value?.[0]}.dcm`, ...toDicomFile(set) }));
  try {
    mkdirSync(folder, { recursive: true });
    for (const { name, result: bytes } of files) writeFileSync(join(folder, name), bytes);
  } catch (error) {
    throw new UnusableArgument(`${folder}: ${reasonOf(error)}`);
  }
  return [...losses, ...files.flatMap((file) => file.losses)];
}

async function analysisOf(path: string): Promise<Analysis> {
  const isStandardInput = path === STANDARD_INPUT;
  const read = isStandardInput ? await readStandardInput() : readText(path);
  if ('error' in read) throw new UnusableArgument(`${path}: ${read.error}`);
  // The zero of an instrument may stand in a bench file.
  const around = new Surroundings(givenSettings({}, undefined)).of(isStandardInput ? null : resolve(path));
  const [unusable] = [around.settings.error, ...around.complaints].filter((error) => error !== null);
  if (unusable !== undefined) throw new UnusableArgument(unusable);
  return analyse(read.text, { ...around.choices, shared: around.shared });
}

function checkName({ blocks }: Analysis, name: string | undefined): void {
  const names = blocks.flatMap(({ order }) => order?.name ?? []);
  if (name === undefined || names.includes(name)) return;
  throw unknownName('order', name, names, names.length > 0 ? '' : 'There is no order in it.');
}
