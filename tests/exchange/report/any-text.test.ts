/** Whatever a folder holds gives a report: nothing is thrown, and no figure is none. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { reportInHtml } from '../../../exchange';
import { anyText, holds, seed } from '../../grammar/support/random-text';
import { BENCH, yearOfWork } from '../../support/year-of-work';
import { reportOf } from './support';

function checkReport(texts: readonly string[]): void {
  const files = Object.fromEntries(texts.map((text, at) => [`${at}.lentil`, text]));
  const page = reportInHtml(reportOf(files, { bench: BENCH, standard: 'z80.1-2015' }));
  expect(page).toMatch(/<\/html>\n$/);
  expect(page).not.toMatch(/NaN|Infinity|undefined|\[object/);
}

test(`any texts (seed ${seed})`, () => {
  holds(150, fc.array(anyText, { maxLength: 4 }), checkReport);
});

test(`a year of work with pieces cut out (seed ${seed})`, () => {
  const texts = Object.values(yearOfWork(2).files);
  const cut = fc
    .tuple(fc.constantFrom(...texts), fc.nat(1500), fc.nat(300))
    .map(([text, from, length]) => text.slice(0, from) + text.slice(from + length));
  holds(80, fc.array(cut, { minLength: 1, maxLength: 6 }), checkReport);
});
