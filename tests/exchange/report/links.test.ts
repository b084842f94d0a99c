/** Rows of the page that stand for an order lead to it where there is something to open it. */
import { describe, expect, test } from 'vitest';
import { reportInHtml } from '../../../exchange';
import { reportParts } from '../../../exchange/report/html/page';
import { BENCH, yearOfWork } from '../../support/year-of-work';
import { reportOf } from './support';

const { files } = yearOfWork(4);
const report = reportOf(files, { bench: BENCH });
const orders = [...report.deviations.flatMap(({ worst }) => worst), ...report.open.oldest];

const linksIn = (html: string): readonly string[] =>
  [...html.matchAll(/<a class="order" href="([^"]*)">/g)].map(([, address]) => address as string);

describe('in a view', () => {
  test('every row of an order has a link, and the file at that line has that order', () => {
    const { body } = reportParts(report, ({ path, line }) => `${path}#${line}`);
    expect(orders.length).toBeGreaterThan(10);
    expect(linksIn(body)).toEqual(orders.map(({ path, line }) => `${path}#${line}`));
    for (const { order, path, line } of orders)
      expect(files[path]?.split('\n')[line - 1]).toMatch(new RegExp(`^order ${order}\\b`));
  });

  test('an order that nothing can open stands as text', () => {
    const { body } = reportParts(report, () => null);
    expect(linksIn(body)).toEqual([]);
    expect(body.split(`<code>${orders[0]?.path}:${orders[0]?.line}</code>`).length).toBeGreaterThan(1);
  });

  test('an address cannot break out of its place', () => {
    const { body } = reportParts(report, () => '"><script>alert(1)</script>');
    expect(body).not.toContain('<script');
    expect(linksIn(body)[0]).toBe('&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;');
  });

  test('nothing in the body needs a style or a script of its own place, which the view forbids', () => {
    const { body, title } = reportParts(report, () => 'file:///a.lentil#L1');
    expect(body).not.toMatch(/\sstyle=|<style|<script|\son[a-z]+=/i);
    expect(title).toBe(`Quality report, ${report.scope.from} to ${report.scope.to}`);
  });
});

test('the page by itself has the same body without these links', () => {
  const page = reportInHtml(report);
  expect(linksIn(page)).toEqual([]);
  const { body, style } = reportParts(report, () => null);
  expect(page).toContain(`<body>\n${body}</body>`);
  expect(page).toContain(`<style>${style}</style>`);
});
