import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './project.mjs';

/** Prints what the last test run came to as one line: `N passed, N failed`, and `, N skipped` when there are any. */
const report = JSON.parse(readFileSync(join(root, 'test-output', 'results.json'), 'utf8'));

// A file that could not be loaded has no test of its own that could fail, so it counts as one failure itself.
const unloadable = report.testResults.filter(
  ({ status, assertionResults }) => status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
);
const failed = report.numFailedTests + unloadable.length;
const skipped = report.numPendingTests + report.numTodoTests;

console.log(`${report.numPassedTests} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
