import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Log } from 'sarif';
import { afterAll, describe, expect, test } from 'vitest';
import type { CheckJson, LineJson } from '../../exchange';
import { command, lentil } from './support/command';
import { BAD, folderWith, GOOD, pair } from './support/folder';

const ESCAPE = String.fromCharCode(27);

describe('the same findings', () => {
  const findingsOf = (text: string | Buffer): unknown => {
    const { stdout } = lentil(['check', '--format', 'json', '-'], { input: text });
    return (JSON.parse(stdout) as CheckJson).files[0];
  };
  const plain = findingsOf(BAD);

  test.each([
    ['with CRLF', BAD.replaceAll('\n', '\r\n')],
    ['with CR', BAD.replaceAll('\n', '\r')],
    ['with a byte order mark', `\ufeff${BAD}`],
    ['with both', `\ufeff${BAD.replaceAll('\n', '\r\n')}`],
    ['without a last line end', BAD.trimEnd()],
  ])('%s', (_, text) => {
    expect(plain).toMatchObject({
      findings: [
        { code: 'lens-turned', level: 'info', eye: 'R' },
        { code: 'axis-outside', level: 'error', eye: 'R' },
      ],
    });
    expect(findingsOf(text)).toEqual(plain);
  });

  test('in every format', () => {
    const cwd = folderWith({ 'a.lentil': `${BAD}\norder TT-5\n  R 1.25\n  L -0.50\n`, 'b.lentil': GOOD });
    const whole = JSON.parse(lentil(['check', '--format', 'json', '.'], { cwd }).stdout) as CheckJson;
    const lines = lentil(['check', '--format', 'jsonl', '.'], { cwd })
      .stdout.trim()
      .split('\n')
      .map((line) => JSON.parse(line) as LineJson);
    expect(lines.filter(({ order }) => order !== null).map(({ order }) => order)).toEqual(
      whole.files.flatMap(({ orders }) => orders),
    );
    const findings = whole.files.flatMap((file) => file.findings);
    expect(lines.flatMap((line) => line.findings)).toEqual(findings);
    const text = lentil(['check', '.'], { cwd }).stdout;
    expect(findings.length).toBeGreaterThan(1);
    for (const { code, level, message, range } of findings)
      expect(text).toContain(
        `a.lentil:${range.start.line + 1}:${range.start.character + 1} ${level} ${message} [${code}]\n`,
      );
    const sarif = JSON.parse(lentil(['check', '--format', 'sarif', '.'], { cwd }).stdout) as Log;
    expect(sarif.runs[0]?.results?.map(({ message }) => message.text)).toEqual(findings.map(({ message }) => message));
    const junit = lentil(['check', '--format', 'junit', '.'], { cwd });
    expect(junit.status).toBe(1);
    expect(junit.stdout.match(/<failure /g)).toHaveLength(findings.filter(({ level }) => level === 'error').length);
  });
});

test('brief output leaves out only the figures that are worked out', () => {
  const cwd = folderWith({ 'a.lentil': GOOD });
  const json = (...more: readonly string[]): CheckJson =>
    JSON.parse(lentil(['check', '--format', 'json', ...more, 'a.lentil'], { cwd }).stdout);
  const [whole, brief] = [json(), json('--brief')];
  expect(whole.files[0]?.orders[0]?.lenses.R?.worked.length).toBeGreaterThan(3);
  const without = JSON.parse(JSON.stringify(whole), (key, value) => (key === 'worked' ? [] : value));
  expect(brief).toEqual(without);
});

test('findings and verdicts go to standard output, and nothing else does', () => {
  const { stdout, stderr } = lentil(['check', '-'], { input: BAD });
  expect(stderr).toBe('');
  expect(stdout.split('\n')).toEqual([
    expect.stringMatching(/^-:13:12 info R is turned by 4° .* \[lens-turned\]$/),
    expect.stringMatching(/^-:13:12 error R axis .* \[axis-outside\]$/),
    '        R      +1.02 -1.48 x 014',
    expect.stringMatching(/^ {15}\^+$/),
    '-',
    expect.stringMatching(
      /^ {2}TT-2 {2}reject: R axis 4° \(limit 3°\); z80\.1-2015, simple acceptance, weakest evidence secondary$/,
    ),
    expect.stringMatching(/^ {8}common practice: Loosen the rim, turn the R lens back/),
    '',
    '1 order in 1 file: 1 reject; 1 error, 0 warnings.',
    expect.stringContaining('not a medical device'),
    '',
  ]);
});

describe('a reader that goes away', () => {
  const folder = mkdtempSync(join(tmpdir(), 'lentil-long-'));
  const file = join(folder, 'long.lentil');
  writeFileSync(file, Array.from({ length: 2000 }, (_, at) => pair(`TT-${at}`, '014')).join('\n'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test.each(['text', 'json', 'jsonl', 'sarif', 'junit'])('ends the command quietly, %s', async (format) => {
    const child = spawn(process.execPath, [command, 'check', '--format', format, file]);
    let stderr = '';
    child.stderr.on('data', (chunk) => {
      stderr += chunk;
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const status = await new Promise((ended) => child.on('close', (code, signal) => ended(code ?? signal)));
    expect(stderr).toBe('');
    expect(status).toBe(1);
  });

  test('before anything was written is as quiet', () => {
    const { status, stderr } = spawnSync('sh', ['-c', '"$0" "$1" explain | true', process.execPath, command], {
      encoding: 'utf8',
    });
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });
});

test('a huge line is shown around its finding only', () => {
  const long = `note "${'x'.repeat(500_000)}"`;
  const { stdout } = lentil(['check', '-'], {
    input: BAD.replace('  pd      64\n', `  pd      64\n  ${long} \u202e\n`),
  });
  expect(stdout.length).toBeLessThan(2000);
  const far = `${' '.repeat(300_000)}pd 6-`;
  const { stdout: shown } = lentil(['check', '-'], { input: `${GOOD}\norder TT-7\n${far}\n` });
  expect(shown).toMatch(/^ {4}… +pd 6-\n {4} +\^+$/m);
  for (const line of shown.split('\n')) expect(line.length).toBeLessThan(400);
});

test('what a file holds cannot steer the terminal', () => {
  const { stdout } = lentil(['check', '-'], {
    input: `order TT${ESCAPE}[31m-1\n  R 1.25\n  ${ESCAPE}]0;title\u0007 pd 63\n`,
  });
  expect(stdout).not.toContain(ESCAPE);
  expect(stdout).not.toContain('\u0007');
  expect(stdout).toContain('TT\ufffd[31m-1');
});

describe('colours', () => {
  const coloured = new RegExp(`${ESCAPE}\\[`);

  test('are not used in a pipe', () => {
    expect(lentil(['check', '-'], { input: BAD }).stdout).not.toMatch(coloured);
  });

  const hasScript = spawnSync('script', ['--version']).status === 0;
  if (!hasScript) console.info('script is not installed: what happens on a terminal is not tested');

  /** What the command writes to a terminal. */
  const onTerminal = (env: NodeJS.ProcessEnv, run: string): string =>
    execFileSync('script', ['-qec', run, '/dev/null'], { encoding: 'utf8', env: { ...process.env, ...env } });

  test.skipIf(!hasScript)('are used on a terminal, unless NO_COLOR is set', () => {
    const file = join(realpathSync(folderWith({ 'bad.lentil': BAD })), 'bad.lentil');
    const run = `'${process.execPath}' '${command}' check '${file}' || true`;
    const bare = { NO_COLOR: undefined, NODE_DISABLE_COLORS: undefined, FORCE_COLOR: undefined, CI: undefined };
    expect(onTerminal({ ...bare, TERM: 'xterm-256color' }, run)).toMatch(coloured);
    expect(onTerminal({ ...bare, TERM: 'xterm-256color', NO_COLOR: '1' }, run)).not.toMatch(coloured);
    expect(onTerminal({ ...bare, TERM: 'dumb' }, run)).not.toMatch(coloured);
  });
});
