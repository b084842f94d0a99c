import { describe, expect, test } from 'vitest';
import { lentil } from './support/command';
import { BAD, DOUBTFUL, folderWith, GOOD } from './support/folder';

const files = { 'good.lentil': GOOD, 'bad.lentil': BAD, 'doubtful.lentil': DOUBTFUL };

describe('the status of check', () => {
  test.each([
    ['nothing at error level', ['good.lentil'], 0],
    ['one error', ['bad.lentil'], 1],
    ['one error among good files', ['good.lentil', 'bad.lentil', 'doubtful.lentil'], 1],
    ['a warning', ['doubtful.lentil'], 0],
    ['a warning, strictly', ['--strict', 'doubtful.lentil'], 1],
    ['nothing, strictly', ['--strict', 'good.lentil'], 0],
    ['a missing file', ['none.lentil'], 2],
    ['a missing file after an error', ['bad.lentil', 'none.lentil'], 2],
    ['a file used as a folder', ['good.lentil/deeper.lentil'], 2],
    ['no path', [], 2],
    ['an unknown format', ['--format', 'pdf', 'good.lentil'], 2],
    ['an unknown option', ['--fast', 'good.lentil'], 2],
    ['an unknown standard', ['--standard', 'z80.1-2051', 'good.lentil'], 2],
    ['a known standard', ['--standard', 'Z80.1-2015', 'good.lentil'], 0],
  ])('%s', (_, args, status) => {
    expect(lentil(['check', ...args], { cwd: folderWith(files) }).status).toBe(status);
  });
});

describe('the status of the rest', () => {
  test.each([
    ['help', ['--help'], 0],
    ['help of a command', ['check', '--help'], 0],
    ['version', ['--version'], 0],
    ['nothing said', [], 2],
    ['an unknown command', ['chek'], 2],
    ['the page of a code', ['explain', 'axis-outside'], 0],
    ['the page of no code', ['explain', 'axis-outsid'], 2],
    ['the sets', ['standards'], 0],
    ['one set', ['standards', 'z80.1-2015'], 0],
    ['no set', ['standards', 'z80'], 2],
    ['a server that is not told how to speak', ['serve'], 2],
  ])('%s', (_, args, status) => {
    expect(lentil(args).status).toBe(status);
  });
});

test.each([
  [['chek'], 'Did you mean check?'],
  [['explain', 'axis-outsid'], 'Did you mean axis-outside?'],
  [['standards', 'z80.1-2016'], 'Did you mean z80.1-2015?'],
  [['standards', 'house'], 'There are z80.1-2015, '],
])('%j is answered with what was probably meant', (args, answer) => {
  const { stderr, stdout } = lentil(args);
  expect(stderr).toMatch(/^lentil: /);
  expect(stderr).toContain(answer);
  expect(stdout).toBe('');
});

test('a missing file costs one line on standard error, and the others are checked', () => {
  const cwd = folderWith(files);
  const { stdout, stderr } = lentil(['check', 'none.lentil', 'bad.lentil', 'no-folder/'], { cwd });
  expect(stderr).toBe('lentil: none.lentil: no such file or folder\nlentil: no-folder/: no such file or folder\n');
  expect(stdout).toContain('TT-2  reject: R axis 4° (limit 3°)');
});

test('errors only come from the standard named on the command line where the file names none', () => {
  const without = BAD.replace('standard z80.1-2015\n', '');
  const cwd = folderWith({ 'bad.lentil': without });
  expect(lentil(['check', 'bad.lentil'], { cwd }).status).toBe(0);
  expect(lentil(['check', '--standard', 'z80.1-2015', 'bad.lentil'], { cwd }).status).toBe(1);
  // By ISO 21987 a cylinder of 1.50 may be 4° off.
  expect(lentil(['check', '--standard', 'iso-21987-2017', 'bad.lentil'], { cwd }).status).toBe(0);
});

describe('a standard on the command line that is none of the built-in sets', () => {
  const house = 'tolerance house from z80.1-2015\n  axis 1\n';
  const order = GOOD.replace('standard z80.1-2015\n', '').replace('x 011', 'x 012');

  test('is told once, and the files are read all the same', () => {
    const cwd = folderWith({ 'a.lentil': order, 'b.lentil': order });
    const { status, stdout, stderr } = lentil(['check', '--standard', 'z80.1-2051', '.'], { cwd });
    expect(stderr).toBe('lentil: there is no tolerance set called z80.1-2051. Did you mean z80.1-2015?\n');
    expect(stdout).toContain('TT-1');
    expect(status).toBe(2);
  });

  test('may be a house set of the bench file', () => {
    const cwd = folderWith({ 'bench.lentil': house, 'a.lentil': order });
    const { status, stdout, stderr } = lentil(['check', '--standard', 'house', 'a.lentil'], { cwd });
    expect(stderr).toBe('');
    // 2° are inside the 3° of the standard and outside the 1° of the house.
    expect(stdout).toContain(
      'TT-1  accept, house limit (R axis); house from z80.1-2015, simple acceptance, weakest evidence secondary',
    );
    expect(status).toBe(0);
  });
});
