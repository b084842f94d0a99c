import { expect, test } from 'vitest';
import type { PublishedAnswer } from '../published/answer';
import * as asWorn from '../published/as-worn';
import * as axisError from '../published/axis-error';
import * as focimeter from '../published/focimeter';
import * as layout from '../published/layout';
import * as magnification from '../published/magnification';
import * as obliqueMeridian from '../published/oblique-meridian';
import * as prism from '../published/prism';
import * as segments from '../published/segments';
import { publishedSources } from '../published/sources';
import * as surfaces from '../published/surfaces';
import * as thickLens from '../published/thick-lens';
import * as transposition from '../published/transposition';
import * as vertex from '../published/vertex';

const files: readonly object[] = [
  transposition,
  obliqueMeridian,
  axisError,
  prism,
  segments,
  vertex,
  thickLens,
  surfaces,
  layout,
  asWorn,
  magnification,
  focimeter,
];
const answers = files.flatMap((file) => Object.values(file).flat()) as PublishedAnswer<unknown>[];

test('all 216 printed answers are here, each once', () => {
  expect(answers).toHaveLength(216);
  expect(new Set(answers.map(({ id }) => id)).size).toBe(216);
});

test('195 of them come from textbooks, journals and courses, 21 from societies and continuing education', () => {
  const grades = answers.map(({ source }) => publishedSources[source].grade);
  expect(grades.filter((grade) => grade === 'A')).toHaveLength(195);
  expect(grades.filter((grade) => grade === 'B')).toHaveLength(21);
});

test('every source listed is used', () => {
  const used = new Set<string>(answers.map(({ source }) => source));
  expect(Object.keys(publishedSources).filter((key) => !used.has(key))).toEqual([]);
});
