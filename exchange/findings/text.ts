/** Findings and verdicts for a person to read. */
import { type BlockAnalysis, type Finding, type Level, nextSteps, type Verdict } from '../../orders';
import { excerpt, harmless } from './excerpt';
import { inTextOrder, messageOf } from './finding-json';
import { addTotals, count, noTotals, type Totals } from './totals';
import { verdictInWords } from './verdict-line';
import { type FindingsWriter, type PartWriter, writerOf } from './writer';

/** How parts of the text are painted on a terminal. */
export type Ink = Readonly<Record<Level | Verdict | 'path' | 'code' | 'caret' | 'caution', (text: string) => string>>;

export const CAUTION =
  'Lentil is not a medical device. The bought text of the standard and the local code rule; ' +
  'licensed practice decides. `lentil standards` shows what each limit rests on.';

/** Indent of the source line under a finding. */
const INDENT = '    ';

/** Columns of the names of orders; longer ones push their verdict to the right. */
const MOST_WIDTH = 24;

interface TextNote {
  /** Lines of two columns with a tab between them: names and verdicts, and what a bench does next. */
  readonly verdicts: string;
  /** Of the first column. */
  readonly width: number;
  readonly totals: Totals;
}

/**
 * Writes findings with their lines, the verdicts of each file and the totals.
 * @param ink how parts are painted; plain text where each function gives back what it gets
 */
export function textWriter(ink: Ink): FindingsWriter<TextNote> {
  const totals = noTotals();
  let path = '';
  let verdicts: string[] = [];
  let width = 0;
  return writerOf({
    start: () => '',
    openFile: (opened) => {
      totals.files++;
      path = opened;
      verdicts = [];
      width = 0;
      return '';
    },
    part: (path) => partWriter(path, ink),
    add: (note) => {
      addTotals(totals, note.totals);
      if (note.verdicts !== '') verdicts.push(note.verdicts);
      width = Math.max(width, note.width);
      return '';
    },
    closing: function* () {
      if (verdicts.length === 0) return;
      yield `${ink.path(harmless(path))}\n`;
      for (const lines of verdicts) yield inColumns(lines, width);
      yield '\n';
    },
    unreadable: () => {
      totals.files++;
      return '';
    },
    end: () => `${totalsInWords(totals)}\n${ink.caution(CAUTION)}\n`,
  });
}

function partWriter(path: string, ink: Ink): PartWriter<TextNote> {
  const shownPath = harmless(path);
  const totals = noTotals();
  let verdicts = '';
  let width = 0;
  return {
    block: (analysis, firstLine) => {
      const { order, evaluation, findings } = analysis;
      count(totals, analysis);
      if (order && evaluation) {
        const name = harmless(order.name ?? '(no name)');
        const next = harmless(nextInBrief(nextSteps(order, evaluation, findings)));
        const words = painted(harmless(verdictInWords(order, evaluation)), evaluation.verdict, ink);
        verdicts += `${name}\t${words}\n${next ? `\t${next}\n` : ''}`;
        width = Math.min(MOST_WIDTH, Math.max(width, name.length));
      }
      let text = '';
      for (const finding of inTextOrder(findings))
        text += told(finding, analysis, `${shownPath}:${firstLine + finding.line + 1}`, ink);
      return text;
    },
    note: () => ({ verdicts, width, totals }),
  };
}

/** No text that is harmless holds a tab or a line end. */
function inColumns(lines: string, width: number): string {
  let text = '';
  for (const line of lines.split('\n').slice(0, -1)) {
    const [name = '', words] = line.split('\t');
    text += `  ${name.padEnd(width)}  ${words}\n`;
  }
  return text;
}

function told(finding: Finding, { block }: BlockAnalysis, where: string, ink: Ink): string {
  const { code, level, line, start, end } = finding;
  const head = `${ink.path(`${where}:${start + 1}`)} ${ink[level](level)} ${harmless(messageOf(finding))} ${ink.code(`[${code}]`)}\n`;
  if (level !== 'error' && level !== 'warning') return head;
  const shown = excerpt(block.lines[line]?.text ?? '', start, end);
  return `${head}${INDENT}${shown.line}\n${INDENT}${ink.caret(shown.carets)}\n`;
}

/** Steps that are shown in full under a verdict; the editor lists them all. */
const MOST_STEPS = 2;

function nextInBrief(steps: readonly string[]): string {
  if (steps.length === 0) return '';
  const more = steps.length > MOST_STEPS ? ` (${steps.length - MOST_STEPS} more)` : '';
  return `common practice: ${steps.slice(0, MOST_STEPS).join(' ')}${more}`;
}

/** Only the verdict itself is painted, not what it hangs on. */
const painted = (words: string, verdict: Verdict, ink: Ink): string =>
  ink[verdict](verdict) + words.slice(verdict.length);

function totalsInWords({ files, orders, errors, warnings, ...verdicts }: Totals): string {
  const found = (['accept', 'reject', 'incomplete', 'unread'] as const)
    .filter((verdict) => verdicts[verdict] > 0)
    .map((verdict) => `${verdicts[verdict]} ${verdict}`);
  const counted = `${amount(orders, 'order')} in ${amount(files, 'file')}`;
  const judged = found.length > 0 ? `: ${found.join(', ')}` : '';
  return `${counted}${judged}; ${amount(errors, 'error')}, ${amount(warnings, 'warning')}.`;
}

const amount = (number: number, word: string): string => `${number} ${word}${number === 1 ? '' : 's'}`;
