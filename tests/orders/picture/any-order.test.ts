import { describe, expect, test } from 'vitest';
import { analyse } from '../../../orders';
import { jobPicture, jobSheet } from '../../../orders/picture';
import { anyText } from '../../grammar/support/random-text';
import { orderText } from '../computed/support/figures';
import { holds, linesOf, mirrored, pairs, type RandomPair, seed } from '../computed/support/random-orders';
import { all, boxOf, type Drawn, drawn, pictureOf, placeOf, sheetOf, withClass } from './support/drawn';

/** Reads every picture and sheet of a text as XML, and gives back all values of attributes. */
const valuesOf = (text: string): readonly string[] =>
  analyse(text).blocks.flatMap((one) => {
    if (!one.order) return [];
    const of = sheetOf(one);
    return [jobPicture(of.order, of.evaluation), jobSheet(of).html].flatMap((markup) =>
      all(drawn(markup)).flatMap(({ attributes }) => Object.values(attributes)),
    );
  });

/** Where the marks of an eye stand from the middle of its box: towards the nose, and upwards. */
const placesOf = (picture: Drawn, eye: 'R' | 'L') => {
  const box = boxOf(picture, eye);
  return [...withClass(picture, 'mark', eye), ...withClass(picture, 'segment', eye)].map((mark) => {
    const { x, y } = placeOf(mark);
    return [(eye === 'R' ? x - box.middle : box.middle - x).toFixed(1), (box.level - y).toFixed(1)];
  });
};

describe(`random orders, seed ${seed}`, () => {
  test('any text at all gives well-formed drawings', () => {
    holds(60, anyText, (text) => {
      expect(valuesOf(`order A\n${text}`).filter((one) => /NaN|Infinity|undefined/.test(one))).toEqual([]);
    });
  });

  test('any order gives figures only', () => {
    holds(60, pairs, (pair) => {
      const values = valuesOf(orderText(...linesOf(pair)));
      expect(values.length).toBeGreaterThan(50);
      expect(values.filter((one) => /NaN|Infinity|undefined/.test(one))).toEqual([]);
    });
  });

  test('a wearer in the mirror is drawn mirrored', () => {
    holds(40, pairs, (pair) => {
      const [picture, other] = [pair, mirrored(pair)].map((one: RandomPair) =>
        pictureOf(orderText(...linesOf(one))),
      ) as [Drawn, Drawn];
      if (withClass(picture, 'box').length < 2) return;
      expect(placesOf(other, 'L')).toEqual(placesOf(picture, 'R'));
      expect(placesOf(other, 'R')).toEqual(placesOf(picture, 'L'));
    });
  });
});
