import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { XMLParser } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { junitWriter } from '../../exchange';
import { type Analysis, analyse } from '../../orders';
import { analysisOf, examplePaths, root } from './support/examples';
import { written } from './support/written';

const schema = readFileSync(join(root, 'tests/exchange/support/junit.xsd'), 'utf8');
const examples = examplePaths.map((path) => [path, analysisOf(path)] as const);

interface Outcome {
  readonly message: string;
  readonly type?: string;
  readonly '#text'?: string;
}
interface Case {
  readonly classname: string;
  readonly name: string;
  readonly failure?: Outcome[];
  readonly error?: Outcome[];
  readonly skipped?: Outcome[];
}
interface Suite {
  readonly name: string;
  readonly testcase?: Case[];
  readonly tests: string;
  readonly failures: string;
  readonly errors: string;
  readonly skipped: string;
}

const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '',
  isArray: (name, _path, _isLeaf, isAttribute) =>
    !isAttribute && ['testsuite', 'testcase', 'failure', 'error', 'skipped'].includes(name),
});

const suitesOf = (xml: string): Suite[] => parser.parse(xml).testsuites.testsuite ?? [];

/** The cases of one text, by `order: name`. */
function casesOf(text: string, strict = false): Map<string, Case> {
  const [suite] = suitesOf(written(junitWriter(strict), [['a.lentil', analyse(text)]]));
  return new Map((suite?.testcase ?? []).map((one) => [`${one.classname}: ${one.name}`, one]));
}

/** xmllint of libxml2 reads it and holds it to the schema. */
async function checkRead(files: readonly (readonly [string, Analysis])[]): Promise<void> {
  const { errors } = await validateXML({
    xml: [{ fileName: 'junit.xml', contents: written(junitWriter(), files) }],
    schema: [schema],
  });
  expect(errors).toEqual([]);
}

describe('xmllint reads', () => {
  test('the examples', () => checkRead(examples));

  test.each([
    'order <&">\n  R -450\n',
    'order "a\u0001\ud800]]>"\n  R -450\n',
    'order ü\u2028😀\n  tint brown 80\n  R -4.50\u0000\n',
    '',
  ])('%j', (text) => checkRead([['<a>&"b".lentil', analyse(text)]]));
});

test('the counts of a suite are those of its cases', () => {
  for (const { testcase = [], ...counts } of suitesOf(written(junitWriter(), examples))) {
    const having = (what: 'failure' | 'error' | 'skipped') => testcase.filter((one) => one[what] !== undefined).length;
    expect(counts).toMatchObject({
      tests: `${testcase.length}`,
      failures: `${having('failure')}`,
      errors: `${having('error')}`,
      skipped: `${having('skipped')}`,
    });
  }
});

test('a file fails where it holds an error, and nowhere else', () => {
  for (const [path, analysis] of examples) {
    const [suite] = suitesOf(written(junitWriter(), [[path, analysis]]));
    const hasError = analysis.blocks.some(({ findings }) => findings.some(({ level }) => level === 'error'));
    expect(suite?.failures !== '0', path).toBe(hasError);
  }
});

const READ = `standard z80.1-2015
order A
  R  +1.00 -1.50 x 010
  L  +0.75 -1.25 x 170
  pd 64
  reading 2026-11-23
    R  +1.02 -1.48 x 014
    L  +0.74 -1.26 x 171
    pd 64.5
`;

test('a measure outside its limit fails with its code and sentence; one inside passes; one not read is skipped', () => {
  const cases = casesOf(READ);
  expect(cases.get('A: R axis')?.failure?.[0]).toMatchObject({
    type: 'axis-outside',
    message: expect.stringContaining('limit 3°'),
  });
  expect(cases.get('A: L axis')?.failure).toBeUndefined();
  expect(cases.get('A: vertical prism of the pair')?.skipped?.[0]?.message).toBe('not read');
});

test('what a person has decided on is skipped with the sentence that says so', () => {
  const decided = casesOf(`${READ}    decided accept by MT "worn like this before"\n`).get('A: R axis');
  expect(decided?.failure).toBeUndefined();
  expect(decided?.skipped?.[0]?.message).toContain('A person has decided on it.');
});

test('the writing of an order is one case, and warnings fail it only when asked', () => {
  const text = 'order A\n  R -450\n  L -4.50\n  pd 63\n  design single-vision\n';
  expect(casesOf(text).get('A: findings')?.failure).toBeUndefined();
  expect(casesOf(text, true).get('A: findings')?.failure?.[0]).toMatchObject({
    type: 'point-missing',
    '#text': expect.stringContaining('a.lentil:2:5'),
  });
});

test('an order without a reading is skipped', () => {
  expect(casesOf('order A\n  R -4.50\n  L -4.50\n').get('A: reading')?.skipped).toHaveLength(1);
});

test('a block that is no order is mentioned only when something is wrong with it', () => {
  expect([...casesOf('instrument FOC-A\n  kind manual focimeter\n').keys()]).toEqual([]);
  expect([...casesOf('ordr A\n  R -4.50\n').keys()]).toEqual(['a.lentil: findings']);
});

test('a file that cannot be read is an error', () => {
  const suite = suitesOf(written(junitWriter(), [])).at(-1);
  expect(suite?.testcase?.[0]?.error?.[0]?.message).toBe('no permission to read it');
});
