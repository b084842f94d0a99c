import { expect, test } from 'vitest';
import { type JobSheet, jobPicture, jobSheet, sheetPage } from '../../orders';
import { jobSheetAt, type SheetForm } from '../../server/features/job-sheet';
import { orderStatus } from '../../server/features/order-status';
import { BIFOCAL, sample } from './support/sample';

function checkSheet(marked: string, as?: SheetForm) {
  const { snapshot, position } = sample(marked);
  return jobSheetAt(snapshot, { textDocument: { uri: snapshot.uri }, position, ...(as ? { as } : {}) });
}

/** The same order as the library shows it. */
function fromLibrary(): JobSheet & { readonly page: string; readonly picture: string } {
  const { snapshot } = sample(BIFOCAL);
  const at = snapshot.document.blocks.findIndex(({ kind }) => kind === 'order');
  const { order, evaluation, block } = snapshot.block(at);
  if (!order) throw new Error('no order');
  const of = { order, evaluation, lines: block.lines.map(({ text }) => text) };
  return { ...jobSheet(of), page: sheetPage(of), picture: jobPicture(order, evaluation) };
}

const inReading = BIFOCAL.replace('pd        63.5', 'pd        |63.5');

test('the sheet is that of the order under the cursor, the same as the library makes', () => {
  const { title, html, page, picture } = fromLibrary();
  expect(checkSheet(inReading)).toMatchObject({ title, text: html });
  expect(checkSheet(inReading, 'page')?.text).toBe(page);
  expect(checkSheet(inReading, 'picture')?.text).toBe(picture);
});

test.each(['|standard z80.1-2015\n\norder A\n', 'instrument F\n  reads-to |0.125\n', '|'])(
  'outside of orders there is none: %j',
  (text) => {
    expect(checkSheet(text)).toBeNull();
  },
);

test('two orders of one file have each their own', () => {
  expect(checkSheet('order A\n  both -1|.00\norder B\n  both -2.00\n')?.title).toBe('Job A');
  expect(checkSheet('order A\n  both -1.00\norder B\n  both -2|.00\n')?.title).toBe('Job B');
});

test('the status names the verdict and the measure that uses most of its limit', () => {
  const { snapshot, position } = sample(inReading);
  const status = orderStatus(snapshot, { textDocument: { uri: snapshot.uri }, position });
  expect(status).toMatchObject({
    name: 'QL-1042',
    verdict: 'accept',
    words: 'accept, near the limit; z80.1-2015, simple acceptance',
  });
  // The right cylinder is 0.125 off a limit of 0.13: 96 percent.
  expect(status?.measures).toContain('R cylinder, 96 %');
});
