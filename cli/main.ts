/** The command. Each of its commands is loaded only when it is asked for, so that checking one file starts fast. */
import { Argument, Command, CommanderError, InvalidArgumentError, Option } from 'commander';
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

function percentage(text: string): number {
  const percent = Number(text);
  if (text.trim() !== '' && percent > 0 && percent <= 100) return percent;
  throw new InvalidArgumentError('It has to be a percentage above 0 and up to 100.');
}

function count(text: string): number {
  if (/^[1-9]\d?$/.test(text)) return Number(text);
  throw new InvalidArgumentError('It has to be a whole number from 1 to 99.');
}

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
  .addOption(
    new Option('--guard <rule>', 'what to do with a reading its instrument cannot tell from the limit').choices([
      'simple',
      'accept-when-sure',
      'reject-when-sure',
    ]),
  )
  .addOption(new Option('--near <percent>', 'tell what uses so much of its limit').argParser(percentage))
  .option('--brief', 'leave the figures worked out from each order out of JSON')
  .addOption(
    new Option('--threads <number>', 'judge with so many threads; else, all cores where the work is large').argParser(
      count,
    ),
  )
  .option('--cache <folder>', 'keep results in this folder, and judge only what changed since')
  .option('--config <file>', 'read these settings instead of the nearest lentil.config.json')
  .option('--no-config', 'read no settings')
  .addHelpText(
    'after',
    `
A path may hold * ? ** and {a,b}; quote it, or the shell takes it first. Folders that begin with a point and
node_modules are left out.

Settings come from the nearest lentil.config.json in the folder of each file or above it; options win over it:
  { "standard": "z80.1-2015", "strict": true, "guard": "accept-when-sure", "near": 90 }

Instruments and house tolerances are looked up in the file, then in the nearest bench.lentil above it.

An order number that another file of the same run has with other powers is a warning; standard input is not compared.

Dates are held against today: a reading of a day that is still to come is an error. LENTIL_TODAY=2026-11-24 in the
environment says another day, and LENTIL_TODAY=none holds them against no day.

With --cache, what was told of a file is kept until its text, its bench.lentil, its settings, the options or the version change. The
folder may be kept, shared or deleted at will. Without the option nothing is written anywhere.

Examples:
  lentil check orders                        everything in a folder
  lentil check "orders/2026-*/*.lentil"      some of it
  lentil check --format json - < QL-1042.lentil
  lentil check --format sarif orders > findings.sarif

Status: 0 nothing at error level, 1 at least one error, 2 unusable arguments or unreadable input.`,
  )
  .action(ends(async (paths: string[], options) => (await import('./check')).check(paths, options)));

program
  .command('format')
  .description('write the canonical layout: only blanks change')
  .argument('<path...>', 'files, folders (every .lentil file in them), or - for standard input')
  .option('--check', 'only tell which files would change')
  .addHelpText(
    'after',
    `
Files are written in place and named; standard input is laid out on standard output. Lines that cannot be read stay as
they are.

Examples:
  lentil format orders                  lay a folder out
  lentil format --check "**/*.lentil"   for a build: fail when something is not laid out

Status: 0 done, 1 with --check when a file would change, 2 unusable arguments or unreadable input.`,
  )
  .action(ends(async (paths: string[], options) => (await import('./format')).format(paths, options)));

program
  .command('export')
  .description('orders and readings in an open format')
  .argument('<path>', 'a .lentil file, or - for standard input')
  .addOption(
    new Option('--to <format>', 'format to write').choices(['fhir', 'dicom', 'json', 'csv']).makeOptionMandatory(),
  )
  .option('--order <name>', 'only the orders of this name')
  .option('--mapping <file>', 'columns of the table, one “R sphere = NAME” a line (csv)')
  .option('--files <folder>', 'write each measurement as a DICOM file into this folder (dicom)')
  .option('--strict', 'fail when something could not be carried over')
  .addHelpText(
    'after',
    `
fhir   a Bundle of HL7 FHIR R4: orders as VisionPrescription, readings as Observation
dicom  Lensometry Measurements in the DICOM JSON model; with --files as DICOM Part 10
json   every fact with its written digits (schema/orders.schema.json)
csv    a row for each lens ordered and read, or the columns of a mapping

What could not be carried over is told on standard error, line by line. Nothing is made up: where a format asks for what
nobody said, it stands as absent or unknown, or is left out and told. The same file gives the same bytes.

Examples:
  lentil export --to fhir orders/QL-1042.lentil > QL-1042.json
  lentil export --to csv --order QL-1042 --strict orders/week-48.lentil

Status: 0 done, 1 with --strict when something was lost, 2 unusable arguments or unreadable input.`,
  )
  .action(ends(async (path: string, options) => (await import('./export')).exportFile(path, options)));

program
  .command('import')
  .description('prescriptions and readings from an open format, printed as .lentil text')
  .argument('<path>', 'a file, or - for standard input')
  .addOption(new Option('--from <format>', 'format to read').choices(['fhir', 'dicom', 'csv']).makeOptionMandatory())
  .option('--mapping <file>', 'what the columns of the table mean, one “R sphere = NAME” a line (csv)')
  .option('--strict', 'fail when something could not be carried over')
  .addHelpText(
    'after',
    `
fhir   VisionPrescription of HL7 FHIR R4, alone or in a Bundle; contact lenses are refused
dicom  Lensometry Measurements in the DICOM JSON model, one data set or a list
csv    the table that export writes, or any other one with a mapping

What could not be carried over is told on standard error, and so is what was refused; the rest is printed. Check the
text that comes out: lentil import --from fhir FILE | lentil check -

Status: 0 done, 1 with --strict when something was lost, 2 unusable arguments, or something was refused.`,
  )
  .action(ends(async (path: string, options) => (await import('./import')).importFile(path, options)));

program
  .command('report')
  .description('the quality of many orders on one page')
  .argument('<path...>', 'files, folders (every .lentil file in them), or - for standard input')
  .option('--out <file>', 'write the report into this file instead of standard output')
  .addOption(new Option('--format <format>', 'form of the report').choices(['html', 'json']).default('html'))
  .option('--standard <name>', 'tolerance set for files that name none')
  .option('--date <day>', 'count ages to this day; without it, to the newest day of a reading')
  .option('--config <file>', 'read these settings instead of the nearest lentil.config.json')
  .option('--no-config', 'read no settings')
  .addHelpText(
    'after',
    `
The page needs no network and no other file, and prints well. The same files and date give the same bytes.

Examples:
  lentil report --out report.html orders             a year of work on one page
  lentil report --format json --date 2026-12-01 orders

Status: 0 done, 2 unusable arguments or unreadable input; the report is of everything that could be read.`,
  )
  .action(ends(async (paths: string[], options) => (await import('./report')).report(paths, options)));

program
  .command('explain')
  .description('what a finding means, why it matters, the source of its rule and how to mend it')
  .argument('[code]', 'the code in brackets behind a finding; without one, all codes are listed')
  .addHelpText('after', '\nExample:\n  lentil explain axis-outside')
  .action(ends(async (code: string | undefined) => (await import('./explain')).explain(code)));

program
  .command('standards')
  .description('the built-in tolerance sets')
  .argument('[name]', 'a set, to see its tables with the evidence for each limit')
  .addHelpText('after', '\nExample:\n  lentil standards z80.1-2015')
  .action(ends(async (name: string | undefined) => (await import('./standards')).standards(name)));

program
  .command('serve')
  .description('the language server, for any editor')
  .option('--stdio', 'speak over standard input and output')
  // Editors add options of their own, such as the number of their process.
  .allowUnknownOption()
  .allowExcessArguments()
  .addHelpText('after', '\nAn editor starts it as: lentil serve --stdio')
  .action(ends(async (options, { args }: Command) => (await import('./serve')).serve(args, options)));

program
  .command('complete')
  .description('print the script that completes this command in a shell')
  .addArgument(new Argument('<shell>', 'the shell that is to read it').choices(['bash', 'zsh', 'fish']))
  .addHelpText(
    'after',
    `
Examples:
  source <(lentil complete bash)          in ~/.bashrc; the same with zsh in ~/.zshrc
  lentil complete fish > ~/.config/fish/completions/lentil.fish`,
  )
  .action(ends(async (shell: 'bash' | 'zsh' | 'fish') => (await import('./complete')).complete(shell, program)));

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
function describe(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
