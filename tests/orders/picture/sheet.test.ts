import { describe, expect, test } from 'vitest';
import { analyse } from '../../../orders';
import { jobPicture, jobSheet, sheetPage } from '../../../orders/picture';
import { analysisOf, examplePaths } from '../../exchange/support/examples';
import { only as job, ordered, read } from '../../support/job';
import { all, drawn, firstOrder, only, pictureOf, sheetOf, withClass } from './support/drawn';

const sheet = (text: string) => jobSheet(sheetOf(firstOrder(text)));

const examples = examplePaths
  .map((path) => [path, analysisOf(path).blocks.filter(({ order }) => order !== null)] as const)
  .filter(([, orders]) => orders.length > 0);

describe.each(examples)('%s', (_, orders) => {
  test('gives well-formed pictures and sheets with figures only', () => {
    for (const one of orders) {
      const of = sheetOf(one);
      for (const markup of [jobPicture(of.order, of.evaluation), jobSheet(of).html]) {
        const elements = all(drawn(markup));
        const values = elements.flatMap(({ attributes }) => Object.values(attributes));
        expect(values.filter((value) => /NaN|Infinity|undefined|null/.test(value))).toEqual([]);
        const ids = elements.flatMap(({ attributes: { id } }) => id ?? []);
        expect(new Set(ids).size).toBe(ids.length);
      }
      expect(jobPicture(of.order, of.evaluation)).toBe(jobPicture(of.order, of.evaluation));
    }
  });
});

describe('text of an order', () => {
  const name = '"<img src=x onerror=1>&""]]>"';

  test('is never markup', () => {
    const { html } = sheet(ordered(`order ${name}`));
    expect(html).not.toContain('<img');
    expect(only(drawn(html), 'kind').text).toBe('Job sheet');
    expect(all(drawn(html)).some(({ name: tag }) => tag === 'img')).toBe(false);
    expect(sheetPage(sheetOf(firstOrder(ordered(`order ${name}`))))).not.toContain('<img');
  });

  test.each(['\u0000', '\u001b', '\ud800', '\uffff'])('may hold what XML forbids: %j', (odd) => {
    expect(() => drawn(sheet(`order A\n  note a${odd}b\n`).html)).not.toThrow();
  });

  test('stands on the sheet as it was typed, without the comment of the next order', () => {
    const { html } = sheet('order A\n  both -2.00\n  # mine\n  note x\n\n# Of the next one.\norder B\n');
    const written = all(drawn(html)).find(({ name: tag }) => tag === 'pre')?.text;
    expect(written).toBe('order A\n  both -2.00\n  # mine\n  note x');
  });
});

describe('what is missing', () => {
  test.each([
    ['no frame', job('R -2.00', 'L -2.00', 'pd 63'), /No frame given/],
    ['half a frame', job('both -2.00', 'pd 63', 'frame A 52 DBL 18'), /lacks B/],
    ['no effective diameter', job('both -2.00', 'pd 63', 'frame A 52 B 36 DBL 18'), /No ED given/],
    ['no PD', job('both -2.00', 'frame A 52 B 36 DBL 18 ED 55'), /No PD given/],
    ['no height', job('both -2.00', 'pd 63', 'frame A 52 B 36 DBL 18 ED 55'), /No height given/],
    ['neither frame nor PD', job('both -2.00'), /Neither a whole frame nor a PD/],
    ['no reading', ordered(), /No reading has been taken/],
  ])('is said: %s', (_, text, words) => {
    expect(sheet(text).html).toMatch(words);
  });

  test('is not said of an order that says everything', () => {
    expect(sheet(read()).html).not.toMatch(/No (?:frame|ED|PD|height|reading)/);
  });

  test('leaves out a lens that is not ordered', () => {
    const picture = pictureOf(job('R -2.00', 'make R', 'pd 63', 'frame A 52 B 36 DBL 18 ED 55'));
    expect(withClass(picture, 'mark', 'ordered', 'R')).toHaveLength(1);
    expect(withClass(picture, 'mark', 'ordered', 'L')).toHaveLength(0);
    expect(withClass(picture, 'eye').map(({ text }) => text)).toContain('L not ordered');
  });

  test('is no reason to fail on any order', () => {
    for (const text of ['order\n', 'order A\n  R\n', 'order A\n  frame A 1 B 999 DBL 0 ED 3\n  both -2.00\n  pd 63\n'])
      for (const one of analyse(text).blocks)
        if (one.order) expect(() => drawn(jobSheet(sheetOf(one)).html)).not.toThrow();
  });
});

describe('a sheet', () => {
  const wrong = sheet(read('R -4.50 -0.75 x 030'));

  test('says verdict and outcomes in words beside their signs', () => {
    const page = drawn(wrong.html);
    expect(only(page, 'verdict', 'reject').inner.map(({ text }) => text)).toContain('reject');
    expect(wrong.summary).toMatch(/^Job QL-1042: reject: R axis 8° \(limit 5°\)/);
    expect(withClass(page, 'outcome').filter(({ text }) => text.includes('fail'))).toHaveLength(1);
  });

  test('names every picture for those who cannot see it', () => {
    const pictures = all(drawn(wrong.html)).filter(({ attributes }) => attributes.role === 'img' && attributes.viewBox);
    expect(pictures.length).toBeGreaterThan(10);
    for (const picture of pictures) {
      const [title, description] = picture.inner;
      expect(title?.name === 'title' && title.text.length > 0).toBe(true);
      expect(description?.name === 'desc' && description.text.length > 0).toBe(true);
      expect(picture.attributes['aria-labelledby']).toBe(`${title?.attributes.id} ${description?.attributes.id}`);
    }
  });

  test('says from where the wearer is seen, on what it rests, and the cautions', () => {
    expect(wrong.html).toContain('R is on the left');
    expect(wrong.html).toContain('not a medical device');
    expect(wrong.html).toMatch(/Held against ANSI Z80\.1/);
  });

  test('is a page without script, style attributes or any address', () => {
    const page = sheetPage(sheetOf(firstOrder(read())));
    expect(page).toContain("default-src 'none'");
    expect(page).not.toMatch(/<script|\sstyle=|\son\w+=|(?:src|href)=|url\((?!#)/);
    expect(page.match(/https?:[^"]+/g)?.every((address) => address === 'http://www.w3.org/2000/svg')).toBe(true);
  });
});
