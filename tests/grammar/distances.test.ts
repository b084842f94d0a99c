import { describe, expect, test } from 'vitest';
import { UNREADABLE } from '../support/lines';
import { checkTold, read } from './support/check-told';

const checkPd = (line: string, distance: object, near: object = {}): void => {
  checkTold(line, []);
  expect(read(line)).toEqual({ distance, near });
};

/** A line whose meaning is plain, and still told. */
const checkTaken = (sample: string, codes: readonly string[], distance: object, near: object = {}): void => {
  checkTold(sample, codes);
  expect(read(sample.replace(/[‹›]/g, ''))).toEqual({ distance, near });
};

describe('pd', () => {
  test('binocular, monocular and both, distance and near', () => {
    checkPd('pd 63', { binocular: 63 });
    checkPd('pd 63 near 60', { binocular: 63 }, { binocular: 60 });
    checkPd('pd near 60', {}, { binocular: 60 });
    checkPd('pd R 31.5 L 31.5 near R 30 L 30', { right: 31.5, left: 31.5 }, { right: 30, left: 30 });
    checkPd('pd R31.5L31.5', { right: 31.5, left: 31.5 });
    checkPd('pd 63 R 31.5 L 31.5', { binocular: 63, right: 31.5, left: 31.5 });
    checkPd('pd both 31.5', { right: 31.5, left: 31.5 });
    checkPd('ipd 63', { binocular: 63 });
    checkPd('cd 63', { binocular: 63 });
  });

  test('near on a line of its own', () => {
    for (const word of ['near-pd', 'npd']) {
      checkPd(`${word} 60`, {}, { binocular: 60 });
      checkPd(`${word} R 30 L 29.5`, {}, { right: 30, left: 29.5 });
    }
  });

  test('two figures in a row: distance and near above 40.5, right and left up to it', () => {
    for (const mark of ['/', ' / ', ', ']) {
      checkTaken(`pd ‹63${mark}60›`, ['slash-pair'], { binocular: 63 }, { binocular: 60 });
      checkTaken(`pd ‹31.5${mark}30›`, ['slash-pair'], { right: 31.5, left: 30 });
      checkTaken(`pd 63 near ‹30${mark}29›`, ['slash-pair'], { binocular: 63 }, { right: 30, left: 29 });
    }
    checkTaken('pd ‹40.5/40.5›', ['slash-pair'], { right: 40.5, left: 40.5 });
    checkTaken('pd ‹41/40.6›', ['slash-pair'], { binocular: 41 }, { binocular: 40.6 });
  });

  test('behind an eye, two figures are that eye’s distance and near', () => {
    const sample = 'pd R ‹31.5/30› L ‹32/30.5›';
    checkTaken(sample, ['slash-pair', 'slash-pair'], { right: 31.5, left: 32 }, { right: 30, left: 30.5 });
  });

  test('pair or decimal? Nothing is taken', () => {
    for (const typed of ['63,60', '63-60', '63 - 60', '63−60', '31,32', '63/31', '31/63', '63/60/57', '63 60 57'])
      checkTold(`pd ‹${typed}›`, ['pair-unclear']);
    expect(read('pd 63,60')).toEqual({ distance: { binocular: UNREADABLE }, near: {} });
    expect(read('pd 63-60')).toEqual({ distance: {}, near: {} });
    checkTold('pd 63 near ‹60/30›', ['pair-unclear']);
    checkTold('pd 63 near R ‹30/29›', ['pair-unclear']);
  });

  test('a comma that can only be a decimal one', () => {
    checkTaken('pd ‹63,5›', ['decimal-comma'], { binocular: 63.5 });
    checkTaken('pd ‹31,50›', ['decimal-comma'], { binocular: 31.5 });
    checkTaken('pd R ‹31,32›', ['decimal-comma'], { right: 31.32 });
  });

  test('a signed value behind near is a power', () => {
    for (const value of ['+1.50', '-1.50', '+ 1.50', '- 1.50']) {
      checkTold(`pd 63 near ‹${value}›`, ['unexpected-text']);
      expect(read(`pd 63 near ${value}`)).toEqual({ distance: { binocular: 63 }, near: { binocular: UNREADABLE } });
    }
    checkTold('pd 63 near R ‹+1.50›', ['unexpected-text']);
  });

  test('a figure too many, and a word without its figure', () => {
    checkTold('pd R 31.5 R ‹30›', ['unexpected-text']);
    checkTold('pd 63 ‹60›', ['unexpected-text']);
    checkTold('pd ‹63/60› near ‹59›', ['slash-pair', 'unexpected-text']);
    checkTold('‹pd›', ['value-missing']);
    checkTold('pd 63 ‹near›', ['value-missing']);
    checkTold('pd ‹R› L 31.5', ['value-missing']);
    checkTold('pd 63 near R 30 ‹L›', ['value-missing']);
  });
});

test('optical centres', () => {
  checkTold('optical-centres R 33 L 32', []);
  expect(read('optical-centres R 33 L 32')).toEqual({ distance: { right: 33, left: 32 } });
  expect(read('ocs 66')).toEqual({ distance: { binocular: 66 } });
});

describe('figures per eye', () => {
  const checkFigures = (line: string, ...entries: readonly unknown[]): void => {
    checkTold(line, []);
    expect(read(line)).toMatchObject({ entries });
  };

  test('for both, or for each', () => {
    checkFigures('height 17', { value: 17 });
    checkFigures('height R 17 L 16.5', { eye: 'R', value: 17 }, { eye: 'L', value: 16.5 });
    checkFigures('base-curve R 4.12 L 4.00', { eye: 'R', value: 4.12 }, { eye: 'L', value: 4 });
    checkFigures('bc plano', { value: 0 });
    checkFigures('blank 70', { value: 70 });
    checkFigures('inset R 2 in L 2', { eye: 'R', value: 2, base: 'in' }, { eye: 'L', value: 2 });
  });

  test('a slash means right and left, whatever the lengths', () => {
    for (const pair of ['17/16.5', '17 16.5', '17, 16.5', '17/45']) checkTold(`height ‹${pair}›`, ['slash-pair']);
    expect(read('height 17/45')).toMatchObject({
      entries: [
        { eye: 'R', value: 17 },
        { eye: 'L', value: 45 },
      ],
    });
    checkTold('height ‹17,18›', ['pair-unclear']);
    checkTold('height ‹17,50›', ['decimal-comma']);
  });

  test('below the datum line', () => {
    checkTold('height 2 below datum', []);
    expect(read('height 2 below datum')).toMatchObject({ entries: [{ value: 2 }], belowDatum: true });
    checkTold('height 2 ‹below›', ['value-missing']);
    checkTold('base-curve 2 ‹below› datum', ['unexpected-text']);
  });

  test('a figure too many, and an eye without its figure', () => {
    checkTold('height R 17 ‹16.5›', ['unexpected-text']);
    checkTold('height ‹17 16› ‹15›', ['slash-pair', 'unexpected-text']);
    checkTold('height ‹R› L 17', ['value-missing']);
    checkTold('height ‹pl›', ['unexpected-text']);
  });
});

test('an answer is no measurement', () => {
  for (const answer of ['ok', 'OK', 'same', 'good', '✓', '✔']) {
    for (const start of [
      'height',
      'height R',
      'pd',
      'pd R',
      'prism R',
      'add R',
      'R',
      'base-curve',
      'thickness R',
      'segment L',
    ])
      checkTold(`${start} ‹${answer}›`, ['unexpected-text']);
    checkTold(`height R 17 L ‹${answer}›`, ['unexpected-text']);
  }
});
