import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CodeActionTriggerKind } from 'vscode-languageserver';
import { analyse, type Order, type Power, parseLine } from '../../orders';
import { type AskingFor, actionsAt, results } from './support/actions';
import { BIFOCAL } from './support/sample';

const REWRITE: AskingFor = { only: ['refactor.rewrite'] };

/** What the one line of an order or a reading becomes, by the titles of the actions. */
function checkRewrites(line: string, expected: Readonly<Record<string, string>>, head = 'order A\n  '): void {
  const texts = Object.entries(results(`${head}${line}\n`, REWRITE));
  expect(
    Object.fromEntries(texts.map(([title, text]) => [title.replace(/:.*/, ''), text.slice(head.length, -1)])),
  ).toEqual(expected);
}

const PLUS = 'Write with a plus cylinder';
const MINUS = 'Write with a minus cylinder';
const CROSS = 'Write as two meridians';
const READING = 'order A\n  reading 2026-11-24\n    ';

describe('powers', () => {
  // Transpositions as printed: National Federation of Opticianry Schools, OPT11, answers 08c and 08b (tests/published/transposition.ts); others by hand.
  test.each([
    ['R -4.5|0 -0.75 x 022', { [PLUS]: 'R -5.25 +0.75 x 112', [CROSS]: 'R -4.50 @ 022 / -5.25 @ 112' }],
    ['R |-5.25 +0.75 x 112', { [MINUS]: 'R -4.50 -0.75 x 022', [CROSS]: 'R -5.25 @ 112 / -4.50 @ 022' }],
    ['R -4.50 @ 022 / -5.25 @| 112', { [PLUS]: 'R -5.25 +0.75 x 112', [MINUS]: 'R -4.50 -0.75 x 022' }],
    ['|R plano -1.00 x 90', { [PLUS]: 'R -1.00 +1.00 x 180', [CROSS]: 'R 0.00 @ 090 / -1.00 @ 180' }],
    ['R +1.00 -1.00 x 180|', { [PLUS]: 'R plano +1.00 x 090', [CROSS]: 'R +1.00 @ 180 / 0.00 @ 090' }],
    ['rx R -1.00 -0.50 x 90 add +2.00  L| -2.00', {}],
    ['R -4.50|', {}],
    ['R -4.50 -0.75|', {}],
    ['R |', {}],
  ])('%s', (line, expected) => checkRewrites(line, expected));

  test('the rest of the line is kept, and of two powers only the one under the cursor is written anew', () => {
    checkRewrites('R -1.00 -0.50 x 90 add +2.00  # by |phone', {
      [PLUS]: 'R -1.50 +0.50 x 180 add +2.00  # by phone',
      [CROSS]: 'R -1.00 @ 090 / -1.50 @ 180 add +2.00  # by phone',
    });
    const both = results('order A\n  R -1.00 -0.50 x 90  L -2.00 |-0.50 x 80\n', REWRITE);
    expect(both['Write with a plus cylinder: -2.50 +0.50 x 170']).toBe(
      'order A\n  R -1.00 -0.50 x 90  L -2.50 +0.50 x 170\n',
    );
  });

  test('figures of a reading that are cut from eighths are added up as eighths', () => {
    checkRewrites(
      'R -4.62 -0.6|2 x 024',
      { [PLUS]: 'R -5.25 +0.62 x 114', [CROSS]: 'R -4.62 @ 024 / -5.25 @ 114' },
      READING,
    );
    checkRewrites(
      'R -4.50 -0.6|2 x 024',
      { [PLUS]: 'R -5.12 +0.62 x 114', [CROSS]: 'R -4.50 @ 024 / -5.12 @ 114' },
      READING,
    );
  });

  test('drum positions are the record of what was read', () => {
    checkRewrites('R lines -4.25| / -5.25 x 168', {}, READING);
  });

  test('whatever the power, another form is the same lens', () => {
    const quarter = fc.integer({ min: -60, max: 60 }).map((value) => value / 4);
    const cylinder = fc.integer({ min: -24, max: 24 }).filter((value) => value !== 0);
    const axis = fc.integer({ min: 1, max: 180 });
    fc.assert(
      fc.property(quarter, cylinder, axis, (sphere, quarters, angle) => {
        const line = `R ${signed(sphere)} ${signed(quarters / 4)} x ${String(angle).padStart(3, '0')}`;
        const texts = Object.values(results(`order A\n  |${line}\n`, REWRITE));
        expect(texts).toHaveLength(2);
        const lenses = [`order A\n  ${line}\n`, ...texts].map((text) => inMinusForm(orderIn(text)));
        expect(lenses[1]).toEqual(lenses[0]);
        expect(lenses[2]).toEqual(lenses[0]);
      }),
      { seed: 1042, numRuns: 200 },
    );
  });

  const signed = (value: number): string => (value === 0 ? 'plano' : `${value > 0 ? '+' : ''}${value.toFixed(2)}`);
});

const orderIn = (text: string): Order => {
  const found = analyse(text).blocks.find(({ order }) => order)?.order;
  if (!found) throw new Error('there is no order in the text');
  return found;
};

const NO_POWER: Power = { sphere: Number.NaN, cylinder: Number.NaN, axis: Number.NaN };

/** By the rule of every textbook: add the cylinder, change its sign, turn the axis by 90 degrees. */
function inMinusForm({ lenses }: Order): Power {
  const { sphere, cylinder, axis } = lenses.R.written?.value ?? NO_POWER;
  if (cylinder <= 0) return { sphere, cylinder, axis };
  return { sphere: sphere + cylinder, cylinder: -cylinder, axis: axis > 90 ? axis - 90 : axis + 90 };
}

describe('prism', () => {
  // 2.00 in and 0.50 up: the square root of 4.25 is 2.06, and 0.5 / 2 is the tangent of 14 degrees. The right eye has
  // base in at 0 degrees, the left at 180 (ISO 8429; Durham Technical Community College, OPH 142, module 01).
  test.each([
    ['prism R 2.00 |BI 0.50 BU', 'prism R 2.06 base 014'],
    ['prism R 2.06 |base 014', 'prism R 2.00 BI 0.50 BU'],
    ['prism L 2.00 BI |0.50 BU', 'prism L 2.06 base 166'],
    ['prism R 1.00 BO  L 2.00 |BD', 'prism R 1.00 BO  L 2.00 base 270'],
    ['R -1.00 prism 3.00 BI| 4.00 BD  # x', 'R -1.00 prism 5.00 base 307  # x'],
    ['prism R 2.00 b|ase 360', 'prism R 2.00 BI'],
  ])('%s', (line, expected) =>
    expect(Object.values(results(`order A\n  ${line}\n`, REWRITE))).toEqual([`order A\n  ${expected}\n`]),
  );

  test.each(['prism R |0', 'prism total 4| BI', 'prism both 2| BI', 'prism 2| BI', 'prism R +2| BI', 'prism R 2|'])(
    'not offered: %s',
    (line) => expect(results(`order A\n  ${line}\n`, REWRITE)).toEqual({}),
  );
});

describe('PD', () => {
  test.each([
    ['pd 63|', 'pd R 31.5 L 31.5'],
    ['pd 63.5 near| 60  # box', 'pd R 31.75 L 31.75 near R 30 L 30  # box'],
    ['pd R 31.5| L 32', 'pd 63.5'],
    ['pd        R 31.5 L 32 near| R 30 L 30', 'pd        63.5 near 60'],
    ['near-pd 60|', 'near-pd R 30 L 30'],
  ])('%s', (line, expected) =>
    expect(Object.values(results(`order A\n  ${line}\n`, REWRITE))).toEqual([`order A\n  ${expected}\n`]),
  );

  test.each([
    'pd 63 R 31.5 L 31.5|',
    'pd R 31.5|',
    'pd 63 near R 30 L 30|',
    'pd near 60|',
    'pd near 60 63|',
    'pd 63,60|',
    'pd |',
  ])('not offered: %s', (line) => expect(results(`order A\n  ${line}\n`, REWRITE)).toEqual({}));

  test('halves are nobody’s guess: offered on request only, and never for what was measured', () => {
    const triggerKind = CodeActionTriggerKind.Automatic;
    expect(actionsAt('order A\n  pd 63|\n', { ...REWRITE, triggerKind })).toEqual([]);
    checkRewrites('pd 63|', {}, READING);
  });
});

describe('a line for each eye', () => {
  const titles = { apart: 'Write a line for each eye', together: 'Write both eyes on one line' };

  test.each([
    ['R -4.50 L| -4.25', 'R -4.50\n  L -4.25'],
    ['OD -4.50 -0.75 x 022  OS |-4.25  # shop', 'OD -4.50 -0.75 x 022\n  OS -4.25  # shop'],
    ['R -4.50 L| -4.25 add +2.00', 'R -4.50 add +2.00\n  L -4.25 add +2.00'],
    ['R| -4.50 add +2.25 L -4.25 add +2.00', 'R -4.50 add +2.25\n  L -4.25 add +2.00'],
  ])('%s', (line, expected) => {
    const text = `order A\n  ${line}\n  pd 63\n`;
    expect(results(text, REWRITE)[titles.apart]).toBe(`order A\n  ${expected}\n  pd 63\n`);
    const [before, after] = [text.replace('|', ''), results(text, REWRITE)[titles.apart] as string].map((one) => {
      const { R, L } = orderIn(one).lenses;
      return [R, L].map(({ written, add }) => [written?.value, add?.value]);
    });
    expect(after).toEqual(before);
  });

  test('two lines are joined, and come apart again as they were', () => {
    const text = 'order A\n  R -4.50 |-0.75 x 022 add +2.00\n  L   -4.25 add +2.00  # shop\n';
    const joined = results(text, REWRITE)[titles.together];
    expect(joined).toBe('order A\n  R -4.50 -0.75 x 022 add +2.00  L   -4.25 add +2.00  # shop\n');
    const apart = results((joined as string).replace('-4.50', '-4.|50'), REWRITE)[titles.apart];
    expect(apart).toBe(text.replace('|', ''));
  });

  test.each([
    'R -4.50|  # shop\n  L -4.25',
    'R -4.50|\n  L -4.25 add +2.00',
    'R -4.50|\n  R -4.25',
    'R -4.50|\n  again L -4.25',
    'R 4.50|\n  L -4.25',
    'R -4.50|\n  pd 63',
    'R -4.50|',
  ])('not joined: %j', (lines) => expect(results(`order A\n  ${lines}\n`, REWRITE)[titles.together]).toBeUndefined());
});

describe('a reading', () => {
  const only = ['refactor'];
  const title = 'Add a reading of what this order calls for';
  const unread = BIFOCAL.slice(0, BIFOCAL.indexOf('\n  reading'));

  test('is set below its order with everything to be read, and above the next one', () => {
    const marked = `${unread.replace('QL-1042', 'QL|-1042')}\n\norder B\n`;
    const text = results(marked, { only })[title] as string;
    expect(text).toMatch(/\n {2}supply {6}glazed\n\n {2}reading 2026-11-25 with FOC-A\n {4}zero/);
    expect(text).toMatch(/\n\norder B\n$/);
    const { readings } = orderIn(text);
    expect(readings).toMatchObject([{ date: '2026-11-25', with: 'FOC-A', measurements: [] }]);
  });

  test('has places to fill in where the editor can have them, and begins at a first column', () => {
    const marked = unread.replace('QL-1042', 'QL|-1042').trimEnd();
    for (const [text, before] of [
      [`${marked}\n`, '\n'],
      [marked, '  supply      glazed\n\n'],
    ] as const) {
      const [action] = actionsAt(text, { only: [...only], abilities: { snippetEdits: true } }).filter(
        (one) => one.title === title,
      );
      const [edit] = JSON.parse(JSON.stringify(action?.edit?.documentChanges))[0].edits;
      expect(edit.range.start.character).toBe(0);
      expect(edit.snippet.value.slice(0, before.length + 11)).toBe(`${before}  reading $`);
      expect(edit.snippet.value).toMatch(/\n {4}R {8}lines \$\d+ \/ \$\d+ x \$\d+ {2}#/);
    }
  });

  test('is not offered where an order calls for nothing, and outside of orders', () => {
    expect(results('# no|thing\n', { only })).toEqual({});
    expect(results('instrument F|OC\n  kind manual focimeter\n', { only })).toEqual({});
  });
});

describe('a confirmation', () => {
  const text =
    'order A\n  R -4.50 -0.75 x 5|  # "told"\n  L -4.50\n  pd 63\n  design single-vision\n\n  reading 2026-11-24\n    R -4.50 -0.75 x 005\n';

  test('quotes the line of the finding, below the order’s own lines, and silences it once it is filled in', () => {
    const [action] = actionsAt(text, { only: ['quickfix'], abilities: { snippetEdits: true } }).filter(({ title }) =>
      title.startsWith('Confirm axis-short'),
    );
    expect(JSON.stringify(action?.edit)).toContain(
      'confirmed   axis-short \\"R -4.50 -0.75 x 5 # \\"\\"told\\"\\"\\" \\"$1\\" by $2',
    );
    const done = results(text, { only: ['quickfix'] })['Confirm axis-short for this order'] as string;
    expect(done).toMatch(/design single-vision\n {2}confirmed {3}axis-short ".*" "" by\n\n {2}reading/);
    const codes = (one: string): string[] =>
      analyse(one).blocks.flatMap(({ findings }) => findings.map(({ code }) => code));
    expect(codes(text.replace('|', ''))).toContain('axis-short');
    const filled = done.replace('"" by', '"clinic says 5" by KO');
    expect(codes(filled)).not.toContain('axis-short');
    expect(codes(filled)).not.toContain('value-missing');
    // What is left empty is asked for.
    expect(codes(done)).toContain('value-missing');
  });

  test.each([
    ['a missing sign', 'order A\n  R 4|.50\n'],
    [
      'a value outside its limit',
      'standard z80.1-2015\norder A\n  R -4.50\n  L -4.50\n  reading 2026-11-24\n    R -5|.50\n',
    ],
    ['a matter of style', 'order A\n  R −4|.50\n'],
    ['what cannot be read', 'order A\n  R -4.50 fo|o\n'],
  ])('is not offered for %s', (_, marked) => {
    const titles = actionsAt(marked, { only: ['quickfix'] }).map(({ title }) => title);
    expect(titles.filter((title) => title.startsWith('Confirm'))).toEqual([]);
  });
});

describe('all matters of style at once', () => {
  const only = ['source.fixAll.lentil'];
  const mended = (text: string): string => Object.values(results(text, { only }))[0] ?? text;

  test('only safe fixes of hints are made, in the whole document', () => {
    const text = 'order A\n  R −4,50 -0.75 x 022\n  L 4.50\n  pd 63\norder B\n  R +.50\n  L -4.50 prism 1 1/2 BI\n';
    const after = mended(text);
    expect(after).toContain('  L 4.50\n');
    expect(after).toContain('  R +0.50\n');
    expect(after).toContain('prism 1 1/2 BI\n');
    expect(mended(mended(after))).toBe(mended(after));
  });

  test('it is made for an editor that asks for just that', () => {
    const text = 'order A\n  R −4.50|\n';
    const title = 'Mend everything that is only a matter of style';
    expect(Object.keys(results(text))).not.toContain(title);
    for (const kind of ['source', 'source.fixAll', 'source.fixAll.lentil'])
      expect(results(text, { only: [kind] })).toEqual({ [title]: 'order A\n  R -4.50\n' });
    expect(results(text, { only: ['source.organizeImports'] })).toEqual({});
    expect(results('order A\n  R -4.50|\n', { only })).toEqual({});
  });

  test('whatever is typed, the figures of every line stay what they are', () => {
    const word = fc.constantFrom(
      'R',
      'L',
      'add',
      'pd',
      'prism',
      'x',
      'pl',
      'sph',
      'cyl',
      'BI',
      'near',
      '/',
      '(',
      ')',
      ',',
      '-',
      '−',
    );
    const figure = fc.constantFrom(
      '-4,50',
      '−4.50',
      '.50',
      '+.5',
      '2.',
      '1/2',
      '022',
      '63',
      '-0.75',
      '–1.25',
      '+2.00',
      '27',
      '²',
    );
    const line = fc.array(fc.oneof(word, figure), { minLength: 1, maxLength: 8 }).map((parts) => parts.join(' '));
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 4 }), (lines) => {
        const before = ['order A', ...lines.map((one) => `  ${one}`)];
        const after = mended(`${before.join('\n')}\n`)
          .trimEnd()
          .split('\n');
        expect(after).toHaveLength(before.length);
        expect(after.map(meaning)).toEqual(before.map(meaning));
      }),
      { seed: 1042, numRuns: 1_000 },
    );
  });

  /** The values of a line without their places and spellings. */
  const meaning = (line: string): string =>
    JSON.stringify(parseLine(line).node, (key, value) =>
      ['start', 'end', 'decimals', 'text'].includes(key) ? undefined : value,
    );
});
