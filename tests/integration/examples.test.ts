import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { parse } from 'yaml';
import { format } from '../../orders';
import { command, root } from '../cli/support/command';
import { BAD, folderWith, GOOD } from '../cli/support/folder';
import { browserForTest, withoutBrowser } from '../support/browser';

const examples = join(root, 'examples/integration');
if (!existsSync(join(root, 'dist/lib/index.js'))) throw new Error('there is no library to use; run npm run build');

test('the Node script lists what has to be made again', () => {
  const folder = folderWith({ 'a.lentil': GOOD, 'b.lentil': BAD });
  const files = ['a.lentil', 'b.lentil'].map((name) => join(folder, name));
  const script = join(examples, 'rejects.mjs');
  expect(execFileSync(process.execPath, [script, ...files], { encoding: 'utf8' })).toBe('TT-2: R axis\n');
});

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript' };

/** The address under which the files of the project are served until the test has ended. */
async function served(): Promise<string> {
  const server = createServer(({ url = '' }, response) => {
    const path = join(root, new URL(url, 'http://localhost').pathname);
    const type = TYPES[extname(path)];
    if (type && existsSync(path)) response.setHeader('content-type', type).end(readFileSync(path));
    else response.writeHead(404).end();
  });
  onTestFinished(() => void server.close());
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

test.skipIf(withoutBrowser)('the page judges while an order is typed', async () => {
  const page = await (await browserForTest()).newPage();
  const errors: string[] = [];
  page.on('pageerror', ({ message }) => errors.push(message));
  await page.goto(`${await served()}/examples/integration/page.html`);
  await expect.poll(() => page.locator('#verdict').textContent()).toBe('QL-2001: accept');
  const typed = await page.locator('#order').inputValue();
  await page.locator('#order').fill(typed.replace('-2.00\n    pd', '+2.00\n    pd'));
  await expect.poll(() => page.locator('#verdict').textContent()).toBe('QL-2001: reject');
  expect(await page.locator('#findings').textContent()).toContain('L power read +2.00, ordered -2.00');
  expect(errors).toEqual([]);
});

describe('the workflow', () => {
  const { jobs } = parse(readFileSync(join(examples, 'check-orders.yml'), 'utf8'));
  const steps: readonly { readonly name: string; readonly run: string }[] = jobs.check.steps.filter(
    ({ run }: { run?: string }) => run,
  );

  /** Runs the commands of the workflow over these orders; gives their statuses and what was found. */
  function run(orders: Readonly<Record<string, string>>) {
    const cwd = folderWith({ ...orders, 'bin/npx': '' });
    // There is no registry to take the package from, so that `npx` is one that runs the command at hand.
    symlinkSync(command, join(cwd, 'bin/lentil'));
    const npx = folderWith({ npx: '#!/bin/sh\nexec "$@"\n' });
    const PATH = `${npx}:${join(cwd, 'bin')}:${process.env.PATH}`;
    execFileSync('chmod', ['+x', join(npx, 'npx')]);
    const statuses = steps.map(
      (step) => spawnSync('bash', ['-eo', 'pipefail', '-c', step.run], { cwd, env: { ...process.env, PATH } }).status,
    );
    const findings = JSON.parse(readFileSync(join(cwd, 'findings.sarif'), 'utf8'));
    return { statuses, codes: findings.runs[0].results.map(({ ruleId }: { ruleId: string }) => ruleId) };
  }

  test('passes a folder of good orders', () => {
    expect(run({ 'orders/a.lentil': format(GOOD) })).toEqual({ statuses: [0, 0], codes: [] });
  });

  test('fails where a lens is outside and says so beside the line', () => {
    const { statuses, codes } = run({ 'orders/a.lentil': format(GOOD), 'orders/b.lentil': format(BAD) });
    expect(statuses).toEqual([0, 1]);
    expect(codes).toContain('axis-outside');
  });

  test('fails where an order is not laid out', () => {
    expect(run({ 'orders/a.lentil': format(GOOD).replaceAll('  ', ' ') }).statuses[0]).toBe(1);
  });
});
