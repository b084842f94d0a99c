import { expect, test } from 'vitest';
import { benchAddresses, isInside, keyOf } from '../../server/addresses';
import { DEFAULT_SETTINGS, settingsFrom } from '../../server/settings';

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
  expect(settingsFrom({ standard: ' z80.1-2015 ', diagnostics: { most: 20.7 } })).toEqual({
    standard: 'z80.1-2015',
    most: 20,
  });
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
