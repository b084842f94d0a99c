/** Findings and verdicts for a person to read. */
import { type BlockAnalysis, type Finding, type Level, nextSteps, type Verdict } from '../../orders';
import { excerpt, harmless } from './excerpt';
import { inTextOrder, messageOf } from './finding-json';
import { type Counted, count, counted, noTotals, type Totals } from './totals';
import { verdictInWords } from './verdict-line';
import { type FindingsWriter, writerOf } from './writer';

/** How parts of the text are painted on a terminal. */
export type Ink = Readonly<Record<Level | Verdict | 'path' | 'code' | 'caret' | 'caution', (text: string) => string>>;

export const CAUTION =
  'Lentil is not a medical device. The bought text of the standard and the local code rule; ' +
  'licensed practice decides. `lentil standards` shows what each limit rests on.';

/** Indent of the source line under a finding. */
const INDENT = '    ';

/** The line of an order under its file, and what a bench does next. */
interface VerdictLine {
  readonly name: string;
  readonly words: string;
  readonly verdict: Verdict;
  readonly next: string;
}

interface TextPiece {
  readonly told: string;
  readonly line: VerdictLine | null;
  readonly counted: Counted;
}

/**
 * Writes findings with their lines, the verdicts of each file and the totals.
 * @param ink how parts are painted; plain text where each function gives back what it gets
 */
export function textWriter(ink: Ink): FindingsWriter<TextPiece> {
  const totals = noTotals();
  let path = '';
  let verdicts: VerdictLine[] = [];
  return writerOf({
    start: () => '',
    openFile: (opened) => {
      totals.files++;
      path = opened;
      verdicts = [];
      return '';
    },
    piece: (analysis, path, firstLine) => ({
      told: inTextOrder(analysis.findings)
        .map((finding) => told(finding, analysis, `${harmless(path)}:${firstLine + finding.line + 1}`, ink))
        .join(''),
      line: verdictLine(analysis),
      counted: counted(analysis),
    }),
    add: ({ told, line, counted }) => {
      count(totals, counted);
      if (line) verdicts.push(line);
      return told;
    },
    closeFile: () => {
      if (verdicts.length === 0) return '';
      const width = verdicts.reduce((most, { name }) => Math.min(24, Math.max(most, name.length)), 0);
      const lines = verdicts.map(
        ({ name, words, verdict, next }) =>
          `  ${name.padEnd(width)}  ${painted(words, verdict, ink)}\n${next ? `  ${' '.repeat(width)}  ${next}\n` : ''}`,
      );
      return `${ink.path(harmless(path))}\n${lines.join('')}\n`;
    },
    unreadable: () => {
      totals.files++;
      return '';
    },
    end: () => `${totalsInWords(totals)}\n${ink.caution(CAUTION)}\n`,
  });
}

function verdictLine({ order, evaluation, findings }: BlockAnalysis): VerdictLine | null {
  if (!order || !evaluation) return null;
  const name = harmless(order.name ?? '(no name)');
  const next = harmless(nextInBrief(nextSteps(order, evaluation, findings)));
  return { name, words: harmless(verdictInWords(order, evaluation)), verdict: evaluation.verdict, next };
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
