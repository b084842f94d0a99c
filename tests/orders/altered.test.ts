/**
 * Nothing that was not understood is accepted: one letter or one figure of an accepted order is altered, and the verdict
 * must be no plain accept any more. Of each kind of alteration one is tried, chosen by the printed seed; with
 * LENTIL_ALTER=all every one is.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, test } from 'vitest';
import { parseDocument } from '../../grammar';
import { analyseDocument } from '../../orders';
import { alarms } from '../support/findings';
import { type Accepted, fromFiles, fromPages, fromPairs, isPlain } from './altered/accepted';
import { EXEMPTIONS, OPEN, WITHOUT_TOLERANCE } from './altered/exempt';
import { figuresIn, kindOf, toleranceOf } from './altered/figures';
import { type Altered, alterationsOf, survives } from './altered/survivors';

const ALL = process.env.LENTIL_ALTER === 'all';
const SEED = Number(process.env.LENTIL_SEED ?? 20_261_201);

const FILES = fromFiles();
const PAIRS = fromPairs();
const PAGES = fromPages();
const ACCEPTED: readonly Accepted[] = [...FILES, ...PAIRS, ...PAGES];

/** Every alteration; a line of the file or of the job of the rule pages that came before is not altered once more. */
function everyAlteration(): Altered[] {
  const seen = new Set<string>();
  return ACCEPTED.flatMap((of, at) =>
    alterationsOf(of, (line, block) => {
      const isShared = block !== 'order' || at >= FILES.length + PAIRS.length;
      const isOld = isShared && seen.has(line);
      if (isShared) seen.add(line);
      return !isOld;
    }),
  );
}

/** One of each kind: the same word of the same line altered in the same way. */
function oneOfEach(all: readonly Altered[]): Altered[] {
  const random = xoroshiro128plus(SEED);
  const kinds = new Map<string, Altered[]>();
  for (const one of all) {
    const kind = [one.block, one.head, one.how === 'moved' ? `${one.how} ${one.start}` : one.part, one.how].join('|');
    kinds.set(kind, [...(kinds.get(kind) ?? []), one]);
  }
  return [...kinds.values()].map((alike) => alike[uniformInt(random, 0, alike.length - 1)] as Altered);
}

const grouped = (survivors: readonly Altered[]): string => {
  const groups = new Map<string, string[]>();
  for (const { before, after, part, how, of } of survivors) {
    const group = `${before.trim()} — ${part}`;
    groups.set(group, [...(groups.get(group) ?? []), `  ${how}: ${after.trim()}  (${of.name})`]);
  }
  return [...groups].map(([group, list]) => [group, ...list.slice(0, 5)].join('\n')).join('\n');
};

test('every one of them is a plain accept, and the everyday pairs are silent', () => {
  for (const { name, lines } of ACCEPTED) expect(isPlain(lines.join('\n')), name).toBe(true);
  for (const { name, lines } of PAIRS)
    expect(
      alarms(lines.join('\n')).filter((told) => !told.startsWith('info')),
      name,
    ).toEqual([]);
  expect([FILES.length > 9, PAIRS.length > 15, PAGES.length > 60]).toEqual([true, true, true]);
});

test('one letter dropped, doubled or exchanged, or one figure moved by twice its tolerance, is no plain accept', () => {
  const every = everyAlteration();
  const tried = ALL ? every : oneOfEach(every);
  const survivors = tried.filter(survives);
  const used = new Set<string>();
  const holes = survivors.filter((one) => {
    const covering = EXEMPTIONS.filter(({ covers }) => covers(one));
    for (const { what } of covering) used.add(what);
    return covering.length === 0 && !OPEN.some(({ covers }) => covers(one));
  });
  console.log(`${tried.length} of ${every.length} alterations, seed ${SEED}`);
  expect(grouped(holes)).toBe('');
  // Each of them is needed: without it something would stand among the holes.
  const needless = EXEMPTIONS.filter(
    ({ what, covers }) => !used.has(what) && !every.some((one) => covers(one) && survives(one)),
  );
  expect(needless.map(({ what }) => what)).toEqual([]);
}, 600_000);

test('every figure has a tolerance or stands among those that have none', () => {
  const used = new Set<string>();
  const unknown = new Set<string>();
  for (const { lines } of ACCEPTED) {
    const document = parseDocument(lines.join('\n'));
    const judged = analyseDocument(document).blocks.find(({ evaluation }) => evaluation)?.evaluation;
    for (const block of document.blocks)
      for (const line of block.lines) {
        const { node } = line.parsed(block.kind);
        for (const { path } of figuresIn(node)) {
          const kind = kindOf(node);
          if (judged && toleranceOf(kind, path, judged) !== null) continue;
          const known = WITHOUT_TOLERANCE.find(([one, end]) => one.test(kind) && end.test(path));
          if (known) used.add(`${known[0]} ${known[1]}`);
          else unknown.add(`${kind} ${path}`);
        }
      }
  }
  expect([...unknown]).toEqual([]);
  expect(WITHOUT_TOLERANCE.map(([line, end]) => `${line} ${end}`).filter((one) => !used.has(one))).toEqual([]);
});
