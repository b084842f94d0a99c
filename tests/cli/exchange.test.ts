import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CONTACT, GLASSES } from '../exchange/support/fhir-examples';
import { lentil } from './support/command';
import { folderWith } from './support/folder';

const JOB = `order QL-1
  R           -4.50 -0.75 x 022
  L           -4.25

  reading 2026-11-24 14:30 by KO with FOC-A
    R        -4.50
    L        -4.25
`;

const OTHER = 'order QL-2\n  R           -1.00\n  L           -1.00\n';

const files = {
  'jobs.lentil': `${JOB}\n${OTHER}`,
  'plain.lentil': OTHER,
  'glasses.json': GLASSES,
  'contact.json': CONTACT,
  'table.csv': 'n,sph\n1,-2\n',
  'columns.txt': 'order = n\nR sphere = sph\n',
  'bad-columns.txt': 'order = n\nR spere = sph\n',
};

const run = (...args: readonly string[]) => lentil(args, { cwd: folderWith(files) });

describe('the status', () => {
  test.each([
    ['a whole export', ['export', '--to', 'fhir', 'plain.lentil'], 0],
    ['a whole export, strictly', ['export', '--to', 'fhir', '--strict', 'plain.lentil'], 0],
    ['an export with losses', ['export', '--to', 'fhir', 'jobs.lentil'], 0],
    ['an export with losses, strictly', ['export', '--to', 'fhir', '--strict', 'jobs.lentil'], 1],
    ['an import with losses', ['import', '--from', 'fhir', 'glasses.json'], 0],
    ['an import with losses, strictly', ['import', '--from', 'fhir', '--strict', 'glasses.json'], 1],
    ['an import that is refused', ['import', '--from', 'fhir', 'contact.json'], 2],
    ['a table by its mapping', ['import', '--from', 'csv', '--mapping', 'columns.txt', 'table.csv'], 0],
    ['a mapping that is wrong', ['import', '--from', 'csv', '--mapping', 'bad-columns.txt', 'table.csv'], 2],
    ['a mapping that is not there', ['import', '--from', 'csv', '--mapping', 'none.txt', 'table.csv'], 2],
    ['a mapping without a table', ['export', '--to', 'fhir', '--mapping', 'columns.txt', 'plain.lentil'], 2],
    ['no format', ['export', 'plain.lentil'], 2],
    ['an unknown format', ['export', '--to', 'xml', 'plain.lentil'], 2],
    ['a missing file', ['export', '--to', 'csv', 'none.lentil'], 2],
    ['two files', ['export', '--to', 'csv', 'plain.lentil', 'jobs.lentil'], 2],
    ['a missing order', ['export', '--to', 'csv', '--order', 'QL-3', 'jobs.lentil'], 2],
  ])('of %s', (_, args, status) => {
    const ran = run(...args);
    expect(ran.status, ran.stderr).toBe(status);
  });
});

test('losses are told on standard error, and the output stays clean', () => {
  const { stdout, stderr } = run('export', '--to', 'fhir', '--order', 'QL-1', 'jobs.lentil');
  expect(JSON.parse(stdout).entry).toHaveLength(3);
  expect(stderr).toBe('not carried over: line 5, QL-1: time 14:30: there is no place for it\n');
});

test('a missing order is answered with the one that was probably meant', () => {
  expect(run('export', '--to', 'csv', '--order', 'QL-11', 'jobs.lentil').stderr).toBe(
    'lentil: there is no order called QL-11. Did you mean QL-1?\n',
  );
});

test('what is refused is told with its file, and nothing is printed for it', () => {
  const { stdout, stderr } = run('import', '--from', 'fhir', 'contact.json');
  expect(stdout).toBe('');
  expect(stderr).toBe('lentil: contact.json: it is a contact lens, not a spectacle lens\n');
});

test('a mapping that is wrong is told with its line', () => {
  expect(run('import', '--from', 'csv', '--mapping', 'bad-columns.txt', 'table.csv').stderr).toBe(
    'lentil: bad-columns.txt: line 2 of the mapping: there is nothing called “R spere”\n',
  );
});

test.each(['fhir', 'dicom', 'csv'])('%s goes through standard input and output and comes back', (format) => {
  const out = lentil(['export', '--to', format, '-'], { input: JOB });
  expect(out.status).toBe(0);
  const back = lentil(['import', '--from', format, '-'], { input: out.stdout });
  expect(back.status, back.stderr).toBe(0);
  const wanted = { fhir: 'R           -4.50 -0.75 x 022', dicom: 'R        -4.50', csv: JOB };
  expect(back.stdout).toContain(wanted[format as 'csv']);
});

test('json holds every fact with its digits', () => {
  const { stdout } = run('export', '--to', 'json', '--order', 'QL-1', 'jobs.lentil');
  expect(JSON.parse(stdout)).toMatchObject({
    lentil: 1,
    orders: [{ name: 'QL-1', R: { sphere: '-4.50', cylinder: '-0.75', axis: '22' }, L: { sphere: '-4.25' } }],
  });
});

test('each measurement becomes a DICOM file of the same name every time', () => {
  const cwd = folderWith(files);
  mkdirSync(join(cwd, 'out'));
  const args = ['export', '--to', 'dicom', '--files', 'out', 'jobs.lentil'];
  expect(lentil(args, { cwd }).stdout).toBe('');
  const [name, ...more] = readdirSync(join(cwd, 'out'));
  expect(more).toEqual([]);
  expect(name).toMatch(/^2\.25\.\d+\.dcm$/);
  const bytes = readFileSync(join(cwd, 'out', name as string));
  expect(bytes.subarray(128, 132).toString()).toBe('DICM');
  lentil(args, { cwd });
  expect(readdirSync(join(cwd, 'out'))).toEqual([name]);
  expect(readFileSync(join(cwd, 'out', name as string))).toEqual(bytes);
});

test.each([
  ['UTF-16', Buffer.from('\uFEFForder\n', 'utf16le'), 'it is UTF-16; save it as UTF-8'],
  ['Latin-1', Buffer.from('order,eye\nJ\xfcrgen,R\n', 'latin1'), 'it is not UTF-8 text'],
  ['100 MB', Buffer.alloc(101_000_000, ' '), 'it is larger than 32 million characters; bring it in in parts'],
])('a file of %s is refused', (_, content, why) => {
  const cwd = folderWith({ 'table.csv': content });
  expect(lentil(['import', '--from', 'csv', 'table.csv'], { cwd })).toEqual({
    status: 2,
    stdout: '',
    stderr: `lentil: table.csv: ${why}\n`,
  });
});
