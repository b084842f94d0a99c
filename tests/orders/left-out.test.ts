/**
 * Every line that the design calls for is called for: one of them is left out of an accepted order or of its last reading,
 * said again with another figure, given to the other eye, or cut by a `#`, and the verdict is no plain accept any more.
 */
import { expect, test } from 'vitest';
import { parseDocument, parseLine } from '../../grammar';
import { analyseDocument } from '../../orders';
import { type Accepted, fromFiles, fromPages, fromPairs } from './altered/accepted';
import { coversAll, partsOf } from './altered/called-for';
import { ALIKE, NOT_CALLED_FOR, OPEN_LINES, SAID_AGAIN } from './altered/lines-exempt';
import { plain } from './altered/survivors';

const ACCEPTED: readonly Accepted[] = [...fromFiles(), ...fromPairs(), ...fromPages().slice(0, 1)];

const headOf = (line: string): string => parseLine(line).node.head?.word ?? '';

interface Case {
  readonly of: Accepted;
  readonly at: number;
  readonly line: string;
  readonly head: string;
  readonly part: 'order' | 'reading' | 'earlier';
}

/** The lines of each order and of its readings, without the words that open them. */
const CASES: readonly Case[] = ACCEPTED.flatMap((of) => {
  const { order, reading } = partsOf(of.lines);
  return of.lines.flatMap((line, at): Case[] => {
    const head = headOf(line);
    if (at <= order || head === 'reading' || head === '' || head === 'end') return [];
    const first = of.lines.findIndex((one, number) => number > order && headOf(one) === 'reading');
    return [{ of, at, line, head, part: at < first ? 'order' : at > reading ? 'reading' : 'earlier' }];
  });
});

const isPlainWith = ({ of, at }: Case, ...lines: readonly string[]): boolean =>
  plain(analyseDocument(parseDocument([...of.lines.slice(0, at), ...lines, ...of.lines.slice(at + 1)].join('\n'))));

const named = ({ part, line, of }: Case): string => `${part}: ${line.trim()} (${of.name})`;

interface Exempt {
  readonly what: string;
  readonly covers: (one: Case) => boolean;
}

/** What survives although nothing says why; and which reasons nothing needs. */
function judge(survivors: readonly Case[], reasons: readonly Exempt[], open: readonly Exempt[]): readonly string[] {
  const used = new Set<string>();
  const holes = survivors.filter((one) => {
    const covering = reasons.filter(({ covers }) => covers(one));
    for (const { what } of covering) used.add(what);
    return covering.length === 0 && !open.some(({ covers }) => covers(one));
  });
  return [
    ...new Set(holes.map(named)),
    ...reasons.filter(({ what }) => !used.has(what)).map(({ what }) => `needless: ${what}`),
  ];
}

test('no line that is called for can be left out', () => {
  const survivors = CASES.filter((one) => isPlainWith(one));
  const redundant: Exempt = {
    what: 'another line measures the same',
    covers: ({ part, of, at }) => part === 'reading' && coversAll(of.lines.filter((_, number) => number !== at)),
  };
  expect(judge(survivors, [redundant, ...NOT_CALLED_FOR], OPEN_LINES)).toEqual([]);
});

test('what is measured is what the design calls for', () => {
  // The list that shows a line to be redundant holds for every one of them as it stands.
  for (const { lines, name } of ACCEPTED) expect(coversAll(lines), name).toBe(true);
});

const LAST_FIGURE = /^(.*\s)([+-]?)(\d[\d.]*)(\D*)$/;

test('nothing is said twice with two figures', () => {
  const survivors = CASES.filter((one) => {
    const [, front, sign, figure, rest] = LAST_FIGURE.exec(one.line) ?? [];
    if (figure === undefined || /["]/.test(one.line)) return false;
    const other = (Number(figure) + 3).toFixed(figure.split('.')[1]?.length ?? 0);
    return isPlainWith(one, one.line, `${front}${sign}${other}${rest}`);
  });
  expect(judge(survivors, SAID_AGAIN, OPEN_LINES)).toEqual([]);
});

test('no figure is swallowed by a remark', () => {
  const survivors = CASES.filter((one) => {
    const [, front, sign, figure, rest] = LAST_FIGURE.exec(one.line) ?? [];
    return figure !== undefined && !/["]/.test(one.line) && isPlainWith(one, `${front}# ${sign}${figure}${rest}`);
  });
  expect(judge(survivors, [], OPEN_LINES)).toEqual([]);
});

test('the eyes of a line of a reading are not exchanged', () => {
  const survivors = CASES.filter((one) => {
    const other = one.line.replaceAll(/\b[RL]\b/g, (eye) => (eye === 'R' ? 'L' : 'R'));
    return one.part === 'reading' && other !== one.line && isPlainWith(one, other);
  });
  expect(judge(survivors, ALIKE, OPEN_LINES)).toEqual([]);
});
