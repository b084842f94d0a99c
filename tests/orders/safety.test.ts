/**
 * Pairs for protection and for a child. Least thickness: ANSI Z87.1 as retold in a laboratory manual. Impact: 21 CFR 801.410
 * in the FDA guidance of 2010. What else protection calls for is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { analyse, lineToTakeInText, readingToTake } from '../../orders';
import { told } from '../support/findings';
import { JOB, put, written } from '../support/job';
import { judged, pair } from '../support/judged';

const ORDER = ['R -1.00', 'L -1.00', 'pd 62', 'design single-vision', 'supply glazed', 'lens polycarbonate'];
const READ = ['R -1.00', 'L -1.00', 'pd 62', 'prism R 0 L 0'];
const ISO = ['standard iso-21987-2017'];
const ALL = ['impact passed', 'marking passed', 'thickness R min 3.0 L min 3.0'];

const missing = (text: string): readonly string[] =>
  judged(text)
    .measures.filter(({ outcome }) => outcome === 'not-read')
    .map(({ quantity, eye }) => (eye ? `${eye} ${quantity}` : quantity));

const verdict = (text: string): string => {
  const { verdict: is, reservations, unresolved } = judged(text);
  return [is, ...reservations, ...unresolved].join(' ');
};

describe('protection', () => {
  const order = [...ORDER, 'purpose safety'];

  test.each([
    ['nothing but the powers', [], ['R min-thickness', 'L min-thickness', 'impact', 'marking']],
    ['no marking', ALL.filter((line) => !line.startsWith('marking')), ['marking']],
    ['no impact', ALL.filter((line) => !line.startsWith('impact')), ['impact']],
    ['no thickness', ALL.filter((line) => !line.startsWith('thickness')), ['R min-thickness', 'L min-thickness']],
    ['one thickness', [...ALL.slice(0, 2), 'thickness R min 3.0'], ['L min-thickness']],
    ['the centre alone', [...ALL.slice(0, 2), 'thickness R centre 3.0 L min 3.0'], ['R min-thickness']],
    ['everything', ALL, []],
    ['everything, centre and edge', [...ALL.slice(0, 2), 'thickness R centre 3.0 edge 4.1 L centre 3.0 edge 4.0'], []],
  ])('%s', (_, more, expected) => {
    for (const head of [undefined, ISO]) {
      const text = pair(order, [...READ, ...more], head);
      expect(missing(text)).toEqual(expected);
      expect(verdict(text)).toBe(expected.length === 0 ? 'accept' : 'incomplete');
    }
  });

  test('without the purpose nothing of it is called for', () => {
    expect(verdict(pair(ORDER, READ))).toBe('accept');
    expect(verdict(pair([...ORDER, 'purpose general'], READ))).toBe('accept');
  });

  test('uncut lenses carry no mark yet', () => {
    const uncut = order.map((line) => (line === 'supply glazed' ? 'supply uncut' : line));
    expect(missing(pair(uncut, ['R -1.00', 'L -1.00']))).toEqual(
      expect.arrayContaining(['R min-thickness', 'L min-thickness', 'impact']),
    );
    expect(missing(pair(uncut, ['R -1.00', 'L -1.00']))).not.toContain('marking');
  });

  test('the reading to take asks for them', () => {
    const { blocks, context } = analyse(pair(order, []));
    const found = blocks.find((one) => one.order)?.order;
    const lines = found ? readingToTake(found, context).map((line) => lineToTakeInText(line, () => '_')) : [];
    expect(lines.slice(-3)).toEqual([
      'thickness R min _  L min _  # expect R min at least 2, L min at least 2',
      'impact _  # passed or failed',
      'marking _  # passed or failed',
    ]);
  });
});

describe('a least thickness is held against the thinnest figure', () => {
  const of = (ordered: string, read: string, ...more: readonly string[]): string => {
    const measures = judged(pair([...ORDER, ...more, ordered], [...READ, read])).measures;
    return measures
      .filter(({ quantity }) => quantity === 'min-thickness')
      .map(({ outcome }) => outcome)
      .join(' ');
  };

  test.each([
    ['thickness min 1.8', 'thickness min 1.8', 'pass pass'],
    ['thickness min 1.8', 'thickness min 5.0', 'pass pass'],
    ['thickness min 1.8', 'thickness min 1.7', 'fail fail'],
    ['thickness min 1.8', 'thickness centre 1.8 edge 3.0', 'pass pass'],
    ['thickness min 1.8', 'thickness centre 3.0 edge 1.7', 'fail fail'],
    // A lens that is too thin in one place is too thin, whatever else was measured.
    ['thickness min 1.8', 'thickness centre 1.7', 'fail fail'],
    ['thickness min 1.8', 'thickness centre 1.9', 'not-read not-read'],
    ['thickness min 1.8', 'thickness edge 1.9', 'not-read not-read'],
    ['thickness min 1.8', 'thickness min 1.8 edge 1.7', 'fail fail'],
    ['thickness R min 1.8', 'thickness R min 1.8', 'pass'],
  ])('%s, read %s: %s', (ordered, read, expected) => expect(of(ordered, read)).toBe(expected));

  // ANSI Z87.1 as retold: no rating allows less than 2.0 mm. Without an American set no figure is at hand.
  test('for protection it is never less than 2.0 mm under a set of the United States', () => {
    expect(of('purpose safety', 'thickness min 1.9')).toBe('fail fail');
    expect(of('purpose safety', 'thickness min 2.0')).toBe('pass pass');
    expect(of('purpose safety', 'thickness min 1.9', 'thickness min 1.8')).toBe('fail fail');
    const iso = pair([...ORDER, 'purpose safety'], [...READ, ...ALL.slice(0, 2), 'thickness min 1.9'], ISO);
    expect(verdict(iso)).toBe('accept');
  });

  // The same table: 3.0 mm for a basic lens, 2.5 from +3.00 on, 2.0 where it is impact-rated.
  test.each([
    [[], 'thickness min 2.4', 'accept safety-thin'],
    [[], 'thickness min 3.0', 'accept'],
    [['thickness min 2.0'], 'thickness min 2.4', 'accept'],
    [['R +3.00', 'L +3.00'], 'thickness min 2.5', 'accept'],
    [['R +3.00', 'L +2.75'], 'thickness min 2.5', 'accept safety-thin'],
  ])('%j, read %s: %s', (more, read, expected) => {
    const order = more.reduce<readonly string[]>(put, [...ORDER, 'purpose safety', 'height 20', 'thickness min 0']);
    const powers = order.filter((line) => /^[RL] /.test(line));
    const lines = order.filter((line) => line !== 'thickness min 0');
    const text = pair(
      [...lines],
      [...powers, 'pd 62', 'height 20', 'prism R 0 L 0', 'impact passed', 'marking passed', read],
    );
    expect(verdict(text)).toBe(expected);
  });
});

describe('a child', () => {
  test('calls for the impact test where the regulation of the United States holds', () => {
    const child = [...ORDER, 'purpose child'];
    expect(missing(pair(child, READ))).toEqual(['impact']);
    expect(verdict(pair(child, [...READ, 'impact batch']))).toBe('accept');
    expect(verdict(pair(child, READ, ISO))).toBe('accept');
  });
});

describe('lenses that cannot be safe are told', () => {
  const job = (...order: readonly string[]): string => written({ ...JOB, order: order.reduce(put, JOB.order) });

  test.each([
    ['glass for protection', job('purpose safety', 'lens glass-1.52'), ['warning [glass-1.52]']],
    ['glass for a child', job('purpose child', 'lens R glass-1.70 L resin-1.67'), ['warning R [R glass-1.70]']],
    ['glass for anybody else', job('lens glass-1.52'), []],
    ['resin for protection', job('purpose safety', 'lens polycarbonate'), []],
    ['a slab-off for protection', job('purpose safety', 'slab-off R 2.00'), ['warning R [R 2.00]']],
    ['a slab-off for anybody else', job('slab-off R 2.00'), []],
    ['too thin for any rating', job('purpose safety', 'thickness min 1.9'), ['error [1.9]']],
    ['a centre too thin for any rating', job('purpose safety', 'thickness centre 1.5'), ['error [1.5]']],
    ['as thin as an impact-rated lens may be', job('purpose safety', 'thickness min 2.0'), []],
    ['thin for a child', job('purpose child', 'thickness centre 1.5'), []],
  ])('%s', (_, text, expected) => expect(told(text, 'safety-lens')).toEqual(expected));

  test('glass is not tested by batch', () => {
    const glass = [...ORDER.slice(0, -1), 'lens glass-1.52'];
    expect(verdict(pair(glass, [...READ, 'impact batch']))).toBe('incomplete impact-batch-glass');
    expect(verdict(pair(glass, [...READ, 'impact passed']))).toBe('accept');
    expect(verdict(pair(ORDER, [...READ, 'impact batch']))).toBe('accept');
    expect(verdict(pair(glass, [...READ, 'impact batch'], ISO))).toBe('accept');
  });
});
