/**
 * Orders that are plain accepts, each with the lines of the file that its verdict rests on: those of the examples and of
 * the samples, everyday pairs, and what the right lines of the rule pages make of the job of these tests.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { type Block, parseDocument } from '../../../grammar';
import { analyse, RULES } from '../../../orders';
import { JOB, type Job, put, written } from '../../support/job';
import { PAIRS } from './pairs';

/** One order with its file, as lines. */
export interface Accepted {
  readonly name: string;
  readonly lines: readonly string[];
}

/** Accepted, and nothing is held back. */
export function isPlain(text: string): boolean {
  const judged = analyse(text).blocks.flatMap(({ evaluation }) => evaluation ?? []);
  return (
    judged.length > 0 && judged.every(({ verdict, reservations }) => verdict === 'accept' && reservations.length === 0)
  );
}

const textOf = ({ lines }: Block): string => lines.map(({ text }) => text).join('\n');

/** Each order of a text by itself, below everything else of the text and of its bench. */
function ordersOf(name: string, text: string, bench: string): Accepted[] {
  const { blocks } = parseDocument(text);
  return blocks
    .filter(({ kind }) => kind === 'order')
    .map((order) => {
      const named = new Set([...textOf(order).matchAll(/\bwith\s+(\S+)/g)].map(([, instrument]) => instrument));
      const used = parseDocument(bench).blocks.filter((one) =>
        [...named].some((it) => textOf(one).includes(` ${it}\n`)),
      );
      const rest = blocks.filter(({ kind }) => kind !== 'order');
      const with_ = [...used, ...rest].map(textOf).join('\n');
      return {
        name: `${name} ${order.lines[0]?.text ?? ''}`,
        lines: [...with_.split('\n'), ...textOf(order).split('\n')],
      };
    });
}

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.lentil'))
    .sort()
    .map((path) => `${folder}/${path}`);

/** Nothing is asked anywhere in the text either: a line that stands outside every order is told there, and is no part of one. */
const kept = ({ lines }: Accepted): boolean => isPlain(lines.join('\n')) && !asks(lines.join('\n'));
const asks = (text: string): boolean =>
  analyse(text).blocks.some(({ findings }) => findings.some(({ level }) => level === 'error' || level === 'warning'));
const said = ({ lines, ...rest }: Accepted): Accepted => ({
  ...rest,
  lines: lines.filter((line) => !/^\s*(#|$)/.test(line)),
});

/** Those of files on disk. */
export function fromFiles(): readonly Accepted[] {
  const bench = readFileSync('examples/bench.lentil', 'utf8');
  return [...filesIn('examples'), ...filesIn('tests/samples')]
    .flatMap((path) => ordersOf(path, readFileSync(path, 'utf8'), bench))
    .map(said)
    .filter(kept);
}

/** Everyday pairs. */
export const fromPairs = (): readonly Accepted[] =>
  PAIRS.map(([name, text]) => said({ name, lines: text.split('\n') }));

/** Blocks stand above an order; where another line belongs shows when it is put there. */
const partsOf = (right: string): readonly (keyof Job)[] =>
  /^\s*(instrument|tolerance|defaults|standard)\b/.test(right) ? ['head'] : ['head', 'order', 'reading'];

/** What the right lines of a rule page make of the job, in each part of it where they leave it a plain accept. */
export function fromPages(): readonly Accepted[] {
  const plain = written(JOB).split('\n');
  const all = RULES.flatMap(({ code, page }) =>
    partsOf(page.example.right).map((part) => ({
      name: `${code}, right in the ${part}`,
      lines: written({ ...JOB, [part]: page.example.right.split('\n').reduce(put, JOB[part]) }).split('\n'),
    })),
  );
  const seen = new Set<string>([plain.join('\n')]);
  return [
    { name: 'the job', lines: plain },
    ...all.map(said).filter(({ lines }) => !seen.has(lines.join('\n')) && seen.add(lines.join('\n'))),
  ].filter(kept);
}
