import { spawnSync } from 'node:child_process';
import { parse } from 'csv-parse/sync';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { readMapping, toCsv } from '../../../exchange';
import { analyse } from '../../../orders';
import { analysisOf, examplePaths } from '../support/examples';
import { mappingOf } from '../support/mapping';

const JOB = `order QL-1042
  R -4.50 -0.75 x 022
  L -4.25
  add +2.00
  prism R 2.00 BO 0.5 BU
  pd 63 near 60
  height R 17 L 16.5
  design bifocal flat-top 28
  note "call, before ""noon"""
  note "and after"
  reading 2026-11-24 14:30 by KO with FOC-A
    R -4.50 -0.62 x 024
    L -4.25
    again R -4.50 -0.62 x 022
    pd 63.5
`;

/** The rows as csv-parse reads them, filled cells only. */
const rowsIn = (csv: string): readonly Record<string, string>[] =>
  (parse(csv, { columns: true }) as Record<string, string>[]).map((row) =>
    Object.fromEntries(Object.entries(row).filter(([, cell]) => cell !== '')),
  );

test('the usual table has a row for each lens ordered and read', () => {
  const reading = { order: 'QL-1042', reading: '1', date: '2026-11-24', time: '14:30', by: 'KO', with: 'FOC-A' };
  expect(rowsIn(toCsv(analyse(JOB)).result)).toEqual([
    {
      order: 'QL-1042',
      pd: '63',
      'near-pd': '60',
      design: 'bifocal flat-top 28',
      note: 'call, before "noon"\nand after',
    },
    {
      order: 'QL-1042',
      eye: 'R',
      sphere: '-4.50',
      cylinder: '-0.75',
      axis: '22',
      add: '2.00',
      'prism-in': '-2.00',
      'prism-up': '0.5',
      height: '17',
    },
    { order: 'QL-1042', eye: 'L', sphere: '-4.25', add: '2.00', height: '16.5' },
    { ...reading, eye: 'R', sphere: '-4.50', cylinder: '-0.62', axis: '24' },
    { ...reading, eye: 'R', repeat: '1', sphere: '-4.50', cylinder: '-0.62', axis: '22' },
    { ...reading, eye: 'L', sphere: '-4.25' },
    { ...reading, pd: '63.5' },
  ]);
});

test('a mapping chooses the columns, and what has none is lost', () => {
  const mapping = mappingOf(
    'order = job',
    'R sphere = r_sph',
    'L sphere = l_sph',
    'reading R sphere = r_read',
    'date = day',
  );
  const { result, losses } = toCsv(analyse(JOB), { mapping });
  expect(result).toBe('job,r_sph,l_sph,r_read,day\r\nQL-1042,-4.50,-4.25,-4.50,2026-11-24\r\n');
  expect(losses.map(({ what, line }) => `${(line ?? 0) + 1} ${what}`)).toEqual([
    ...['2 cylinder -0.75', '2 axis 22', '4 add 2.00', '4 add 2.00', '5 prism in -2.00', '5 prism up 0.5'],
    ...['6 pd 63', '6 near pd 60', '7 height 17', '7 height 16.5', '8 design bifocal flat-top 28'],
    ...['9 note "call, before ""noon"""', '10 note "and after"'],
    ...[
      '12 cylinder -0.62',
      '12 axis 24',
      '13 sphere -4.25',
      '14 sphere -4.50',
      '14 cylinder -0.62',
      '14 axis 22',
      '15 pd 63.5',
    ],
    ...['11 time 14:30', '11 by KO', '11 with FOC-A'],
  ]);
});

test('a table may be written with semicolons and decimal commas', () => {
  const mapping = mappingOf('delimiter = semicolon', 'decimal = comma', 'order = n', 'R sphere = r');
  expect(toCsv(analyse('order A\n  R -4.50\n'), { mapping }).result).toBe('n;r\r\nA;-4,50\r\n');
});

test('nothing in a cell is a formula, and figures keep their sign', () => {
  const { result } = toCsv(analyse('order "=1+1"\n  R -4.50\n  note "@x"\n  ref "-1"\n'), {
    mapping: mappingOf('order = o', 'R sphere = s', 'note = n', 'ref = r'),
  });
  expect(result).toBe("o,s,n,r\r\n'=1+1,-4.50,'@x,-1\r\n");
});

describe.each(examplePaths)('%s', (path) => {
  const { result } = toCsv(analysisOf(path));

  // Two libraries of different hands, and Python's own reader.
  test('is read alike by csv-parse, papaparse and Python', () => {
    const rows: readonly (readonly string[])[] = parse(result);
    expect(Papa.parse<string[]>(result, { skipEmptyLines: true }).data).toEqual(rows);
    const script =
      'import csv, io, json, sys; print(json.dumps(list(csv.reader(io.StringIO(sys.stdin.buffer.read().decode(), newline="")))))';
    const python = spawnSync('python3', ['-c', script], { input: result, encoding: 'utf8' });
    if (python.error) console.info('Python is not installed; its reader is left out');
    else expect(JSON.parse(python.stdout)).toEqual(rows);
    for (const row of rows) expect(row).toHaveLength(rows[0]?.length ?? 0);
  });

  test('gives the same bytes twice', () => expect(toCsv(analysisOf(path)).result).toBe(result));
});

describe('a mapping that cannot be used says what is wrong and where', () => {
  test.each([
    ['sphere', 'line 1 of the mapping: write what it is, an equals sign and the name of the column'],
    ['order = n\nR spere = s', 'line 2 of the mapping: there is nothing called “R spere”'],
    ['R frame-a = a', 'line 1 of the mapping: there is nothing called “R frame-a”'],
    ['order = n\nnote = n', 'line 2 of the mapping: the column “n” has a meaning already'],
    ['order = n\norder = m', 'line 2 of the mapping: “order” has a column already'],
    ['decimal = dot', 'line 1 of the mapping: decimal is one of point, comma'],
    ['order = n\ndecimal = comma', 'the mapping gives one character to fields and to decimals'],
    ['# nothing', 'the mapping names no column'],
    ['sphere = s', '“sphere” needs an eye: write “R sphere” or “L sphere”, or name a column for the eye'],
    ['eye = e\nR sphere = s', 'a column gives the eye, so “R sphere” cannot name one too'],
    ['reading = n\nreading sphere = s', 'a column gives the reading, so “reading sphere” cannot name one too'],
    ['__proto__ = s', 'line 1 of the mapping: there is nothing called “__proto__”'],
    ['delimiter = __proto__', 'line 1 of the mapping: delimiter is one of comma, semicolon, tab'],
  ])('%j', (text, error) => expect(readMapping(text)).toEqual({ error }));
});
