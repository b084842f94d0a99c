/**
 * The reference of the notation holds: each example is read as the page says, each word is on it, and what can be made is
 * made. A stale part fails here; `UPDATE_PAGES=1` in the environment writes it anew.
 */
import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type BlockKind, formatText, lineWord, parseLine, VOCABULARY } from '../../grammar';
import { analyse, type Eye, type Finding, parseDocument, ruleOf, type Verdict } from '../../orders';
import { materials } from '../../tables';
import { said, UNREADABLE } from '../support/lines';
import { ebnf } from './support/ebnf';
import { examples, made, page, remade, rows, write, written } from './support/reference';

const PARTS: ReadonlyMap<string, string> = new Map([
  [
    'spellings',
    table(
      ['word', 'also'],
      VOCABULARY.filter(({ also }) => also.length > 0).map(({ word, also }) => [code(word), also.map(code).join(', ')]),
    ),
  ],
  [
    'materials',
    table(
      ['material', 'index', 'also'],
      materials.map(({ id, indexD, spellings }) => [code(id), indexD.value.toFixed(3), spellings.map(code).join(', ')]),
    ),
  ],
  ['ebnf', `\n\`\`\`ebnf\n${ebnf()}\n\`\`\`\n\n`],
]);

function code(word: string): string {
  return `\`${word}\``;
}

function table(head: readonly string[], body: readonly (readonly string[])[]): string {
  const lines = [head, head.map(() => '---'), ...body].map((cells) => `| ${cells.join(' | ')} |`);
  return `\n${lines.join('\n')}\n\n`;
}

if (process.env.UPDATE_PAGES) write(remade(page(), PARTS, (text) => formatText(parseDocument(text))));

const PAGE = page();

describe('what is made', () => {
  test.each([...PARTS])('%s is as the program has it', (name, text) => {
    expect(made(PAGE).get(name)).toBe(text);
  });

  test('every name of the grammar is there once, and every one but the file is used', () => {
    const productions = ebnf()
      .replaceAll(/\/\*.*?\*\//g, '')
      .split(/\n(?=\S)/)
      .filter((one) => one.includes('::='))
      .map((one) => one.split(' ::='));
    const names = productions.map(([name = '']) => name.trim());
    expect(new Set(names).size).toBe(names.length);
    const used = productions.flatMap(
      ([, body = '']) => body.replaceAll(/'[^']*'|\/\S+\/|#x\w+/g, '').match(/[\w-]+/g) ?? [],
    );
    expect([...new Set(used)].sort()).toEqual(names.filter((name) => name !== 'file').sort());
  });
});

describe('the examples', () => {
  const all = examples(PAGE);
  const shared = all.filter(({ marks }) => marks.includes('bench')).map(({ text }) => parseDocument(text));
  const named = all.map(
    (one) => [one.text.split('\n').find((line) => /^(?:order|tolerance|instrument)/.test(line)), one] as const,
  );

  test.each(named)('%s raises what it is meant to, stands as the formatter has it', (_, { text, marks }) => {
    const { blocks } = analyse(text, { shared: marks.includes('with-bench') ? shared : [] });
    const raised = blocks.flatMap(({ findings }) => findings.map(({ level, code: one }) => `${level}:${one}`));
    expect([...new Set(raised)]).toEqual(marks.filter((mark) => mark.includes(':')));
    expect(formatText(parseDocument(text))).toBe(text);
  });

  test('the first one is accepted as the page says', () => {
    const [order] = analyse(all[0]?.text ?? '').blocks.filter(({ evaluation }) => evaluation);
    expect(order?.evaluation).toMatchObject({ verdict: 'accept', reservations: [] });
  });
});

const BLOCKS = {
  order: 'in an order',
  reading: 'in a reading',
  instrument: 'in an instrument',
  tolerance: 'in a tolerance',
};

describe.each(Object.entries(BLOCKS) as [keyof typeof BLOCKS, string][])('%s: the lines', (block, heading) => {
  const lines = rows(PAGE, heading).flatMap(([first]) => first?.code ?? []);

  test.each(lines)('%s', (line) => {
    expect(parseLine(line, block).problems).toEqual([]);
    expect(blocksOf(line)).toContain(block);
    const own = toldOf(line, block).filter(({ code: one }) => ruleOf(one)?.family === 'writing');
    // A confirmation quotes another line of its order, which does not stand here.
    expect(own.filter(({ code: one }) => one !== 'confirmation-idle')).toEqual([]);
  });

  test('every line that may stand there has a row', () => {
    const known = VOCABULARY.filter(
      ({ role, blocks, word }) => role === 'line' && blocks.includes(block) && word !== 'end',
    );
    const shown = new Set(lines.map((line) => lineWord(line.split(' ')[0] ?? '')?.word));
    expect(known.map(({ word }) => word).filter((word) => !shown.has(word))).toEqual([]);
  });
});

/** The blocks in which the first word of a line may stand. */
function blocksOf(line: string): readonly BlockKind[] {
  const [first = '', second = ''] = line.split(' ');
  return lineWord(first === 'again' ? second : first)?.blocks ?? [];
}

const FRAMES: Readonly<Record<keyof typeof BLOCKS, (line: string) => string>> = {
  order: (line) => `order T-1\n  ${line}`,
  reading: (line) => `order T-1\n  reading 2026-11-24\n    ${line}`,
  instrument: (line) => `instrument FOC-A\n  ${line}`,
  tolerance: (line) => `tolerance house from z80.1-2015\n  ${line}`,
};

/** What is told on a line that stands alone in its block. */
function toldOf(line: string, block: keyof typeof BLOCKS): readonly Finding[] {
  const text = FRAMES[block](line);
  const last = text.split('\n').length - 1;
  return analyse(text).blocks.flatMap(({ findings }) => findings.filter((one) => one.line === last));
}

describe('what is typed, taken and told', () => {
  const all = rows(PAGE, 'typed').map(([typed, taken, told]) => [typed?.words, { typed, taken, told }] as const);

  test('there are many rows', () => expect(all.length).toBeGreaterThan(70));

  test.each(all)('%s', (_, { typed, taken, told }) => {
    const line = typed?.code[0] ?? '';
    const block = typed?.words.includes('(in a reading)') ? 'reading' : 'order';
    if (taken?.words === 'nothing') expect(takesNothing(line)).toBe(true);
    else expect(said(line)).toEqual(said(taken?.code[0] ?? ''));
    // What a whole order lacks is another matter than how its line is written.
    const raised = toldOf(line, block).filter(
      ({ code: one }) => ruleOf(one)?.family === 'writing' || told?.code.includes(one),
    );
    expect(raised.map(({ level, code: one }) => `${level} \`${one}\``).join(', ')).toBe(told?.words);
  });
});

/** A figure that stays unknown, a line that is none, or a power or a PD of which too little is known. */
function takesNothing(line: string): boolean {
  const text = JSON.stringify(said(line));
  if (text.includes(`"${UNREADABLE}"`) || text === '{"kind":"unknown"}') return true;
  const order = analyse(FRAMES.order(line)).blocks[0]?.order;
  if (text.startsWith('{"kind":"power"')) return order?.lenses.R.written === null;
  return text.startsWith('{"kind":"pd"') && order?.pd.binocular === null && order.pd.R === null;
}

describe('prism', () => {
  const prismOf = (line: string, eye: Eye) => analyse(FRAMES.order(line)).blocks[0]?.order?.lenses[eye].prism?.value;
  const directions = rows(PAGE, 'base word').flatMap(([words, right, left]) =>
    (words?.code ?? []).flatMap((word) => [['R', word, right?.code[0]] as const, ['L', word, left?.code[0]] as const]),
  );

  test.each(directions)('%s %s is %s', (eye, word, angle) => {
    const [inWords, byAngle] = [word, angle].map((base) => prismOf(`prism ${eye} 1.00 ${base}`, eye));
    expect(inWords?.right).toBeCloseTo(byAngle?.right ?? Number.NaN, 9);
    expect(inWords?.up).toBeCloseTo(byAngle?.up ?? Number.NaN, 9);
  });

  test('every base word is in the table', () => {
    const words = VOCABULARY.filter(({ role }) => role === 'base').flatMap(({ word, also }) => [word, ...also]);
    expect(directions.map(([, word]) => word).sort()).toEqual([...words, ...words].sort());
  });

  // Durham Technical Community College, OPH 142, prism notation: 1.5 up or down with 2 in is 2.5 at 37, and at 217.
  test.each(rows(PAGE, 'in an order', 'is the same as').map((row) => row.map((cell) => cell.code[0] ?? '')))(
    '%s is %s',
    (angle = '', words = '') => {
      const eye = angle.includes(' R ') ? 'R' : 'L';
      const [one, other] = [prismOf(angle, eye), prismOf(words, eye)];
      expect(one?.right).toBeCloseTo(other?.right ?? Number.NaN, 2);
      expect(one?.up).toBeCloseTo(other?.up ?? Number.NaN, 2);
    },
  );
});

describe('every word of the notation is on the page', () => {
  const lines = written(PAGE).map((line) => line.toLowerCase().split(/[\s|[\]]+/));
  const onALine = (...words: readonly string[]): boolean =>
    lines.some((line) => words.every((word) => line.includes(word.toLowerCase())));

  test.each(VOCABULARY.filter(({ role }) => role !== 'choice' && role !== 'key').map(({ role, word }) => [role, word]))(
    '%s %s',
    (_, word = '') => expect(onALine(word)).toBe(true),
  );

  const chosen = VOCABULARY.flatMap(({ word, of }) => of.map((line) => [line, word] as const));

  test.each(chosen)('%s … %s', (line, word) => expect(onALine(line, word)).toBe(true));
});

test('the verdicts are those that there are', () => {
  const verdicts: Readonly<Record<Verdict, true>> = { reject: true, incomplete: true, accept: true, unread: true };
  expect(rows(PAGE, 'verdict').map(([name]) => name?.code[0])).toEqual(Object.keys(verdicts));
});

test('its links lead somewhere', () => {
  const links = [...PAGE.matchAll(/\]\(([^)]+)\)/g)].map(([, target = '']) => target);
  const headings = [...PAGE.matchAll(/^#+ (.+)$/gm)].map(([, title = '']) => anchorOf(title));
  for (const link of links)
    if (link.startsWith('#')) expect(headings).toContain(link.slice(1));
    else expect(existsSync(new URL(link, new URL('../../grammar/', import.meta.url))), link).toBe(true);
});

const anchorOf = (title: string): string =>
  title
    .toLowerCase()
    .replaceAll(/[^\p{L}\d -]/gu, '')
    .replaceAll(' ', '-');
