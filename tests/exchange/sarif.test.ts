import { createRequire } from 'node:module';
import Ajv from 'ajv-draft-04';
import type { Log, Result, Run } from 'sarif';
import { describe, expect, test } from 'vitest';
import { sarifWriter, toJson } from '../../exchange';
import { type Analysis, analyse } from '../../orders';
import { analysisOf, examplePaths } from './support/examples';
import { written } from './support/written';

/** SARIF 2.1.0, OASIS, schema rtm.5 as packed in @microsoft/jest-sarif. One of its patterns is none under the `u` flag. */
const schema = createRequire(import.meta.url)('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json');
const isSarif = new Ajv({ strict: false, unicodeRegExp: false, validateFormats: false }).compile(schema);

const examples = examplePaths.map((path) => [path, analysisOf(path)] as const);

const sarif = (files: readonly (readonly [string, Analysis])[]): Log => JSON.parse(written(sarifWriter(), files));
const runOf = (files: readonly (readonly [string, Analysis])[]): Run => sarif(files).runs[0] as Run;
const resultsOf = (text: string, path = 'a.lentil'): Result[] => runOf([[path, analyse(text)]]).results ?? [];

describe('what the schema of SARIF says', () => {
  test.each(examples)('%s', (path, analysis) => {
    isSarif(sarif([[path, analysis]]));
    expect(isSarif.errors).toBeNull();
  });

  test('no file at all', () => {
    isSarif(JSON.parse(sarifWriter().start() + sarifWriter().end()));
    expect(isSarif.errors).toBeNull();
  });
});

// The schema accepts an index that points nowhere.
test('every result points to the rule of its code', () => {
  const { results, tool } = runOf(examples);
  expect(results?.length).toBeGreaterThan(20);
  for (const { ruleId, ruleIndex } of results ?? []) expect(tool.driver.rules?.[ruleIndex as number]?.id).toBe(ruleId);
  const codes = tool.driver.rules?.map(({ id }) => id);
  expect(codes).toEqual([...new Set(codes)]);
});

test('tells what the JSON tells, counted from one', () => {
  const [path, analysis] = examples.find(([name]) => name.includes('telephone')) as (typeof examples)[number];
  const { findings } = toJson(analysis, path);
  const results = runOf([[path, analysis]]).results ?? [];
  expect(results.map(({ message }) => message.text)).toEqual(findings.map(({ message }) => message));
  expect(results.map(({ locations }) => locations?.[0]?.physicalLocation?.region)).toEqual(
    findings.map(({ range: { start, end } }) => ({
      startLine: start.line + 1,
      startColumn: start.character + 1,
      endLine: end.line + 1,
      endColumn: end.character + 1,
    })),
  );
  expect(results.filter(({ fixes }) => fixes).length).toBe(findings.filter(({ fixes }) => fixes.length > 0).length);
});

test('there is no level below a note', () => {
  const levels = (runOf(examples).results ?? []).map(({ level, properties }) => [properties?.level, level]);
  expect(new Set(levels.map(String))).toEqual(new Set(['error,error', 'warning,warning', 'info,note', 'hint,note']));
});

test('fingerprints stay while lines move, and no two are alike', () => {
  const prints = (text: string) => resultsOf(text).map(({ partialFingerprints }) => partialFingerprints);
  const text = 'order A\n  R -450\n  L -450\n  again R -450\norder B\n  R -450\n';
  expect(prints(`# moved\n\n${text}`)).toEqual(prints(text));
  expect(new Set(prints(text).map((one) => JSON.stringify(one))).size).toBe(prints(text).length);
});

test.each([
  ['a b/ö#1.lentil', 'a%20b/%C3%B6%231.lentil'],
  ['c:d.lentil', 'c%3Ad.lentil'],
  ['/srv/a.lentil', 'file:///srv/a.lentil'],
  ['-', 'stdin'],
])('%s is addressed as %s', (path, uri) => {
  const [result] = resultsOf('order A\n  R -450\n', path);
  expect(result?.locations?.[0]?.physicalLocation?.artifactLocation?.uri).toBe(uri);
});

test('a file that cannot be read is a notification, and the run no success', () => {
  const [invocation] = runOf([]).invocations ?? [];
  expect(invocation?.executionSuccessful).toBe(false);
  expect(invocation?.toolExecutionNotifications?.[0]?.message.text).toBe('no permission to read it');
});
