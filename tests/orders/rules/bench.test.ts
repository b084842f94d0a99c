/** Readings that may not mean what they say, and lines that stand in no block. */
import { describe, expect, test } from 'vitest';
import { analyse, analyseDocument } from '../../../orders';
import { findingsWith, fixesOf, mended, messages, told } from '../../support/findings';
import { JOB, put, read, without, written } from '../../support/job';

interface Row {
  readonly text: string;
  readonly told: readonly string[];
}

const row = (text: string, ...expected: readonly string[]): Row => ({ text, told: expected });

const unread = (...words: readonly string[]): string => written({ ...JOB, reading: without(JOB.reading, ...words) });
const header = (line: string, ...more: readonly string[]): string =>
  written({ ...JOB, reading: [line, ...JOB.reading.slice(1), ...more] });
const head = (...lines: readonly string[]): string => written({ ...JOB, head: lines });
const noStandard = written({ ...JOB, head: JOB.head.slice(1) });

const ROWS: Readonly<Record<string, readonly Row[]>> = {
  'instrument-overdue': [
    row(header('reading 2027-05-15 with FOC-A'), 'warning [FOC-A]'),
    row(header('reading 2027-05-14 with FOC-A')),
    row(header('reading with FOC-A')),
    // Told once for a reading, whichever line names it.
    row(
      header('reading 2027-06-01', 'again R -4.50 -0.75 x 022 with FOC-A', 'again L -4.25 -1.00 x 168 with FOC-A'),
      'warning [FOC-A]',
    ),
  ],
  'instrument-unknown': [
    row(header('reading 2026-11-24 with FOC-B'), 'warning [FOC-B]'),
    row(header('reading 2026-11-24 with foc-a'), 'warning [foc-a]'),
    row(read('R -4.50 -0.75 x 022 with CLOCK-1', 'L -4.25 -1.00 x 168 with CLOCK-1'), 'warning [CLOCK-1]'),
    row(header('reading 2026-11-24')),
  ],
  'measured-word': [
    row(read('pd ok'), 'error [ok]'),
    row(read('R ✓'), 'error [✓]'),
    row(read('height same'), 'error [same]'),
    row(read('thickness R centre ok'), 'error [ok]'),
    row(read('add R ok L +2.00'), 'error [ok]'),
    row(read('cosmetic good'), 'error [good]'),
    row(read('note ok')),
    row(read('impact batch "ok"')),
    // In an order it is text that has no place, not an answer.
    row(written({ ...JOB, order: put(JOB.order, 'pd ok') })),
  ],
  'near-the-limit': [
    row(read('R -4.50 -0.62 x 022'), 'warning R [-4.50 -0.62 x 022]'),
    row(read('R -4.62 -0.75 x 022'), 'warning R [-4.62 -0.75 x 022]'),
    // Equal errors on either side are alike.
    row(read('add R +1.87 L +2.12'), 'warning R [R +1.87]', 'warning L [L +2.12]'),
    row(read('R -4.50 -0.62 x 022 with FOC-Z')),
  ],
  'prism-base-missing': [
    row(read('prism R 0.50 L 0'), 'error [R 0.50]'),
    row(read('prism R 0 L 0')),
    row(read('R -4.50 -0.75 x 022 prism 1'), 'error [1]'),
  ],
  'prism-relative': [row(read('prism R +0.50 BI L 0'), 'error [R +0.50 BI]'), row(read('prism R 0.50 BI L 0'))],
  'prism-angle-for-both': [row(read('prism both 1 base 180'), 'error [both 1 base 180]'), row(read('prism both 1 BI'))],
  'negative-add': [
    // Near is always the more plus: exam-study page on the add.
    row(read('add R -2.50 -> -4.50 L +2.00'), 'error R [R -2.50 -> -4.50]'),
    row(read('add R -2.00 L +2.00'), 'error R [R -2.00]'),
    row(read('add R -4.50 -> -2.50 L +2.00')),
    row(`${read('add R -2.00 L +2.00')}\n  reading 2026-11-25\n    add R +2.00`, 'info R [R -2.00]'),
  ],
  'not-judged': [
    // A lens made for its position of wear: 20/20 on compensated powers.
    row(
      written({ ...JOB, order: put(JOB.order, 'compensation by-maker') }),
      'warning R [-4.50 -0.75 x 022]',
      'warning L [-4.25 -1.00 x 168]',
    ),
    row(
      written({
        ...JOB,
        order: [...JOB.order, 'compensation by-maker', 'verification R -4.50 -0.75 x 022 L -4.25 -1.00 x 168'],
      }),
    ),
    row(written(JOB)),
  ],
  'not-read': [
    row(unread('L'), 'warning [2026-11-24]'),
    row(unread('prism', 'pd'), 'warning [2026-11-24]'),
    row(written({ ...JOB, reading: [] })),
    row(written(JOB)),
    // Only a final reading speaks for a glazed pair; an earlier stage is not blamed for it.
    row(header('reading 2026-11-24 with FOC-A stage uncut'), 'info [2026-11-24]'),
    row(`${unread('L')}\n    decided accept by MT "the left lens was not changed"`, 'info [2026-11-24]'),
    // The newest reading by date carries it.
    row(`${unread('L')}\n  reading 2026-11-20\n    impact passed`, 'warning [2026-11-24]'),
  ],
  'standard-missing': [
    row(noStandard, 'info [2026-11-24]'),
    row(written({ ...JOB, head: JOB.head.slice(1), reading: [] })),
    row(`${noStandard}\n  reading 2026-11-25`, 'info [2026-11-24]'),
  ],
  'standard-unknown': [
    row(head('standard z80.1-2016'), 'error [z80.1-2016]'),
    row(written({ ...JOB, order: [...JOB.order, 'standard z80.2'] }), 'error [z80.2]'),
    row(head('standard Z80.1-2015')),
    row(head('standard house', 'tolerance house from z80.1-2015')),
    row(head('standard house', 'tolerance house from z80.1'), 'error [z80.1]'),
    row(head('standard house', 'tolerance house')),
    row(head('standard House', 'tolerance house from z80.1-2015'), 'error [House]'),
    // For the whole file it is told once, wherever the line stands.
    row(`${noStandard}\norder QL-1043\n  R plano\n  L plano\nstandard z80.1`, 'error [z80.1]'),
  ],
  'defined-twice': [
    row(head('instrument FOC-A', '  reads-to 0.25', ...JOB.head), 'error [FOC-A]'),
    row(head('tolerance house from z80.1-2015', 'tolerance house from z80.1-2010', ...JOB.head), 'error [house]'),
    row(head('defaults', '  supply glazed', 'defaults', '  supply uncut', ...JOB.head), 'error [defaults]'),
    row(head(...JOB.head, 'instrument FOC-B')),
  ],
  'order-twice': [
    row('order A\n  R plano\norder B\n  R plano\norder A\n  L plano', 'warning [A]', 'warning [A]'),
    row('order A\norder a\norder "A B"\norder A-B'),
    row('order "A"\norder A', 'warning ["A"]', 'warning [A]'),
    row('order\norder'),
  ],
  'house-base-missing': [
    row(head('tolerance house', '  power 0.06', ...JOB.head), 'error [house]'),
    row(head('tolerance house from z80.1-2015', ...JOB.head)),
  ],
  'said-twice': [
    row(head('standard z80.1-2015', 'standard z80.1-2010'), 'error [z80.1-2010]'),
    row(head('standard z80.1-2015', 'standard z80.1-2015')),
    row(`${written(JOB)}\n    R -4.25 -0.75 x 022`, 'warning R [-4.25 -0.75 x 022]'),
    row(`${written(JOB)}\n    R -4.50 -0.75 x 022`),
    row(`${written(JOB)}\n    again R -4.25 -0.75 x 022`),
    row(written({ ...JOB, order: [...JOB.order, 'pd 64'] }), 'error [64]'),
    row(written({ ...JOB, order: [...JOB.order, 'pd 63'] })),
  ],
  'name-missing': [row('order\n  R plano\n  L plano', 'error [order]'), row('order A\n  R plano\n  L plano')],
  'reading-missing': [
    row('order A\n  R plano\n  L plano\n  zero +0.03', 'error [zero]'),
    row('order A\n  reading 2026-11-24\n    zero +0.03'),
    row('order A\n  reading 2026-11-24\n  end\n  clock R +6.25 -> +8.25', 'error [clock]'),
  ],
  'order-line-below-reading': [
    row(`${written(JOB)}\n    due 2026-12-01`, 'hint [due]'),
    row(written({ ...JOB, order: [...JOB.order, 'due 2026-12-01'] })),
  ],
  'block-unclear': [
    row(`${written(JOB)}\n  height 17`, 'warning [height]'),
    row(`${written(JOB)}\n    height 17`),
    row(`${written(JOB)}\n  end\n  height 17`),
  ],
  'line-outside': [row('R -4.50\norder A', 'error [R]'), row('standard z80.1-2015\n# a remark\norder A')],
  'block-unnamed': [
    row('order A\n  R plano\nordr B\n  R 4.50', 'error [ordr]'),
    row('order A\n  R plano\norder B\n  R plano'),
  ],
};

describe.each(Object.entries(ROWS))('%s', (code, rows) => {
  test.each(rows.map((one, at) => [at + 1, one] as const))('row %i', (_, { text, told: expected }) => {
    expect(told(text, code), text).toEqual(expected);
  });
});

describe('what is said', () => {
  test.each([
    [
      'not-read',
      unread('L', 'pd', 'prism', 'add'),
      'Not read yet: L power, add of both lenses, PD, the vertical prism of both lenses at the distance reference point, near PD.',
    ],
    [
      'near-the-limit',
      read('R -4.50 -0.62 x 022'),
      'R power read -5.125, ordered -5.25; R cylinder read -0.625, ordered -0.75: one eighth against a limit of 0.13 D (z80.1-2015). It counts as inside, but this instrument cannot decide it.',
    ],
    [
      'instrument-overdue',
      header('reading 2027-06-01 with FOC-A'),
      'FOC-A was due for calibration on 2027-05-14; this reading is of 2027-06-01.',
    ],
    [
      'negative-add',
      read('add R -2.50 -> -4.50 L +2.00'),
      'This add is -2.00. Were the distance and the near position exchanged?',
    ],
    [
      'standard-unknown',
      head('standard z80.1-2016'),
      'There is no tolerance set “z80.1-2016”. Nothing is judged by it.',
    ],
    ['measured-word', read('pd ok'), '“ok” is no figure. This does not count as read.'],
    ['measured-word', read('impact ok'), '“ok” is no result. Did it pass or fail?'],
  ])('%s', (code, text, sentence) => {
    expect(messages(text, code)).toEqual([sentence]);
  });
});

describe('fixes', () => {
  const fixed = (text: string, code: string): readonly string[] =>
    findingsWith(text, code).flatMap((found) => fixesOf(found).map((fix) => mended(found, fix)));

  test('an unknown standard becomes the nearest one', () => {
    expect(fixed(head('standard z80.1-2016'), 'standard-unknown')).toEqual([head('standard z80.1-2015')]);
    expect(fixed(head('standard z80.1'), 'standard-unknown')).toEqual([head('standard z80.1-2015')]);
    expect(fixed(head('standard ANSI-Z80.1-2010'), 'standard-unknown')).toEqual([head('standard z80.1-2010')]);
    expect(fixed(head('standard "ISO 21987"'), 'standard-unknown')).toEqual([head('standard iso-21987-2017')]);
    expect(fixed(head('standard ours'), 'standard-unknown')).toEqual([]);
    const house = (name: string): string => head(`standard ${name}`, 'tolerance house from z80.1-2015');
    expect(fixed(house('House'), 'standard-unknown')).toEqual([house('house')]);
  });

  test('an unknown instrument becomes the nearest one, or is declared above the order', () => {
    const text = header('reading 2026-11-24 with FOC-B');
    const [nearest, declared] = fixed(text, 'instrument-unknown');
    expect(nearest).toBe(header('reading 2026-11-24 with FOC-A'));
    expect(declared).toBe(text.replace('order QL', 'instrument FOC-B\n\norder QL'));
    expect(told(declared as string, 'instrument-unknown')).toEqual([]);
    const [quoted] = fixed(header('reading 2026-11-24 with "bench two"'), 'instrument-unknown');
    expect(quoted).toContain('instrument "bench two"\n');
  });

  test('without a standard each set for this kind of supply is offered, for this order only', () => {
    const offered = fixed(noStandard, 'standard-missing');
    expect(offered.length).toBeGreaterThan(2);
    expect(offered[0]).toContain('order QL-1042\n  standard z80.1-2015\n');
    expect(offered.join()).not.toContain('iso-8980');
  });

  test('positions of an add are exchanged', () => {
    expect(fixed(read('add R -2.50 -> -4.50 L +2.00'), 'negative-add')).toEqual([read('add R -4.50 -> -2.50 L +2.00')]);
    expect(fixed(read('add R -2.00 L +2.00'), 'negative-add')).toEqual([]);
  });

  test('a second figure is marked as a repetition; a test is not repeated', () => {
    expect(fixed(`${written(JOB)}\n    R -4.25 -0.75 x 022`, 'said-twice')).toEqual([
      `${written(JOB)}\n    again R -4.25 -0.75 x 022`,
    ]);
    expect(fixed(`${written(JOB)}\n    impact failed`, 'said-twice')).toEqual([]);
    expect(fixed(written({ ...JOB, order: [...JOB.order, 'pd 64'] }), 'said-twice')).toEqual([]);
  });

  test('an unclear line is indented, or the reading closed above it', () => {
    expect(fixed(`${written(JOB)}\n  height 17`, 'block-unclear')).toEqual([
      `${written(JOB)}\n    height 17`,
      `${written(JOB)}\n  end\n  height 17`,
    ]);
  });

  test('a word near a block word becomes it; of others every one is offered', () => {
    expect(fixed('ordr QL-2', 'block-unnamed')).toEqual(['order QL-2']);
    expect(fixed('tolerence house', 'block-unnamed')).toEqual(['tolerance house']);
    expect(fixed('jobsheet QL-2', 'block-unnamed')).toHaveLength(4);
  });
});

test('an unknown standard of the settings is told at the reading, and has no fix in the text', () => {
  const { blocks } = analyse(noStandard, { standard: 'z80.9' });
  const found = blocks.flatMap(({ findings }) => findings).filter(({ code }) => code === 'standard-unknown');
  expect(found).toMatchObject([{ level: 'error', data: { name: 'z80.9', named: false } }]);
});

describe('after an edit findings are those of the whole text', () => {
  const codes = (text: string, edit: { readonly from: string; readonly to: string }): readonly string[] => {
    const before = analyse(text).document;
    const lines = text.split('\n');
    const line = lines.findIndex((one) => one.includes(edit.from));
    const character = lines[line]?.indexOf(edit.from) ?? 0;
    const range = { start: { line, character }, end: { line, character: character + edit.from.length } };
    const after = analyseDocument(before.edit(range, edit.to));
    const fresh = analyse(after.document.text());
    const all = (analysis: typeof fresh): readonly string[] =>
      analysis.blocks.flatMap(({ findings }, at) =>
        findings.map(({ code, data }) => `${at} ${code} ${JSON.stringify(data)}`),
      );
    expect(all(after)).toEqual(all(fresh));
    return after.blocks.flatMap(({ findings }) => findings.map(({ code }) => code));
  };

  test('the instrument is declared, or its name changes', () => {
    const text = header('reading 2026-11-24 with FOC-B');
    expect(codes(text, { from: 'instrument FOC-A', to: 'instrument FOC-B' })).not.toContain('instrument-unknown');
    expect(codes(text, { from: 'instrument FOC-A', to: 'instrument FOC-C' })).toContain('instrument-unknown');
  });

  test('the calibration falls due', () => {
    expect(codes(written(JOB), { from: 'due 2027-05-14', to: 'due 2026-05-14' })).toContain('instrument-overdue');
  });

  test('a house set is named, loses its name, or its base', () => {
    const text = head('standard house', 'tolerance house from z80.1-2015', '  power 0.06');
    expect(codes(text, { from: 'tolerance house', to: 'tolerance hause' })).toContain('standard-unknown');
    expect(codes(text, { from: ' from z80.1-2015', to: '' })).toContain('house-base-missing');
    expect(codes(text, { from: 'standard house', to: 'standard hause' })).toContain('standard-unknown');
    const twice = head('instrument FOC-A', '  reads-to 0.25', ...JOB.head);
    expect(codes(twice, { from: 'instrument FOC-A', to: 'instrument FOC-1' })).not.toContain('defined-twice');
  });

  test('the standard of the file goes wrong, or comes from another line', () => {
    expect(codes(written(JOB), { from: 'z80.1-2015', to: 'z80.1-2016' })).toContain('standard-unknown');
    const two = `${head('standard z80.9')}\nstandard z80.9`;
    expect(
      codes(two, { from: 'standard z80.9', to: '# none' }).filter((code) => code === 'standard-unknown'),
    ).toHaveLength(1);
  });
});
