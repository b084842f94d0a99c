/**
 * What a careful person would question, and what passes without a word: repeats, second readings, two tools on one add,
 * shared prism, centres off alike, confirmations. Common practice, no source, where none stands beside a row.
 */
import { describe, expect, test } from 'vitest';
import { messages, told } from '../support/findings';
import { judged, pair } from '../support/judged';

const ORDER = [
  'R -2.00 -0.50 x 010',
  'L -2.25 -0.75 x 170',
  'pd R 31 L 31',
  'height 18',
  'design single-vision',
  'frame A 50 B 34 DBL 18',
  'supply glazed',
];
const READING = ['R -2.00 -0.50 x 010', 'L -2.25 -0.75 x 170', 'pd R 31 L 31', 'height R 18 L 18', 'prism R 0 L 0'];

/** Lines in the place of those with the same first word; a line with another one comes on top. */
function put(lines: readonly string[], ...others: readonly string[]): string[] {
  const word = (line: string): string => line.split(' ')[0] as string;
  const words = new Set(others.map(word));
  return [...lines.filter((line) => !words.has(word(line))), ...others];
}

const standing = (text: string): string => {
  const { verdict, reservations, unresolved } = judged(text);
  return [verdict, ...reservations, ...unresolved].join(' ');
};
const read = (...lines: string[]): string => pair(ORDER, put(READING, ...lines));
const ordered = (order: readonly string[], ...lines: string[]): string =>
  pair(put(ORDER, ...order), put(READING, ...lines));

test('the pair itself is a plain accept', () => {
  expect(standing(pair(ORDER, READING))).toBe('accept');
});

describe('repeats that disagree are not judged', () => {
  const unjudged = (text: string): readonly string[] =>
    judged(text)
      .measures.filter(({ outcome }) => outcome === 'not-judged')
      .map(({ quantity, eye }) => `${eye ?? ''} ${quantity}`.trim());

  test.each([
    [
      'axes across each other',
      ['R -2.00 -0.50 x 005', 'again R -2.00 -0.50 x 095'],
      ['R power', 'R cylinder', 'R axis'],
    ],
    [
      'cylinders that cancel',
      ['R -1.75 -0.50 x 010', 'again R -2.25 +0.50 x 010'],
      ['R power', 'R cylinder', 'R axis'],
    ],
    ['prism of one eye', ['prism R 10 BU L 0', 'again prism R 10 BD'], ['prism-vertical']],
    [
      'eight that are right do not hide one that is not',
      ['prism R 3 BU L 0', ...Array(8).fill('again prism R 0')],
      ['prism-vertical'],
    ],
    ['the place of one eye', ['pd R 26 L 31', 'again pd R 36'], ['prism-horizontal']],
    ['places that cancel in their sum', ['pd R 26 L 36', 'again pd R 36 L 26'], ['prism-horizontal']],
  ])('%s', (_, lines, expected) => {
    const text = pair(ORDER, [
      ...put(READING, ...lines.filter((line) => !line.startsWith('again'))),
      ...lines.filter((line) => line.startsWith('again')),
    ]);
    expect(judged(text).verdict).toBe('incomplete');
    expect(unjudged(text)).toEqual(expected);
  });

  test('axes on either side of the crossed one are not half a turn apart', () => {
    const text = pair(put(ORDER, 'R -2.00 -0.50 x 180'), [
      ...put(READING, 'R -2.00 -0.50 x 089'),
      'again R -2.00 -0.50 x 091',
    ]);
    expect(judged(text).measures.find(({ quantity, eye }) => quantity === 'axis' && eye === 'R')).toMatchObject({
      spread: 2,
      outcome: 'fail',
    });
  });

  test('the odd one of three is named', () => {
    const text = pair(ORDER, [...READING, 'again R -2.00 -0.50 x 011', 'again R -2.00 -0.50 x 095']);
    expect(told(text, 'repeat-outlier')).toEqual(['warning R [-2.00 -0.50 x 095]']);
  });

  test('a sphere that two crossed cylinders make is no sphere', () => {
    const text = pair(put(ORDER, 'R -2.00'), [...put(READING, 'R -1.00 -2.00 x 005'), 'again R -1.00 -2.00 x 095']);
    expect(judged(text).verdict).toBe('incomplete');
  });
});

describe('a later reading', () => {
  const later = (first: string[], ...second: string[]): string =>
    [pair(ORDER, first), ...second.map((line) => `  ${line}`)].join('\n');
  const FAILED = put(READING, 'R -2.50 -0.50 x 010');

  test.each([
    ['clean without a word', later(FAILED, 'reading 2026-11-25', 'R -2.00 -0.50 x 010'), 'accept rework-unsaid'],
    [
      'clean with a note of what was done',
      later(FAILED, 'reading 2026-11-25', 'R -2.00 -0.50 x 010', 'note eyepiece focused, read again'),
      'accept',
    ],
    [
      'after a refusal by a person',
      later([...READING, 'decided reject by MT "scratch"'], 'reading 2026-11-25', 'R -2.00 -0.50 x 010'),
      'accept rework-unsaid',
    ],
    [
      'by another person, half the tolerance away',
      later(READING, 'reading 2026-11-25 by MT', 'R -2.10 -0.50 x 010').replace('2026-11-24', '2026-11-24 by KO'),
      'accept readings-differ',
    ],
    [
      'by another person, and the same',
      later(READING, 'reading 2026-11-25 by MT', 'R -2.03 -0.50 x 010').replace('2026-11-24', '2026-11-24 by KO'),
      'accept',
    ],
  ])('%s', (_, text, expected) => {
    expect(standing(text)).toBe(expected);
  });
});

describe('one add by two tools', () => {
  const bifocal = (...lines: string[]): string =>
    pair(
      [
        'R -2.00',
        'L -2.25',
        'add +2.00',
        'pd 62 near 59',
        'height 17',
        'design FT28',
        'lens resin-1.50',
        'supply glazed',
      ],
      ['R -2.00', 'L -2.25', 'pd 62 near 59', 'prism R 0 L 0', 'height R 17 L 17', ...lines],
    );
  const DRUM = 'add R -2.00 -> +0.00 front-vertex L -2.25 -> -0.25 front-vertex';

  // 2.12 on the dial is 2.12 x 0.498 / 0.530 = 1.99 in a resin of 1.498.
  test('that agree are both shown, and the drum is judged', () => {
    const text = bifocal(DRUM, 'clock R +6.25 -> +8.37 L +6.25 -> +8.37');
    expect(standing(text)).toBe('accept');
    expect(messages(text, 'add-read-two-ways')).toEqual([
      'R add +2.00 on the focimeter, +1.99 with the lens measure. They agree.',
      'L add +2.00 on the focimeter, +1.99 with the lens measure. They agree.',
    ]);
  });

  // 2.62 on the dial is 2.46: 0.46 more than the drum, where 0.06 and an eighth are explained.
  test('that disagree are asked about', () => {
    expect(standing(bifocal(DRUM, 'clock R +6.25 -> +8.87 L +6.25 -> +8.37'))).toBe('accept add-read-two-ways');
  });

  test('one eighth on the dial is taken as on the drum', () => {
    // In a material of 1.530 the dial reads true: 2.125 for 2.00.
    const text = bifocal('clock R +6.25 -> +8.375 L +6.25 -> +8.25').replace('resin-1.50', 'house-resin index 1.53');
    expect(standing(text)).toBe('accept near-the-limit');
  });

  test('no focimeter is blamed for what a lens measure showed', () => {
    const head = ['standard z80.1-2015', 'instrument F', '  kind digital focimeter', '  uncertainty 0.11'];
    const text = [
      ...head,
      bifocal('clock R +6.25 -> +8.37 L +6.25 -> +8.37')
        .replace('standard z80.1-2015', '')
        .replace('11-24', '11-24 with F'),
    ].join('\n');
    expect(
      judged(text)
        .measures.filter(({ quantity }) => quantity === 'add')
        .map(({ uncertainty }) => uncertainty),
    ).toEqual([null, null]);
  });
});

describe('ordered prism', () => {
  const prism = (order: string[], made: string): string => standing(ordered(order, made));
  test.each([
    ['shared equally as ordered', ['prism R 6 BO', 'split equal'], 'prism R 3 BO L 3 BO', 'accept'],
    ['not shared as ordered', ['prism R 6 BO', 'split equal'], 'prism R 6 BO L 0', 'reject'],
    [
      'each part shared by its own sum',
      ['prism R 3.5 BU 1.5 BO L 6.5 BD 7.5 BO', 'split equal'],
      'prism R 5 BU 4.5 BO L 5 BD 4.5 BO',
      'accept',
    ],
    ['shared freely', ['prism R 3 BO L 3 BO', 'split free'], 'prism R 6 BO L 0', 'accept'],
    ['given as a whole', ['prism total 6 BO'], 'prism R 4 BO L 2 BO', 'accept'],
    ['given as a whole, and another whole made', ['prism total 6 BO'], 'prism R 4 BO L 1 BO', 'reject'],
    ['not said how to share, and shared', ['prism R 6 BO L 0'], 'prism R 3 BO L 3 BO', 'accept prism-in-both'],
    ['yoked', ['prism R 3 BI L 3 BO', 'yoked'], 'prism R 3 BI L 3 BO', 'accept'],
    ['yoked and left out', ['prism R 3 BI L 3 BO', 'yoked'], 'prism R 0 L 0', 'reject'],
  ])('%s', (_, order, made, expected) => {
    expect(prism(order, made).replace('accept prism-one-sided', 'accept')).toBe(expected);
  });
});

describe('both centres off the same way', () => {
  const STRONG = ['R -6.00', 'L -6.00', 'tested vertex 12'];
  const off = (...lines: string[]): string => {
    const reading = put(put(READING, 'R -6.00', 'L -6.00'), ...lines).filter((line) => !line.startsWith('prism'));
    return pair(put(ORDER, ...STRONG), reading);
  };
  test.each([
    ['6 mm low', ['height R 12 L 12'], 'R centre 6 mm low, which makes 3.60 base up'],
    ['3.5 mm to one side', ['pd R 34.5 L 27.5'], 'R centre 3.5 mm out, which makes 2.10 base in'],
  ])('%s', (_, lines, words) => {
    expect(standing(off(...lines))).toBe('accept prism-in-both');
    expect(messages(off(...lines), 'prism-in-both')[0]).toContain(words);
  });
  test('unordered equal prism down in both is asked about as thinning', () => {
    const text = pair(
      ORDER,
      put(READING, 'prism R 1.5 BD L 1.5 BD').filter((line) => !line.startsWith('height')),
    );
    expect(standing(text)).toBe('accept prism-in-both');
    expect(messages(text, 'prism-in-both')[0]).toContain('`thinning`');
  });
  // The caution of the set: lenses for a stated position are outside the pair limits. From memory, text not seen.
  test('a stated position counts for each lens by itself under ISO', () => {
    const text = off('pd R 32.5 L 29.5').replace('z80.1-2015', 'iso-21987-2017');
    expect(judged(text).reservations).toContain('stated-position-off');
    expect(judged(off('pd R 32.5 L 29.5')).reservations).not.toContain('stated-position-off');
  });
});

describe('what contradicts itself is not accepted', () => {
  test.each([
    [
      'centres and the prism beside them',
      read('optical-centres R 40 L 31').replaceAll(/^ {4}pd .*$/gm, ''),
      'places-contradict',
    ],
    ['heights and the prism beside them', read('height R 26 L 18', 'prism R 0 L 0'), 'places-contradict'],
  ])('%s', (_, text, code) => {
    expect(told(text, code).length).toBeGreaterThan(0);
    expect(judged(text).verdict).not.toBe('accept');
  });
  // 5 mm on -2.00 and -2.25 are more than 0.67 in either lens, and no prism at all was measured.
  test('a whole distance and the prism beside it', () => {
    const text = ordered(['pd 62'], 'pd 67').replace('pd R 31 L 31', '');
    expect(told(text, 'distance-contradicts')).toHaveLength(1);
    expect(judged(text).verdict).toBe('reject');
  });
});

describe('a whole distance', () => {
  const whole = (order: string, ...more: string[]): string => {
    const reading = [...READING.filter((line) => !/^(pd|prism)/.test(line)), 'pd 62', ...more];
    return standing(pair(put(ORDER, order), reading));
  };
  test.each([
    ['where each eye was ordered by itself', whole('pd R 31 L 31'), 'accept placed-by-sum'],
    ['beside the prism of both lenses', whole('pd R 31 L 31', 'prism R 0 L 0'), 'accept'],
    ['where no more was ordered', whole('pd 62'), 'accept'],
  ])('%s', (_, found, expected) => {
    expect(found).toBe(expected);
  });
});

describe('a confirmation', () => {
  const confirmed = (line: string): string =>
    standing(ordered(['R -2.00 -0.50 x 5', `confirmed axis-short ${line}`], 'R -2.00 -0.50 x 005'));
  test.each([
    ['with a reason and a name holds', '"R -2.00 -0.50 x 5" "clinic says 5" by KO', 'accept'],
    ['without a reason holds nothing', '"R -2.00 -0.50 x 5" by KO', 'accept axis-short confirmation-idle'],
    ['without a name holds nothing', '"R -2.00 -0.50 x 5" "clinic says 5"', 'accept axis-short confirmation-idle'],
    ['of another line is told', '"R -2.00 -0.50 x 6" "clinic says 6" by KO', 'accept axis-short confirmation-idle'],
  ])('%s', (_, line, expected) => {
    expect(confirmed(line)).toBe(expected);
  });
  test.each([
    'unknown-line',
    'unexpected-text',
    'said-twice',
    'date-impossible',
    'impact-failed',
    'nothing-of-the-sort',
  ])('of %s is no confirmation', (code) => {
    const text = ordered([`confirmed ${code} "pd R 31 L 31" "so be it" by KO`]);
    expect(standing(text)).toBe('accept confirmation-idle');
  });
});

test('prism beyond any formula is told, and nothing ends for it', () => {
  const text = ordered(['prism R 40 BI 40 BI 40 BI']);
  expect(judged(text)).toMatchObject({ verdict: 'incomplete', unresolved: ['prism-repeated'] });
});
