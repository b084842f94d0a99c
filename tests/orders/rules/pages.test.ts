/** Every rule’s page holds: its wrong example raises the code, its right one does not, and no fix leaves it standing. */
import { describe, expect, test } from 'vitest';
import { lineWord, VOCABULARY } from '../../../grammar';
import { type AnalysisOptions, orderPowersIn, RULES, type Rule, readSettings, SETTINGS_FILE } from '../../../orders';
import { findingsWith, fixesOf, mended, told } from '../../support/findings';
import { JOB, type Job, ORDER, put, without, written } from '../../support/job';

/** Puts an example into a job. A line that mends another one comes on top of it. */
type Frame = (example: string) => (job: Job) => Job;

const inOrder: Frame = (example) => (job) => ({ ...job, order: put(job.order, example) });
const inReading: Frame = (example) => (job) => ({ ...job, reading: put(job.reading, example) });
const inHead: Frame = (example) => (job) => ({ ...job, head: put(job.head, example) });
const atEnd: Frame = (example) => (job) => ({ ...job, reading: [...job.reading, example] });
/** A line that repeats another one, below it. */
const again: Frame = (example) => (job) => ({
  ...job,
  reading: [...job.reading.filter((line) => !line.trim().startsWith('again')), ...example.split('\n')],
});
/** Lines of an order, by how deep they stand in the example. */
const asLines: Frame = (example) => (job) => ({ ...job, order: [...job.order, ...example.split('\n')] });

/** Each line in the place of its like. */
const eachInReading: Frame = (example) => (job) => ({ ...job, reading: example.split('\n').reduce(put, job.reading) });

/** A reading of its own below the first. */
const secondReading: Frame = (example) => (job) => ({ ...job, reading: [...job.reading, ...example.split('\n')] });
const eachInOrder: Frame = (example) => (job) => ({ ...job, order: example.split('\n').reduce(put, job.order) });

interface Place {
  readonly job: Job;
  readonly frame: Frame;
  /** What mends an order may have to stand in front of it. */
  readonly right?: Frame;
  /** For a rule that says nothing until it is asked to. */
  readonly options?: AnalysisOptions;
  /** For a rule about what stands beside the file: what an example of that makes of the job. */
  readonly optionsOf?: (example: string) => AnalysisOptions;
}

const order = (...lines: readonly string[]): Job => ({ ...ORDER, order: ['order QL-1042', ...lines] });
const PROGRESSIVE = ['add +2.00', 'pd R 31.5 L 31.5', 'height 18', 'design progressive corridor 14'];
const SINGLE: Job = {
  ...JOB,
  order: put(without(JOB.order, 'add'), 'design single-vision'),
  reading: without(JOB.reading, 'add', 'height'),
};
const DISTANCE = ['R -4.50 -0.75 x 022', 'L -4.25 -1.00 x 168'];

const FAILED: Job = { ...JOB, reading: put(JOB.reading, 'R -4.75 -0.75 x 022') };

/** Rules whose example needs another job than the plain one. */
const PLACES: Readonly<Record<string, Place>> = {
  'add-missing': { job: { ...ORDER, order: without(ORDER.order, 'add') }, frame: inOrder },
  'balance-with-power': {
    job: order('R -4.50 -0.75 x 022', 'balance L'),
    frame: inOrder,
    right: (line) => (job) => ({ ...job, order: [...without(job.order, 'L', 'balance'), line] }),
  },
  'balance-far-off': { job: { ...JOB, order: put(without(JOB.order, 'L'), 'balance L -4.25') }, frame: inReading },
  'base-curve-index': {
    job: { ...JOB, order: ['lens 1.67 index 1.67', 'base-curve 6.00'].reduce(put, JOB.order) },
    frame: eachInReading,
  },
  'base-reversed': { job: { ...JOB, order: put(JOB.order, 'prism R 2.00 BI L 0') }, frame: eachInReading },
  'block-unclear': { job: ORDER, frame: asLines, right: (line) => () => asLines(line)(ORDER) },
  'block-unnamed': {
    job: JOB,
    frame: (line) => (job) => ({ ...job, reading: [...job.reading, `\n${line}`] }),
    right: (line) => () => inOrder(line)(ORDER),
  },
  'compensation-unsaid': { job: order('R -10.00', 'L -10.00', 'pd 63', 'as-worn vertex 14'), frame: inOrder },
  'compensation-mixed': {
    job: {
      ...JOB,
      order: ['R -12.00 DS', 'tested vertex 12', 'as-worn vertex 14', 'compensation vertex'].reduce(put, JOB.order),
    },
    frame: eachInReading,
  },
  'clock-fused': {
    job: { ...JOB, order: put(JOB.order, 'lens glass-1.52'), reading: without(JOB.reading, 'add') },
    frame: inReading,
    right: (line) => (job) => ({ ...job, reading: put(without(job.reading, 'clock'), line) }),
  },
  'cross-room': { job: order(...DISTANCE, ...PROGRESSIVE), frame: inOrder },
  'defined-twice': { job: JOB, frame: (line) => (job) => ({ ...job, head: [...job.head, line] }) },
  'house-base-missing': { job: JOB, frame: inHead },
  'house-limit-impossible': {
    job: { ...JOB, head: ['standard house', 'tolerance house from z80.1-2015', '  power 0.06', 'instrument FOC-A'] },
    frame: inHead,
  },
  'instrument-impossible': { job: JOB, frame: inHead },
  'line-misplaced': {
    job: JOB,
    frame: (line) => (job) => ({ ...job, head: [...job.head, line] }),
    right: (line) => () => ({ ...JOB, head: [...JOB.head, line] }),
  },
  'house-looser': {
    job: { ...JOB, head: ['standard house', 'tolerance house from z80.1-2015', '  power 0.06', 'instrument FOC-A'] },
    frame: inHead,
  },
  'confirmation-idle': { job: { ...ORDER, order: put(ORDER.order, 'add R +2.00 L +2.25') }, frame: inOrder },
  'distance-contradicts': {
    job: {
      head: ['standard z80.1-2015'],
      order: ['order QL-1042', 'R -2.50', 'L -2.25', 'pd 63', 'design single-vision', 'supply glazed'],
      reading: ['reading 2026-11-24', 'R -2.50', 'L -2.25'],
    },
    frame: eachInReading,
  },
  'placed-by-sum': {
    job: {
      head: ['standard z80.1-2015'],
      order: ['order QL-1042', 'R -2.50', 'L -2.25', 'pd R 31 L 32', 'height 18', 'design single-vision'],
      reading: ['reading 2026-11-24', 'R -2.50', 'L -2.25', 'height R 18 L 18'],
    },
    frame: inReading,
  },
  'readings-differ': { job: JOB, frame: secondReading, right: (lines) => () => secondReading(lines)(JOB) },
  'rework-unsaid': { job: FAILED, frame: secondReading, right: (lines) => () => secondReading(lines)(FAILED) },
  'stated-position-off': {
    job: {
      head: ['standard iso-21987-2017'],
      order: ['order QL-1042', 'R -4.50', 'L -4.25', 'pd R 31 L 32', 'height 17', 'design single-vision'],
      reading: ['reading 2026-11-24', 'R -4.50', 'L -4.25', 'height R 17 L 17'],
    },
    frame: eachInReading,
  },
  'readings-apart': { job: JOB, frame: again },
  'repeat-outlier': { job: JOB, frame: again },
  'decision-differs': {
    job: { ...JOB, reading: without(JOB.reading, 'cosmetic') },
    frame: atEnd,
    right: (lines) => () => atEnd(lines)(JOB),
  },
  'halves-exchanged': { job: { ...JOB, order: put(JOB.order, 'pd R 29 L 34') }, frame: inReading },
  'height-not-read': { job: SINGLE, frame: inReading },
  'heights-swapped': { job: { ...JOB, order: put(JOB.order, 'height R 18 L 16') }, frame: eachInReading },
  'input-missing': {
    job: JOB,
    frame: () => (job) => job,
    optionsOf: (example) => {
      const read = readSettings(example);
      return 'fault' in read ? { missing: [{ what: SETTINGS_FILE, why: read.fault.message }] } : read.settings;
    },
  },
  'house-limit': {
    job: { ...JOB, head: ['standard house', 'tolerance house from z80.1-2015', '  power 0.06', 'instrument FOC-A'] },
    frame: inReading,
  },
  'degression-beyond-add': { job: ORDER, frame: inOrder },
  'design-missing': { job: { ...ORDER, order: without(ORDER.order, 'design') }, frame: inOrder },
  'eye-missing': { job: order(), frame: inOrder },
  'eye-words-mixed': { job: { ...ORDER, order: without(ORDER.order, 'L') }, frame: inOrder },
  'height-missing': { job: { ...ORDER, order: without(ORDER.order, 'height') }, frame: inOrder },
  'lens-turned': {
    job: { ...JOB, order: put(JOB.order, 'frame A 46 B 42 DBL 18 ED 49') },
    frame: eachInReading,
  },
  'engraved-differs': {
    job: { ...JOB, order: ['design progressive corridor 11', 'pd R 31.5 L 31.5'].reduce(put, JOB.order) },
    frame: again,
  },
  'other-add-blank': {
    job: { ...JOB, order: ['design progressive corridor 11', 'pd R 31.5 L 31.5'].reduce(put, JOB.order) },
    frame: eachInReading,
  },
  'intermediate-unusual': { job: { ...JOB, order: put(JOB.order, 'design trifocal flat-top 7x28') }, frame: inReading },
  'line-outside': {
    job: { head: [], order: [], reading: [] },
    frame: inHead,
    right:
      (line) =>
      ({ head }) => ({ head: [line, ...head], order: [], reading: [] }),
  },
  'name-missing': { job: ORDER, frame: inOrder },
  'near-pd-unsaid': {
    job: order('R +3.00', 'L +3.00', 'add +2.00', 'design single-vision near'),
    frame: inOrder,
  },
  'use-power-missing': { job: order(...DISTANCE), frame: inOrder },
  'nearly-used-up': { job: JOB, frame: inReading, options: { nearPercent: 80 } },
  'not-for-this-lens': { job: { ...ORDER, order: put(ORDER.order, 'thinning 1.50 BD') }, frame: inOrder },
  'not-judged': { job: JOB, frame: inOrder },
  'not-read': { job: { ...JOB, reading: without(JOB.reading, 'R', 'L') }, frame: inReading },
  'order-elsewhere': {
    job: JOB,
    frame: (line) => (job) => ({ ...job, order: [line, ...job.order.slice(1)] }),
    options: {
      elsewhere: new Map([
        [
          'QL-1042',
          orderPowersIn('order QL-1042\n  R -9.00\n', () => true).map((one) => ({ ...one, path: 'b.lentil' })),
        ],
      ]),
    },
  },
  'order-line-below-reading': { job: ORDER, frame: asLines, right: (line) => () => asLines(line)(ORDER) },
  'other-stage-outside': { job: JOB, frame: atEnd, right: (lines) => () => atEnd(lines)(JOB) },
  'pd-halves-missing': { job: order(...DISTANCE, ...PROGRESSIVE), frame: inOrder },
  'pd-missing': { job: { ...ORDER, order: without(ORDER.order, 'pd') }, frame: inOrder },
  'power-unsaid': { job: order(), frame: inOrder },
  'prism-one-sided': { job: order(...DISTANCE, ...PROGRESSIVE), frame: inOrder },
  'order-twice': {
    job: JOB,
    frame: (line) => (job) => ({ ...job, order: [line, '  R plano', '  L plano', ...job.order] }),
    right: (line) => (job) => ({ ...job, order: [line, ...job.order.slice(1)] }),
  },
  'readings-out-of-order': { job: JOB, frame: atEnd, right: (lines) => () => atEnd(lines)(JOB) },
  'reading-missing': {
    job: ORDER,
    frame: inOrder,
    right: (line) => (job) => ({ ...job, order: [...job.order.slice(0, -1), line, ...job.order.slice(-1)] }),
  },
  'reference-outside': { job: JOB, frame: inHead },
  'slab-side': { job: order('R -4.50 -0.75 x 022', 'L -1.00 DS', ...PROGRESSIVE), frame: inOrder },
  'safety-lens': { job: ORDER, frame: eachInOrder },
  'safety-thin': {
    job: { ...JOB, order: put(JOB.order, 'purpose safety') },
    frame: inReading,
  },
  'impact-batch-glass': { job: { ...JOB, order: put(JOB.order, 'lens glass-1.52') }, frame: inReading },
  'slab-outside': { job: { ...JOB, order: [...JOB.order, 'slab-off R 3.50'] }, frame: inReading },
  'clock-on-slab': {
    job: { ...JOB, order: [...JOB.order, 'slab-off R 3.00'] },
    frame: inReading,
    right: (line) => (job) => ({ ...job, reading: put(without(job.reading, 'clock'), line) }),
  },
  'tested-again': {
    job: { ...JOB, reading: without(JOB.reading, 'cosmetic') },
    frame: (lines) => (job) => ({ ...job, reading: [...without(job.reading, 'cosmetic'), ...lines.split('\n')] }),
  },
  'upper-segment-unordered': {
    job: ORDER,
    frame: (line) => (job) => ({ ...job, order: [...job.order, line] }),
    right: inOrder,
  },
  'round-or-right': {
    job: ORDER,
    frame: (line) => (job) => ({ ...job, order: [...without(job.order, 'design'), line] }),
    right: (line) => (job) => ({ ...job, order: [...without(job.order, 'R-22'), line] }),
  },
  'said-twice': { job: JOB, frame: atEnd },
  'supply-unsaid': {
    job: { ...order(...DISTANCE), reading: JOB.reading.slice(0, 3) },
    frame: inOrder,
    right: (line) => (job) => ({ ...job, order: put(job.order, line) }),
  },
  'thinning-unsaid': { job: order(...DISTANCE, ...PROGRESSIVE, 'make R'), frame: inOrder },
  'standard-missing': { job: { ...JOB, head: [] }, frame: inOrder, right: inHead },
  'standard-unknown': { job: JOB, frame: inHead },
  'thinning-as-error': { job: { ...JOB, head: ['standard nj-13-35-5.2'] }, frame: eachInReading },
  'vertex-matters': { job: order('L -1.00 DS'), frame: inOrder },
  'zero-like-shift': { job: JOB, frame: eachInReading },
  'kept-differs': { job: { ...ORDER, order: [...ORDER.order, 'make R'] }, frame: inOrder },
};

const MARGIN = new Set(['order', 'instrument', 'defaults', 'tolerance', 'standard']);

/** Where a line may stand, by its first word: a reading for what only a reading has, the margin for a block. */
function placeFor({ family, page }: Rule): Place {
  if (family === 'tolerance' || family === 'bench') return { job: JOB, frame: inReading };
  if (family === 'cause') return { job: JOB, frame: eachInReading };
  if (family === 'order') return { job: ORDER, frame: inOrder };
  const word = lineWord(/^\s*(\S+)/.exec(page.example.wrong)?.[1] ?? '');
  if (word && (MARGIN.has(word.word) || word.blocks.includes('instrument'))) return { job: ORDER, frame: inHead };
  const isRead = word?.blocks.includes('reading') && !word.blocks.includes('order');
  return isRead || word?.word === 'reading' ? { job: JOB, frame: inReading } : { job: ORDER, frame: inOrder };
}

describe.each(RULES.map((rule) => [rule.code, rule] as const))('%s', (code, rule) => {
  const { example } = rule.page;
  const place = PLACES[code] ?? placeFor(rule);
  const options = {
    wrong: place.optionsOf?.(example.wrong) ?? place.options,
    right: place.optionsOf?.(example.right) ?? place.options,
  };
  const wrong = place.frame(example.wrong)(place.job);
  // A line that was misread is written anew; whatever else mends an order comes on top of it.
  const right = (place.right ?? place.frame)(example.right)(
    rule.family === 'writing' && !place.right ? place.job : wrong,
  );

  test('its wrong example raises it, its right one does not', () => {
    expect(told(written(wrong), code, options.wrong), written(wrong)).not.toEqual([]);
    expect(told(written(right), code, options.right), written(right)).toEqual([]);
  });

  test('its message is whole, and its fixes leave it no more', () => {
    const text = written(wrong);
    for (const found of findingsWith(text, code, options.wrong)) {
      const message = rule.message(found.finding.data);
      expect(message).toMatch(/^[\p{Lu}\p{N}“].*[.?]$/u);
      expect(message).not.toMatch(/undefined|NaN|\bnull\b|\[object/);
      for (const fix of fixesOf(found)) {
        const after = mended(found, fix);
        expect(after, fix.title).not.toBe(text);
        expect(findingsWith(after, code).length, `${fix.title}\n${after}`).toBeLessThan(
          findingsWith(text, code).length,
        );
      }
    }
  });

  test('its page says what it looks at, why, and where it comes from', () => {
    const { checks, why, source, fix } = rule.page;
    for (const part of [checks, why, ...(fix === undefined ? [] : [fix])]) expect(part).toMatch(/^[^\sa-z].*[.?]$/s);
    expect(source).toMatch(/\S/);
    expect(example.wrong).not.toBe(example.right);
    expect(fix === undefined).toBe(rule.fixes === undefined);
  });
});

test('no code is a word of the notation', () => {
  const words = new Set(VOCABULARY.map(({ word }) => word));
  expect(RULES.filter(({ code }) => words.has(code)).map(({ code }) => code)).toEqual([]);
});
