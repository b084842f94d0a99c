import { describe, expect, test } from 'vitest';
import type { CheckJson } from '../../exchange';
import { lentil } from './support/command';
import { DOUBTFUL, folderWith, GOOD } from './support/folder';

/** Judged only when a tolerance set comes from outside. */
const UNJUDGED = GOOD.replace('standard z80.1-2015\n', '');

const config = (settings: unknown): string => (typeof settings === 'string' ? settings : JSON.stringify(settings));

function verdictWith(settings: unknown, ...options: readonly string[]): unknown {
  const cwd = folderWith({ 'lentil.config.json': config(settings), 'orders/a.lentil': UNJUDGED });
  const { stdout } = lentil(['check', '--format', 'json', ...options, 'orders'], { cwd });
  const { standard, verdict } = (JSON.parse(stdout) as CheckJson).files[0]?.orders[0] ?? {};
  return [standard, verdict];
}

describe('the settings file', () => {
  test.each([
    ['names the set', { standard: 'z80.1-2015' }, [], ['z80.1-2015', 'accept']],
    [
      'gives way to an option',
      { standard: 'z80.1-2015' },
      ['--standard', 'iso-21987-2017'],
      ['iso-21987-2017', 'accept'],
    ],
    ['is left out when asked', { standard: 'z80.1-2015' }, ['--no-config'], [null, 'incomplete']],
    ['may name its schema', { $schema: 'config.schema.json', standard: 'z80.1-2015' }, [], ['z80.1-2015', 'accept']],
    ['may begin with a byte order mark', '\ufeff{ "standard": "z80.1-2015" }', [], ['z80.1-2015', 'accept']],
  ])('%s', (_, settings, options, wanted) => {
    expect(verdictWith(settings, ...options)).toEqual(wanted);
  });

  test('is the nearest above the folder of the command', () => {
    const cwd = folderWith({
      'lentil.config.json': '{ "standard": "none-such" }',
      'a/lentil.config.json': '{ "standard": "z80.1-2015" }',
      'a/b/c.lentil': UNJUDGED,
    });
    expect(lentil(['check', '.'], { cwd: `${cwd}/a/b` })).toMatchObject({ status: 0, stderr: '' });
  });

  test('is that of each file, wherever the command is started', () => {
    const cwd = folderWith({
      'lentil.config.json': '{ "standard": "z80.1-2015" }',
      'a.lentil': UNJUDGED,
      'week/lentil.config.json': '{ "standard": "iso-21987-2017", "strict": true }',
      'week/b.lentil': UNJUDGED,
      'desk/c.lentil': UNJUDGED,
    });
    const standards = (folder: string, ...paths: readonly string[]) =>
      (
        JSON.parse(lentil(['check', '--format', 'json', ...paths], { cwd: `${cwd}/${folder}` }).stdout) as CheckJson
      ).files
        .map(({ path, orders }) => `${path.split('/').at(-1)} ${orders[0]?.standard}`)
        .sort();
    const expected = ['a.lentil z80.1-2015', 'b.lentil iso-21987-2017', 'c.lentil z80.1-2015'];
    expect(standards('.', '.')).toEqual(expected);
    expect(standards('.', '--threads', '2', '.')).toEqual(expected);
    expect(standards('desk', '../a.lentil', '../week', 'c.lentil')).toEqual(expected);
    expect(standards('week', '--standard', 'nj-13-35-5.2', '..').map((one) => one.split(' ')[1])).toEqual(
      Array(3).fill('nj-13-35-5.2'),
    );
  });

  test('counts warnings for the files below it alone', () => {
    const cwd = folderWith({
      'a.lentil': DOUBTFUL,
      'week/lentil.config.json': '{ "strict": true }',
      'week/b.lentil': GOOD,
    });
    expect(lentil(['check', '.'], { cwd }).status).toBe(0);
    const junit = (path: string) => lentil(['check', '--format', 'junit', path], { cwd }).stdout;
    expect(junit('a.lentil')).toContain('failures="0"');
    const strict = folderWith({ 'week/lentil.config.json': '{ "strict": true }', 'week/b.lentil': DOUBTFUL });
    expect(lentil(['check', '.'], { cwd: strict }).status).toBe(1);
    expect(lentil(['check', '--format', 'junit', '.'], { cwd: strict }).stdout).toContain('failures="1"');
  });

  test('that cannot be used leaves the files below it unjudged, and the others are judged', () => {
    const cwd = folderWith({
      'a.lentil': GOOD,
      'week/lentil.config.json': '{ "guard": "none" }',
      'week/b.lentil': GOOD,
    });
    for (const options of [[], ['--threads', '2']]) {
      const { status, stdout, stderr } = lentil(['check', '--format', 'json', ...options, '.'], { cwd });
      expect(status).toBe(2);
      expect(stderr).toMatch(/week.lentil\.config\.json: guard has to be one of/);
      const { files } = JSON.parse(stdout) as CheckJson;
      expect(files.map(({ path, orders }) => [path, orders.map(({ verdict }) => verdict)])).toEqual([
        ['a.lentil', ['accept']],
        ['week/b.lentil', []],
      ]);
    }
  });

  test('and a bench file that cannot be read leave nothing to judge by', () => {
    const cwd = folderWith({ 'a.lentil': GOOD, 'bench.lentil': Buffer.from([0xff, 0xfe, 0x41, 0]) });
    const { status, stdout } = lentil(['check', 'a.lentil'], { cwd });
    expect(status).toBe(2);
    expect(stdout).toContain('incomplete: not resolved: input missing');
    expect(stdout).toContain('“bench.lentil” cannot be used: it is UTF-16; save it as UTF-8. Nothing is judged');
  });

  test('can be named', () => {
    const cwd = folderWith({ 'other.json': '{ "standard": "z80.1-2015" }', 'a.lentil': UNJUDGED });
    const { stdout } = lentil(['check', '--config', 'other.json', 'a.lentil'], { cwd });
    expect(stdout).toContain('accept; z80.1-2015');
  });

  test('makes warnings count', () => {
    const cwd = folderWith({
      'lentil.config.json': '{ "strict": true }',
      'a.lentil': 'order A\n  R -450\n  L -4.50\n',
    });
    expect(lentil(['check', 'a.lentil'], { cwd }).status).toBe(1);
    expect(lentil(['check', '--no-config', 'a.lentil'], { cwd }).status).toBe(0);
  });

  test('tells what nearly uses its limit up', () => {
    const near = { standard: 'z80.1-2015', near: 15 };
    const cwd = folderWith({ 'lentil.config.json': config(near), 'a.lentil': UNJUDGED });
    const told = lentil(['check', 'a.lentil'], { cwd }).stdout;
    expect(told).not.toBe(lentil(['check', '--near', '100', 'a.lentil'], { cwd }).stdout);
  });

  test.each([
    ['{ "standrd": "z80.1-2015" }', 'there is no setting called standrd. Did you mean standard?'],
    ['{ "colour": 1 }', 'there is no setting called colour. There are standard, strict, guard, near.'],
    ['{ "standard": 7 }', 'standard has to be the name of a tolerance set'],
    ['{ "strict": "yes" }', 'strict has to be true or false'],
    ['{ "guard": "none" }', 'guard has to be one of simple, accept-when-sure, reject-when-sure'],
    ['{ "near": 0 }', 'near has to be a percentage above 0 and up to 100'],
    ['{ "__proto__": {} }', 'there is no setting called __proto__.'],
    ['[]', 'it has to be an object such as'],
    ['{', 'it is not JSON'],
    ['', 'it is not JSON'],
  ])('%s is refused', (settings, why) => {
    const cwd = folderWith({ 'lentil.config.json': settings, 'a.lentil': GOOD });
    const { status, stdout, stderr } = lentil(['check', 'a.lentil'], { cwd });
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(why);
  });
});

test.each(['0', '101', 'much', ''])('--near %j is refused', (percent) => {
  const { status, stderr } = lentil(['check', '--near', percent, '-'], { input: GOOD });
  expect(status).toBe(2);
  expect(stderr).toContain('It has to be a percentage above 0 and up to 100.');
});
