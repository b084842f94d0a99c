import { type Browser, chromium } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { findBrowser } from '../../scripts/workbench/needs.mjs';

/** Whether tests that need a browser are left out; on a build machine a missing browser is a failure. */
export const withoutBrowser = findBrowser() === undefined && process.env.CI === undefined;

/** A browser of its own for one test; it is closed when the test has ended. */
export async function browserForTest(): Promise<Browser> {
  const browser = await launchBrowser();
  onTestFinished(() => browser.close());
  return browser;
}

export function launchBrowser(): Promise<Browser> {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error('no browser was found');
  const quiet = ['--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update'];
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--disable-sync', ...quiet] });
}
