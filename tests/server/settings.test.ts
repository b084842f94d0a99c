import { expect, test } from 'vitest';
import { GUARD_BANDS } from '../../orders';
import manifest from '../../package.json';
import { benchAddresses, isInside, keyOf } from '../../server/addresses';
import { CYLINDER_FORMS, DEFAULT_SETTINGS, HINT_KINDS, kept, settingsFrom } from '../../server/settings';

test.each([undefined, null, 'lentil', 5, [], {}, { standard: null }, { standard: '  ' }, { diagnostics: 'all' }])(
  'settings of %j give the defaults',
  (section) => {
    expect(settingsFrom(section)).toEqual(DEFAULT_SETTINGS);
  },
);

test.each([0, -3, Number.NaN, Number.POSITIVE_INFINITY, '20', null])('%j is no number of findings', (most) => {
  expect(settingsFrom({ diagnostics: { most } }).most).toBe(400);
});

test('settings are taken as they are meant', () => {
  const section = {
    standard: ' z80.1-2015 ',
    guard: 'accept-when-sure',
    near: { percent: 80 },
    diagnostics: { most: 20.7, levels: { 'eye-missing': 'warning', 'quarter-step': 'off' } },
    hints: { cylinder: 'minus', decimals: 3, show: ['verdict', 'read'] },
  };
  expect(settingsFrom(section)).toEqual({
    standard: 'z80.1-2015',
    guard: 'accept-when-sure',
    nearPercent: 80,
    most: 20,
    levels: new Map([
      ['eye-missing', 'warning'],
      ['quarter-step', 'off'],
    ]),
    hints: { cylinder: 'minus', decimals: 3, show: new Set(['verdict', 'read']) },
  });
});

test.each([
  ['a guard band nobody knows', { guard: 'sometimes' }],
  ['a share beyond the limit', { near: { percent: 101 } }],
  ['a share of nothing', { near: { percent: 0 } }],
  ['a share in words', { near: { percent: '80' } }],
  ['a level nobody knows', { diagnostics: { levels: { 'eye-missing': 'loud' } } }],
  ['a code nobody knows', { diagnostics: { levels: { 'no-such-code': 'error' } } }],
  ['levels in a list', { diagnostics: { levels: ['eye-missing'] } }],
  ['a form nobody knows', { hints: { cylinder: 'both' } }],
  ['too many decimals', { hints: { decimals: 9 } }],
  ['hints that are no list', { hints: { show: 'all' } }],
])('%s is left out, and the settings beside it are kept', (_, section) => {
  expect(settingsFrom({ ...section, standard: 'z80.1-2015' })).toEqual({ ...DEFAULT_SETTINGS, standard: 'z80.1-2015' });
});

test.each(['sign-missing', 'power-outside', 'impact-failed', 'decision-differs'])(
  '%s can be given another level, but not switched off',
  (code) => {
    expect(settingsFrom({ diagnostics: { levels: { [code]: 'off' } } }).levels.size).toBe(0);
    expect(settingsFrom({ diagnostics: { levels: { [code]: 'hint' } } }).levels.get(code)).toBe('hint');
  },
);

test('the settings in the manifest are those that are read, with the same choices and defaults', () => {
  const { properties } = manifest.contributes.configuration;
  const section: Record<string, Record<string, unknown>> = {};
  for (const [name, { default: value }] of Object.entries(properties)) {
    const [first, second] = name.replace('lentil.', '').split('.') as [string, string?];
    if (second === undefined) Object.assign(section, { [first]: value });
    else section[first] = { ...section[first], [second]: value };
  }
  expect(settingsFrom(section)).toEqual(DEFAULT_SETTINGS);
  expect(properties['lentil.guard'].enum).toEqual(GUARD_BANDS);
  expect(properties['lentil.hints.cylinder'].enum).toEqual(CYLINDER_FORMS);
  expect(properties['lentil.hints.show'].items.enum).toEqual(HINT_KINDS);
});

test('the same settings told again are the same object', () => {
  const section = { diagnostics: { levels: { 'eye-missing': 'hint' } } };
  const before = settingsFrom(section);
  expect(kept(before, settingsFrom(section))).toBe(before);
  expect(kept(before, settingsFrom({}))).toEqual(DEFAULT_SETTINGS);
});

test.each([
  ['file:///c%3A/Bench/M%C3%BCller.lentil', 'file:///C:/Bench/Müller.lentil'],
  ['file:///c:/Bench', 'FILE:///C%3A/Bench/'],
  ['file:///bench/50%.lentil', 'file:///bench/50%.lentil'],
])('%s and %s are one file', (a, b) => {
  expect(keyOf(a)).toBe(keyOf(b));
});

test('names that differ in case are different files', () => {
  expect(keyOf('file:///bench/A.lentil')).not.toBe(keyOf('file:///bench/a.lentil'));
});

test('a folder holds what is below it, and not its namesakes', () => {
  expect(isInside('file:///bench/a/b.lentil', 'file:///bench')).toBe(true);
  expect(isInside('file:///benches/a.lentil', 'file:///bench')).toBe(false);
});

test.each([
  ['file:///bench/days/a.lentil', 'file:///bench', ['file:///bench/days/bench.lentil', 'file:///bench/bench.lentil']],
  ['file:///a.lentil', null, ['file:///bench.lentil']],
  ['file:///c%3A/x/a.lentil', 'file:///c:/x', ['file:///c%3A/x/bench.lentil']],
  ['file:///bench/bench.lentil', null, []],
  ['untitled:Untitled-1', null, []],
])('the bench files of %s below %s', (uri, top, expected) => {
  expect(benchAddresses(uri, top)).toEqual(expected);
});
