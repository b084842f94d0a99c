import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar';
import { checkTold, read } from './support/check-told';

const checkEntries = (line: string, ...entries: readonly unknown[]): void => {
  checkTold(line, []);
  expect(read(line)).toEqual({ entries });
};

describe('design', () => {
  test.each([
    ['single-vision', { type: 'single-vision' }],
    ['single-vision near', { type: 'single-vision', use: 'near' }],
    ['single-vision distance', { type: 'single-vision', use: 'distance' }],
    ['single-vision intermediate +1.25', { type: 'single-vision', use: 'intermediate', intermediate: 1.25 }],
    ['bifocal flat-top 28', { type: 'bifocal', shape: 'flat-top', width: 28 }],
    ['bifocal round 22', { type: 'bifocal', shape: 'round', width: 22 }],
    ['bifocal curve-top 28', { type: 'bifocal', shape: 'curve-top', width: 28 }],
    ['bifocal full-width', { type: 'bifocal', shape: 'full-width' }],
    ['trifocal flat-top 7x28', { type: 'trifocal', shape: 'flat-top', depth: 7, width: 28 }],
    [
      'trifocal flat-top 7 x 28 intermediate +1.00',
      { type: 'trifocal', shape: 'flat-top', depth: 7, width: 28, intermediate: 1 },
    ],
    ['double flat-top 28 gap 13', { type: 'double', shape: 'flat-top', width: 28, gap: 13 }],
    ['progressive corridor 14', { type: 'progressive', corridor: 14 }],
    ['office degression 1.25 working 60', { type: 'office', degression: 1.25, working: 60 }],
  ])('%s', (typed, value) => {
    checkEntries(`design ${typed}`, { value });
  });

  test('trade spellings', () => {
    const flat = { value: { type: 'bifocal', shape: 'flat-top', width: 28 } };
    for (const typed of ['FT28', 'ft 28', 'ST28', 'ST-28', 'D28', 'D 28', 'd-28', 'flat-top 28', 'D-seg 28'])
      checkEntries(`design ${typed}`, flat);
    for (const typed of ['R22', 'r22', 'R-22', 'round 22', 'RD22', 'RD-22'])
      checkEntries(`design ${typed}`, { value: { type: 'bifocal', shape: 'round', width: 22 } });
    for (const typed of ['CT28', 'ct 28', 'curve-top 28'])
      checkEntries(`design ${typed}`, { value: { type: 'bifocal', shape: 'curve-top', width: 28 } });
    for (const typed of ['7x28', '7 X 28'])
      checkEntries(`design ${typed}`, { value: { type: 'trifocal', shape: 'flat-top', depth: 7, width: 28 } });
    checkEntries('design executive', { value: { type: 'bifocal', shape: 'full-width' } });
    checkEntries('design bifocal R22', { value: { type: 'bifocal', shape: 'round', width: 22 } });
    for (const typed of ['PAL', 'varifocal', 'progressive'])
      checkEntries(`lens-type ${typed}`, { value: { type: 'progressive' } });
    for (const typed of ['SV', 'single-vision']) checkEntries(`type ${typed}`, { value: { type: 'single-vision' } });
    checkEntries('design bifocal executive-style', { value: { type: 'bifocal', shape: 'full-width' } });
  });

  test('trade spellings by themselves are a design', () => {
    const bare: readonly (readonly [string, unknown])[] = [
      ...['FT28', 'ft 28', 'D28', 'D 28', 'ST-28', 'flat-top 28'].map(
        (typed) => [typed, { type: 'bifocal', shape: 'flat-top', width: 28 }] as const,
      ),
      ['CT28', { type: 'bifocal', shape: 'curve-top', width: 28 }],
      ...['R22', 'r24', 'R28'].map(
        (typed) => [typed, { type: 'bifocal', shape: 'round', width: Number(typed.slice(1)) }] as const,
      ),
      ...['7x28', '8 x 35'].map(
        (typed) =>
          [
            typed,
            { type: 'trifocal', shape: 'flat-top', depth: Number(typed[0]), width: Number(typed.slice(-2)) },
          ] as const,
      ),
      ['PAL', { type: 'progressive' }],
      ['progressive corridor 14', { type: 'progressive', corridor: 14 }],
      ['SV', { type: 'single-vision' }],
      ['bifocal FT28', { type: 'bifocal', shape: 'flat-top', width: 28 }],
      ['Executive', { type: 'bifocal', shape: 'full-width' }],
    ];
    for (const [line, value] of bare) checkEntries(line, { value });
  });

  test('what may as well be a power of the right lens is no design', () => {
    // 25 may be 0.25 or 2.50 without sign and point; a blank or a hyphen is how a power is typed.
    for (const line of ['R ‹22›', 'R‹25›', 'R ‹25›']) checkTold(line, ['sign-missing']);
    checkTold('‹R-22›', ['round-or-right']);
    checkTold('R -22.00', []);
    expect(parseLine('R22.00').node.kind).toBe('power');
    expect(parseLine('R22 -0.75 x 022').node.kind).toBe('power');
    checkTold('‹7x3›', ['eye-unsaid']);
    checkTold('FT 28.5 ‹foo›', ['unexpected-text']);
    checkTold('‹D›', ['unknown-line']);
  });

  test('one for each eye', () => {
    checkEntries(
      'design R bifocal R22 L bifocal flat-top 28',
      { eye: 'R', value: { type: 'bifocal', shape: 'round', width: 22 } },
      { eye: 'L', value: { type: 'bifocal', shape: 'flat-top', width: 28 } },
    );
  });

  test('what is missing, said again or unknown', () => {
    checkTold('‹design›', ['value-missing']);
    checkTold('design ‹L›', ['value-missing']);
    checkTold('design R ‹22›', ['unexpected-text']);
    checkTold('design bifocal R ‹22›', ['unexpected-text']);
    checkTold('design double flat-top 28 ‹gap›', ['value-missing']);
    checkTold('design trifocal 7‹x›', ['value-missing']);
    checkTold('design bifocal ‹trifocal›', ['unexpected-text']);
    checkTold('design bifocal flat-top 28 ‹35›', ['unexpected-text']);
    checkTold('design bifocal ‹x›28', ['unexpected-text']);
    checkTold('design ‹foo 28›', ['unexpected-text']);
    checkTold('design bifocal ‹frontal 28›', ['unexpected-text']);
    checkTold('design ‹near›', ['unexpected-text']);
    checkTold('design ‹corridor 14›', ['unexpected-text']);
    checkTold('design bifocal‹,› flat-top 28', ['loose-form']);
  });
});

describe('lens', () => {
  test('a material by its name, its index or its constants', () => {
    checkEntries('lens resin-1.50', { value: { name: 'resin-1.50' } });
    checkEntries('lens CR-39', { value: { name: 'CR-39' } });
    checkEntries('material poly', { value: { name: 'poly' } });
    checkEntries('lens 1.60', { value: { index: 1.6 } });
    checkEntries('lens resin-1.60 index 1.60 abbe 41 density 1.3', {
      value: { name: 'resin-1.60', index: 1.6, abbe: 41, density: 1.3 },
    });
    checkEntries('lens "own make" n 1.6 v 41', { value: { name: 'own make', index: 1.6, abbe: 41 } });
    checkEntries(
      'lens R resin-1.50 L poly',
      { eye: 'R', value: { name: 'resin-1.50' } },
      { eye: 'L', value: { name: 'poly' } },
    );
  });

  test('what is missing or said again', () => {
    checkTold('‹lens›', ['value-missing']);
    checkTold('lens resin-1.60 ‹abbe›', ['value-missing']);
    checkTold('lens ‹R› L poly', ['value-missing']);
    checkTold('lens poly ‹glass›', ['unexpected-text']);
    checkTold('lens poly index 1.6 index ‹1.67›', ['unexpected-text']);
    checkTold('lens index=1.60', []);
  });
});

describe('tint', () => {
  test('by absorption, transmission or polarising direction', () => {
    expect(read('tint brown absorbs 80')).toEqual({ colour: 'brown', settings: [{ key: 'absorbs', figure: 80 }] });
    expect(read('tint transmits 20%')).toEqual({ settings: [{ key: 'transmits', figure: 20 }] });
    expect(read('tint light brown polarized 180')).toEqual({
      colour: 'light brown',
      settings: [{ key: 'polarised', figure: 180 }],
    });
    expect(read('tint "light brown" absorbs 20')).toMatchObject({ colour: 'light brown' });
    for (const line of ['tint brown absorbs 80', 'tint transmits 20%', 'tint brown']) checkTold(line, []);
  });

  test('a bare percentage is asked about', () => {
    checkTold('tint brown ‹80›', ['tint-unclear']);
    checkTold('tint ‹80›%', ['tint-unclear']);
    expect(read('tint brown 80')).toEqual({ colour: 'brown', bare: 80 });
    checkTold('tint brown ‹absorbs›', ['value-missing']);
  });
});
