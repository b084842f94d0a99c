import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { RULES, toleranceSets } from '../../orders';
import { lentil } from './support/command';
import { folderWith } from './support/folder';

const has = (shell: string): boolean => spawnSync(shell, ['--version']).status === 0;
const codes = RULES.map(({ code }) => code);
const sets = toleranceSets.map(({ id }) => id);

/** Every command as its help lists it. */
const commands = [...lentil(['--help']).stdout.matchAll(/^ {2}([a-z]+) .*<|^ {2}([a-z]+) \[/gm)].map(
  ([, plain, optional]) => plain ?? optional,
);

describe.skipIf(!has('bash'))('bash is offered', () => {
  /** What bash itself makes of the script, for these words behind the name of the command. */
  function offered(...words: readonly string[]): string[] {
    const cwd = folderWith({ script: lentil(['complete', 'bash']).stdout });
    const all = ['lentil', ...words].map((word) => `'${word}'`).join(' ');
    const ask = `source ./script; COMP_WORDS=(${all}); COMP_CWORD=${words.length}; _lentil; printf '%s\\n' "\${COMPREPLY[@]}"`;
    const { stdout, stderr } = spawnSync('bash', ['--norc', '-c', ask], { cwd, encoding: 'utf8' });
    expect(stderr).toBe('');
    return stdout.split('\n').filter((line) => line !== '');
  }

  test('every command', () => {
    expect(commands).toContain('check');
    expect(offered('')).toEqual(commands);
  });

  test.each([
    ['the commands that begin so', ['ch'], ['check']],
    ['the forms of the output', ['check', '--format', ''], ['text', 'json', 'jsonl', 'sarif', 'junit']],
    ['the tolerance sets', ['check', 'a.lentil', '--standard', ''], sets],
    ['the tolerance sets', ['standards', ''], sets],
    ['the codes', ['explain', 'axis-'], codes.filter((code) => code.startsWith('axis-'))],
    ['the options', ['check', '--st'], ['--standard', '--strict']],
    ['nothing of ours where a path belongs', ['check', ''], []],
  ])('%s', (_, words, wanted) => {
    expect(offered(...words)).toEqual(wanted);
  });

  test('files where a path belongs, by the shell itself', () => {
    expect(lentil(['complete', 'bash']).stdout).toContain('complete -o default -F _lentil lentil\n');
  });
});

test.skipIf(!has('fish'))('fish is offered the same', () => {
  const cwd = folderWith({ script: lentil(['complete', 'fish']).stdout });
  const { stdout } = spawnSync('fish', ['-N', '-c', 'source ./script; complete -C "lentil check --format "'], {
    cwd,
    encoding: 'utf8',
  });
  expect(
    stdout
      .split('\n')
      .filter(Boolean)
      .map((line) => line.split('\t')[0]),
  ).toEqual(['text', 'json', 'jsonl', 'sarif', 'junit'].sort());
});

test.each(['bash', 'zsh', 'fish'])('the script for %s names every command and option of its help', (shell) => {
  const { stdout: script } = lentil(['complete', shell]);
  for (const command of commands) {
    expect(script).toContain(command);
    for (const [, option] of lentil([command as string, '--help']).stdout.matchAll(/^ {2}(?:-\w, )?--([\w-]+)/gm))
      expect(script, `${command} --${option}`).toMatch(new RegExp(`(?:--|-l )${option}\\b`));
  }
});

test('a shell that is not known is refused with the known ones', () => {
  const { status, stdout, stderr } = lentil(['complete', 'tcsh']);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toContain('bash, zsh, fish');
});
