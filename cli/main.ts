/** The command. Each of its commands is loaded only when it is asked for, so that checking one file starts fast. */
import { Command, CommanderError, Option } from 'commander';
import { version } from '../package.json';
import { UnusableArgument } from './unusable-argument';

/** Exit statuses: nothing at error level, at least one error, unusable arguments or unreadable input. */
type Status = 0 | 1 | 2;

const program = new Command('lentil')
  .description('Checks spectacle-lens orders and focimeter readings written in the Lentil notation.')
  .version(version)
  .exitOverride()
  .helpCommand(false)
  .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, 'lentil: ')) })
  .addHelpText('after', '\nLentil is not a medical device. The bought text of a standard and the local code rule.');

/** Runs the chosen command and keeps its status for the end, so that what is still to be written gets out. */
const ends =
  <A extends unknown[]>(command: (...args: A) => Promise<Status>) =>
  async (...args: A): Promise<void> => {
    process.exitCode = await command(...args);
  };

program
  .command('check')
  .description('read files and folders, print findings and verdicts')
  .argument('<path...>', 'files, folders (every .lentil file in them), or - for standard input')
  .addOption(
    new Option('--format <format>', 'form of the output')
      .choices(['text', 'json', 'jsonl', 'sarif', 'junit'])
      .default('text'),
  )
  .option('--standard <name>', 'tolerance set for files that name none')
  .option('--strict', 'count warnings as errors')
  .addHelpText(
    'after',
    '\nStatus: 0 nothing at error level, 1 at least one error, 2 unusable arguments or unreadable input.',
  )
  .action(ends(async (paths: string[], options) => (await import('./check')).check(paths, options)));

program
  .command('format')
  .description('write the canonical layout: only blanks change')
  .argument('<path...>', 'files, folders (every .lentil file in them), or - for standard input')
  .option('--check', 'only tell which files would change')
  .addHelpText(
    'after',
    '\nStatus: 0 done, 1 with --check when a file would change, 2 unusable arguments or unreadable input.',
  )
  .action(ends(async (paths: string[], options) => (await import('./format')).format(paths, options)));

program
  .command('explain')
  .description('what a finding means, why it matters, the source of its rule and how to mend it')
  .argument('[code]', 'the code in brackets behind a finding; without one, all codes are listed')
  .action(ends(async (code: string | undefined) => (await import('./explain')).explain(code)));

program
  .command('standards')
  .description('the built-in tolerance sets')
  .argument('[name]', 'a set, to see its tables with the evidence for each limit')
  .action(ends(async (name: string | undefined) => (await import('./standards')).standards(name)));

program
  .command('serve')
  .description('the language server, for any editor')
  .option('--stdio', 'speak over standard input and output')
  // Editors add options of their own, such as the number of their process.
  .allowUnknownOption()
  .allowExcessArguments()
  .action(ends(async (options, { args }: Command) => (await import('./serve')).serve(args, options)));

try {
  await program.parseAsync();
} catch (error) {
  process.exitCode = statusOf(error);
}

function statusOf(error: unknown): Status {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  console.error(`lentil: ${error instanceof UnusableArgument ? error.message : describe(error)}`);
  return 2;
}

/** A fault of ours is shown with its place, so that it can be reported. */
const describe = (error: unknown): string => (error instanceof Error ? (error.stack ?? error.message) : String(error));
