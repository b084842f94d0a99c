/** The sheet that a lab would otherwise keep: a row for each order, the limits of the same set as formulas. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Timed, timed } from './timed';
import type { Job } from './work';

/** The command of LibreOffice, or null where it is not installed. */
export const OFFICE: string | null =
  ['soffice', 'libreoffice'].find((name) => spawnSync(name, ['--version'], { stdio: 'ignore' }).status === 0) ?? null;

/** The figures of a row. In a formula `#` stands for the number of the row. */
const figuresOf = ({ ordered, read }: Job): readonly number[] => [
  ...[ordered.R, ordered.L, read.R, read.L].flatMap(({ sphere, cylinder, axis }) => [sphere, cylinder, axis]),
  ...[ordered.add, ordered.pd, ordered.near, ordered.height],
  ...[read.addR, read.addL, read.pd, ordered.near, read.heightR, read.heightL],
];

/** Columns of figuresOf: A to C and D to F ordered, G to I and J to L read, M to P add, PD, near PD, height, Q to V read. */
const lens = (s: string, c: string, a: string, rs: string, rc: string, ra: string): readonly string[] => [
  `IF(ABS(${s}#)>=ABS(${s}#+${c}#);${within(`${rs}#-${s}#`, limitOf(`${s}#`))};${within(`${rs}#+${rc}#-${s}#-${c}#`, limitOf(`${s}#+${c}#`))})`,
  within(`${rc}#-${c}#`, `IF(ABS(${c}#)<=2;0.13;IF(ABS(${c}#)<=4.5;0.15;0.04*ABS(${c}#)))`),
  `OR(${c}#=0;${rc}#=0;${within(`MIN(ABS(${ra}#-${a}#);180-ABS(${ra}#-${a}#))`, axisLimit(`ABS(${c}#)`))})`,
];

/** Exact to the printed digit and inclusive, as Lentil compares. */
const within = (deviation: string, limit: string): string => `ROUND(ABS(${deviation});6)<=ROUND(${limit};6)`;
const limitOf = (power: string): string => `IF(ABS(${power})<=6.5;0.13;0.02*ABS(${power}))`;
const axisLimit = (c: string): string =>
  `IF(${c}<0.12;180;IF(${c}<=0.25;14;IF(${c}<=0.5;7;IF(${c}<=0.75;5;IF(${c}<=1.5;3;2)))))`;
const along180 = (s: string, c: string, a: string): string => `ABS(${s}#+${c}#*SIN(RADIANS(${a}#))^2)`;
const stronger = `MAX(${along180('A', 'B', 'C')};${along180('D', 'E', 'F')})`;

/** ANSI Z80.1-2015 as `lentil standards z80.1-2015` prints it, for a glazed pair of bifocals. */
const FORMULAS: readonly string[] = [
  ...lens('A', 'B', 'C', 'G', 'H', 'I'),
  ...lens('D', 'E', 'F', 'J', 'K', 'L'),
  within('Q#-M#', '0.12'),
  within('R#-M#', '0.12'),
  `IF(${stronger}<=2.75;${within(`(S#-N#)/10*${stronger}`, '0.67')};${within('S#-N#', '2.5')})`,
  within('T#-O#', '2.5'),
  within('U#-P#', '1'),
  within('V#-P#', '1'),
  within('U#-V#', '1'),
];

const VERDICT = 'IF(AND(W#:AI#);"accept";"reject")';

export function sheetOf(work: readonly Job[]): string {
  const rows = work.map((job, at) => {
    const figures = figuresOf(job).map(
      (value) => `<table:table-cell office:value-type="float" office:value="${value}"/>`,
    );
    const formulas = [...FORMULAS, VERDICT].map(
      (formula) => `<table:table-cell table:formula="${written(formula, at + 1)}"/>`,
    );
    return `<table:table-row>${figures.join('')}${formulas.join('')}</table:table-row>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet><table:table table:name="year">
${rows.join('\n')}
</table:table></office:spreadsheet></office:body></office:document>
`;
}

/** As OpenDocument writes references, in an attribute. */
const written = (formula: string, row: number): string =>
  `of:=${formula}`
    .replace(/\b([A-Z]{1,2})#:([A-Z]{1,2})#/g, `[.$1${row}:.$2${row}]`)
    .replace(/\b([A-Z]{1,2})#/g, `[.$1${row}]`)
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

/** Loads a sheet that holds no results, so that all of them are worked out, and writes them as a table. */
export async function judgedInSheet(office: string, path: string, folder: string): Promise<Timed> {
  const profile = `-env:UserInstallation=file://${join(folder, 'office')}`;
  const run = await timed(office, [profile, '--headless', '--convert-to', 'csv', '--outdir', folder, path]);
  // What is started is a script; the memory is that of its child.
  return { ...run, memory: null };
}

/** How many rows of the table that came out say so. */
export function rejectedInSheet(folder: string): number {
  const table = readFileSync(join(folder, 'year.csv'), 'utf8');
  return table.split('\n').filter((row) => row.trimEnd().endsWith('reject')).length;
}
