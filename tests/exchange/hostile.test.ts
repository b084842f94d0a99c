import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCsv, fromDicomJson, fromFhir, lossInWords, toDicomJson, toFhir } from '../../exchange';
import { analyse } from '../../orders';
import { holds, seed } from '../grammar/support/random-text';
import { GLASSES } from './support/fhir-examples';

/** Generous on a slow machine, and far below what work that grows with the square of the text would take. */
const SOON = 20_000;

const deep = (depth: number): string => `${'{"a":['.repeat(depth)}${']}'.repeat(depth)}`;

describe('a text that is meant to harm is answered soon and in a few words', () => {
  test.each([
    ['nothing', '', 'it is not JSON'],
    ['half an object', '{ "resourceType": "VisionPrescription", ', 'it is not JSON'],
    ['a line in the middle', '{\n"a": 1,\n"b": ?\n}', 'it is not JSON (line 3)'],
    ['a figure with a plus', GLASSES.replace('-2.00', '+2.00'), 'it is not JSON'],
    [
      'a key twice',
      '{\n"status": "active",\n"status": "draft" }',
      'the key “status” stands twice in one object (line 3)',
    ],
    ['a prototype', '{ "__proto__": { "eye": "right" } }', 'the key “__proto__” is not one that data has'],
    ['a hidden prototype', '{ "\\u005f_proto__": 1 }', 'the key “__proto__” is not one that data has'],
    ['a constructor', '[{ "constructor": { "prototype": 1 } }]', 'the key “constructor” is not one that data has'],
    ['deep nesting', deep(100), 'it nests deeper than 64 levels'],
    ['very deep nesting', '['.repeat(10_000_000), 'it nests deeper than 64 levels'],
    [
      '100 million characters',
      ' '.repeat(100_000_000),
      'it is larger than 32 million characters; bring it in in parts',
    ],
  ])('%s', (_, text, why) => {
    for (const read of [fromFhir, fromDicomJson]) {
      const start = performance.now();
      const { result, refused } = read(text);
      expect(result).toBe('');
      expect(refused[0]?.message.startsWith(why), refused[0]?.message).toBe(true);
      expect(performance.now() - start).toBeLessThan(SOON);
    }
  });

  test('nothing of the language is changed by it', () => {
    fromFhir('{ "resourceType": "VisionPrescription", "__proto__": { "polluted": true } }');
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test('as many elements as fit in are read, told or refused', () => {
    const lenses = Array.from({ length: 100_000 }, () => '{ "eye": "right", "sphere": 1 }').join();
    const { refused } = fromFhir(`{ "resourceType": "VisionPrescription", "lensSpecification": [${lenses}] }`);
    expect(refused).toEqual([{ message: 'the right eye is specified twice', where: null }]);
  });

  test(`any JSON and any text is answered, seed ${seed}`, () => {
    holds(500, fc.oneof(fc.json(), fc.string()), (text) => {
      expect(fromFhir(text).result).toBe('');
    });
  });

  test(`a good resource with a part exchanged is taken, told or refused, seed ${seed}`, () => {
    const good = JSON.parse(GLASSES);
    holds(
      500,
      fc.constantFrom(...Object.keys(good), ...Object.keys(good.lensSpecification[1])),
      fc.jsonValue(),
      (key, value) => {
        const spoilt = structuredClone(good);
        if (key in good) spoilt[key] = value;
        else spoilt.lensSpecification[1][key] = value;
        const { result, refused } = fromFhir(JSON.stringify(spoilt));
        expect(result === '' || refused.length === 0).toBe(true);
      },
    );
  });
});

/** Time of a piece of work over its size, for two sizes: work that grows with the square takes eight times as long. */
function checkSteady(work: (size: number) => void, small: number): void {
  const time = (size: number): number => {
    const start = performance.now();
    work(size);
    return performance.now() - start;
  };
  time(small);
  const [short, long] = [time(small), time(small * 8)];
  // Eight times the work and a lot of patience; its square would be sixty-four times.
  expect(long).toBeLessThan(Math.max(short, 20) * 32);
}

describe('work grows with the size of a file and not with its square', () => {
  const many = (size: number, make: (at: number) => string, parting = '\n'): string =>
    Array.from({ length: size }, (_, at) => make(at)).join(parting);

  test.each([
    ['repeats in a table', (size: number) => fromCsv(`order,reading,eye,sphere\n${many(size, () => 'T1,1,R,-1')}`)],
    ['notes in a table', (size: number) => fromCsv(`order,note\n${many(size, (at) => `T1,n${at}`)}`)],
    [
      'notes in a prescription',
      (size: number) =>
        fromFhir(
          `{ "resourceType": "VisionPrescription", "lensSpecification": [{ "eye": "right", "sphere": 1, "note": [${many(size, (at) => `{ "text": "${at}" }`, ',')}] }] }`,
        ),
    ],
    [
      'repeats in DICOM',
      (size: number) => {
        const set = JSON.stringify(
          toDicomJson(analyse('order T1\n  reading 2026-11-24 14:30\n    R -1.00\n')).result[0],
        );
        return fromDicomJson(`[${many(size, () => set, ',')}]`);
      },
    ],
    [
      'readings that go out',
      (size: number) => {
        const analysis = analyse(
          `order T1\n  R -1.00\n${many(size, () => '  reading 2026-11-24 14:30\n    R -1.00\n    note "x"')}`,
        );
        return [toFhir(analysis), toDicomJson(analysis)];
      },
    ],
  ])('%s', (_, work) => checkSteady(work, 150));
});

test('a loss is told with its place, what it is and why', () => {
  const { losses } = toFhir(analyse('order A\n  both -2.00\n  supply uncut\n'));
  expect(losses.map(lossInWords)).toEqual(['line 3, A: supply uncut: there is no place for it']);
});
