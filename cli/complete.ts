/**
 * `lentil complete`: prints the script that makes a shell complete commands, options and known names. It is written from
 * the commands themselves and answers without running Lentil, so that a key press never waits; paths are left to the shell.
 */
import type { Command } from 'commander';
import { RULES, toleranceSets } from '../orders';
import { print } from './output';

interface Completed {
  readonly name: string;
  readonly description: string;
  readonly options: readonly {
    readonly long: string;
    readonly description: string;
    readonly takesValue: boolean;
    readonly values: readonly string[];
  }[];
  /** What may stand behind the command; nothing for paths. */
  readonly words: readonly string[];
}

export async function complete(shell: keyof typeof SCRIPTS, program: Command): Promise<0> {
  await print(SCRIPTS[shell](program.name(), program.commands.map(completed)));
  return 0;
}

const setIds = (): string[] => toleranceSets.map(({ id }) => id);

/** Values that only the library knows, by the name of an option or of a command. */
const KNOWN: Readonly<Record<string, () => readonly string[]>> = {
  '--standard': setIds,
  standards: setIds,
  explain: () => RULES.map(({ code }) => code),
};

function completed(command: Command): Completed {
  const visible = command.createHelp().visibleOptions(command);
  return {
    name: command.name(),
    description: command.description(),
    options: visible.flatMap(({ long, description, required, optional, argChoices }) =>
      long
        ? [{ long, description, takesValue: required || optional, values: argChoices ?? KNOWN[long]?.() ?? [] }]
        : [],
    ),
    words: command.registeredArguments[0]?.argChoices ?? KNOWN[command.name()]?.() ?? [],
  };
}

function bash(program: string, commands: readonly Completed[]): string {
  const values = commands.flatMap(({ name, options }) =>
    options
      .filter(({ values }) => values.length > 0)
      .map(({ long, values }) => `    '${name} ${long}') words='${values.join(' ')}' ;;\n`),
  );
  const options = commands.map(
    ({ name, options: own }) => `        ${name}) words='${own.map(({ long }) => long).join(' ')}' ;;\n`,
  );
  const words = commands
    .filter((command) => command.words.length > 0)
    .map((command) => `        ${command.name}) words='${command.words.join(' ')}' ;;\n`);
  return `_${program}() {
  local cur=\${COMP_WORDS[COMP_CWORD]} command=\${COMP_WORDS[1]} words=
  if [ "$COMP_CWORD" -eq 1 ]; then
    words='${commands.map(({ name }) => name).join(' ')}'
  else case "$command \${COMP_WORDS[COMP_CWORD-1]}" in
${values.join('')}    *) case "$cur" in
      -*) case "$command" in
${options.join('')}      esac ;;
      *) case "$command" in
${words.join('')}      esac ;;
    esac ;;
  esac; fi
  COMPREPLY=($(compgen -W "$words" -- "$cur"))
}
complete -o default -F _${program} ${program}
`;
}

/** The shell reads the script of bash by a part of its own. */
const zsh = (program: string, commands: readonly Completed[]): string =>
  `(( \${+functions[compdef]} )) || { autoload -U +X compinit && compinit }\nautoload -U +X bashcompinit && bashcompinit\n${bash(program, commands)}`;

function fish(program: string, commands: readonly Completed[]): string {
  const quoted = (text: string): string => `'${text.replaceAll(/[\\']/g, '\\$&')}'`;
  const start = commands.map(
    ({ name, description }) =>
      `complete -c ${program} -f -n __fish_use_subcommand -a ${name} -d ${quoted(description)}\n`,
  );
  const behind = commands.flatMap(({ name, options, words }) => {
    const head = `complete -c ${program} -n '__fish_seen_subcommand_from ${name}'`;
    const listed = words.length > 0 ? [`${head} -f -a ${quoted(words.join(' '))}\n`] : [];
    return [
      ...listed,
      ...options.map(({ long, description, takesValue, values }) => {
        const choice = values.length > 0 ? ` -x -a ${quoted(values.join(' '))}` : takesValue ? ' -r' : '';
        return `${head} -l ${long.slice(2)}${choice} -d ${quoted(description)}\n`;
      }),
    ];
  });
  return [...start, ...behind].join('');
}

const SCRIPTS = { bash, zsh, fish };
