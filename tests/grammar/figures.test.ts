import { describe, expect, test } from 'vitest';
import { said, told, UNREADABLE } from '../support/lines';
import { unmark } from '../support/marks';

type Row = readonly [sample: string, value: number | typeof UNREADABLE, codes?: string];

/** Lines with marks where something is told, the value taken, and the codes told in the order of their places. */
function figures(title: string, taken: (line: string) => unknown, rows: readonly Row[]): void {
  describe(title, () => {
    for (const [sample, value, codes = ''] of rows)
      test(sample, () => {
        const { text } = unmark(sample);
        expect(told(text)).toEqual({ codes: codes === '' ? [] : codes.split(' '), marked: sample });
        expect(taken(text)).toBe(value);
      });
  });
}

interface Said {
  readonly figure?: unknown;
  readonly distance?: { readonly binocular?: unknown };
  readonly entries?: readonly {
    readonly power?: { readonly sphere?: unknown; readonly cylinder?: unknown; readonly axis?: unknown };
    readonly value?: unknown;
  }[];
}

const entry = (line: string) => (said(line) as Said).entries?.[0];
const sphere = (line: string) => entry(line)?.power?.sphere;
const cylinder = (line: string) => entry(line)?.power?.cylinder;
const axis = (line: string) => entry(line)?.power?.axis;
const add = (line: string) => (entry(line)?.value as { readonly value?: unknown } | undefined)?.value;
const prism = (line: string) =>
  (entry(line)?.value as readonly { readonly amount: unknown }[] | undefined)?.[0]?.amount;
const height = (line: string) => entry(line)?.value;
const distance = (line: string) => (said(line) as Said).distance?.binocular;

figures('a sphere', sphere, [
  ['R -4.50', -4.5],
  ['R +4.50', 4.5],
  ['R ‹−4.50›', -4.5, 'typographic-sign'],
  ['R ‹–4.50›', -4.5, 'typographic-sign'],
  ['R ‹—4.50›', -4.5, 'typographic-sign'],
  ['R ‹‐4.50›', -4.5, 'typographic-sign'],
  ['R ‹- 4.50›', -4.5, 'sign-apart'],
  ['R ‹+ 4.50›', 4.5, 'sign-apart'],
  ['R ‹− 4.50›', -4.5, 'sign-apart'],
  ['R ‹−450›', -4.5, 'point-missing'],
  ['R ‹- 450›', -4.5, 'sign-apart'],
  ['R ‹− 12›', UNREADABLE, 'point-ambiguous'],
  ['R ‹-4,50›', -4.5, 'decimal-comma'],
  ['R ‹-450›', -4.5, 'point-missing'],
  ['R ‹-050›', -0.5, 'point-missing'],
  ['R ‹-1050›', -10.5, 'point-missing'],
  ['R ‹-4000›', -40, 'point-missing'],
  ['R ‹-4025›', UNREADABLE, 'power-implausible'],
  ['R ‹-40.25›', UNREADABLE, 'power-implausible'],
  ['R ‹-45›', UNREADABLE, 'power-implausible'],
  ['R ‹-4›', -4, 'whole-dioptres'],
  ['R ‹-10›', -10, 'whole-dioptres'],
  ['R ‹-20›', -20, 'whole-dioptres'],
  ['R ‹+4›', 4, 'whole-dioptres'],
  ['R ‹-05›', UNREADABLE, 'point-ambiguous'],
  ['R ‹4.50›', UNREADABLE, 'sign-missing'],
  ['R ‹450›', UNREADABLE, 'sign-missing'],
  ['R ‹4,50›', UNREADABLE, 'sign-missing'],
  ['R ‹.50›', UNREADABLE, 'sign-missing'],
  ['R ‹2.›', UNREADABLE, 'sign-missing'],
  ['R ‹+.5›', 0.5, 'bare-point'],
  ['R ‹+2.›', 2, 'bare-point'],
  ['R ‹－４.５０›', -4.5, 'wide-characters'],
  ['R pl', 0],
  ['R plano', 0],
  ['R Plano', 0],
  ['R ∞', 0],
  ['R 0.00', 0],
  ['R 0', 0],
  ['R +0.00', 0],
  ['R ‹-4.5.0›', UNREADABLE, 'figures-touch'],
  ['R ‹-4,50,75›', UNREADABLE, 'figures-touch'],
  ['R ‹- 0.75 x 27›', UNREADABLE, 'cylinder-missing'],
  ['R ‹-0.75 x 027›', UNREADABLE, 'cylinder-missing'],
  ['R ‹-› -0.75 x 022', 0, 'lone-mark'],
  ['R ‹-› ‹+4.50›', 0, 'lone-mark axis-missing'],
  ['R ‹-4.50 DS x 022›', UNREADABLE, 'cylinder-missing'],
]);

// Two digits that are as likely an eighth or a quarter as whole dioptres.
figures(
  'two digits without a point',
  sphere,
  [12, 25, 37, 50, 62, 75, 87].map((digits): Row => [`R ‹-${digits}›`, UNREADABLE, 'point-ambiguous']),
);

figures('a cylinder', cylinder, [
  ['R -4.50 -0.75 x 022', -0.75],
  ['R -4.50-0.75x022', -0.75],
  ['R -4.50 / -0.75 x 022', -0.75],
  ['R -4.50/-0.75x022', -0.75],
  ['R -4.50 +0.75 x 022', 0.75],
  ['R ‹SPH› -4.50 CYL -0.75 AX 022', -0.75, 'loose-form'],
  ['R -3.00 ‹(›+1.00 x 110)', 1, 'loose-form'],
  ['R -4.50‹,› -0.75 x 022', -0.75, 'loose-form'],
  ['R -4.50 DS -0.75 DC x 022', -0.75],
  ['R -4.50 ‹0.75› x 022', UNREADABLE, 'sign-missing'],
  ['R -4.50 ‹- 0.75› x 022', -0.75, 'sign-apart'],
  ['R -4.50 ‹-75› x 022', UNREADABLE, 'point-ambiguous'],
  ['R -4.50 ‹-075› x 022', -0.75, 'point-missing'],
  ['R -4.50 ‹−0,75› x 022', -0.75, 'typographic-sign'],
  ['R -4.50 ‹-0.75›', -0.75, 'axis-missing'],
  ['R -4.50 -0.75 ‹x›', -0.75, 'axis-missing'],
]);

describe('no cylinder', () => {
  test.each([
    ['R -4.50', ''],
    ['R -4.50 sph', ''],
    ['R -4.50 DS', ''],
    ['R -4.50 DC', ''],
    ['R -4.50 ‹-›', 'lone-mark'],
    ['R -4.50 ‹/›', 'lone-mark'],
  ])('%s', (sample, code) => {
    const { text } = unmark(sample);
    expect(told(text)).toEqual({ codes: code === '' ? [] : [code], marked: sample });
    expect(entry(text)?.power).toEqual({ form: 'sphero-cylinder', sphere: -4.5 });
  });
});

figures('an axis', axis, [
  ['R -4.50 -0.75 x 001', 1],
  ['R -4.50 -0.75 x 180', 180],
  ['R -4.50 -0.75 X 022', 22],
  ['R -4.50 -0.75 axis 022', 22],
  ['R -4.50 -0.75 x ‹0›', 180, 'axis-zero'],
  ['R -4.50 -0.75 x ‹000›', 180, 'axis-zero'],
  ['R -4.50 -0.75 x ‹5›', 5, 'axis-short'],
  ['R -4.50 -0.75 x ‹22›', 22, 'axis-short'],
  ['R -4.50 -0.75 x ‹181›', UNREADABLE, 'axis-range'],
  ['R -4.50 -0.75 x ‹22.5›', UNREADABLE, 'axis-range'],
  ['R -4.50 -0.75 x ‹-22›', UNREADABLE, 'axis-range'],
  ['R -4.50 -0.75 x ‹1O›', UNREADABLE, 'axis-unreadable'],
  ['R -4.50 -0.75 x ‹17?›', UNREADABLE, 'axis-unreadable'],
  ['R -4.50 -0.75 x ‹l80›', UNREADABLE, 'axis-unreadable'],
  ['R -4.50 -0.75 x ‹O22›', UNREADABLE, 'axis-unreadable'],
  ['R -4.50 -0.75 x ‹abc›', UNREADABLE, 'axis-unreadable'],
  ['R -4.50 -0.75 ‹175›', 175, 'axis-unmarked'],
  ['R -4.50 -0.75 ‹22›', 22, 'axis-unmarked'],
  ['R -4.50 -0.75 ‹5›', 5, 'axis-unmarked'],
]);

describe('no axis is taken', () => {
  test.each([
    ['R -4.50 -0.75 ‹+2.00›', 'third-figure'],
    ['R -4.50 -0.75 ‹2.00›', 'third-figure'],
    ['R -4.50 -0.75 ‹200›', 'third-figure'],
    ['R -4.50 -0.75 ‹@ 022›', 'axis-or-meridian'],
    ['R -4.50 -0.75 ‹@›', 'axis-or-meridian'],
    ['R -4.50 -0.75 x 022 ‹-0.50›', 'unexpected-text'],
  ])('%s', (sample, code) => {
    const { text } = unmark(sample);
    expect(told(text)).toEqual({ codes: [code], marked: sample });
    expect(axis(text) ?? 22).toBe(22);
  });
});

figures('an add', add, [
  ['add +2.00', 2],
  ['add 2.00', 2],
  ['add ‹2›', 2, 'whole-dioptres'],
  ['add ‹200›', 2, 'point-missing'],
  ['add ‹25›', UNREADABLE, 'point-ambiguous'],
  ['add ‹2,25›', 2.25, 'decimal-comma'],
  ['add ‹2.›', 2, 'bare-point'],
  ['add ‹+ 2.00›', 2, 'sign-apart'],
  ['add ‹- 2.00›', -2, 'sign-apart'],
  ['add ‹−2.00›', -2, 'typographic-sign'],
]);

figures('a prism', prism, [
  ['prism R 2.00 BI', 2],
  ['prism R 2BI', 2],
  ['prism R BI 2', 2],
  ['prism R 2 in', 2],
  ['prism R ‹1/2› BI', 0.5, 'fraction'],
  ['prism R 2.00‹Δ› BI', 2, 'prism-mark'],
  ['prism R 2.00 ‹^› BI', 2, 'prism-mark'],
  ['prism R ‹2,5› BI', 2.5, 'decimal-comma'],
  ['prism R ‹.5› BI', 0.5, 'bare-point'],
]);

figures('a height', height, [
  ['height 17', 17],
  ['height ‹17,5›', 17.5, 'decimal-comma'],
  ['height ‹-17›', UNREADABLE, 'length-negative'],
]);

figures('a distance between the pupils', distance, [
  ['pd 63', 63],
  ['pd 63.5', 63.5],
  ['pd ‹63,5›', 63.5, 'decimal-comma'],
  ['pd ‹63,60›', UNREADABLE, 'pair-unclear'],
  ['pd ‹-63›', UNREADABLE, 'length-negative'],
]);

describe('a cross of two meridians', () => {
  const crossed = { form: 'meridians', first: { power: -4.5, meridian: 22 }, second: { power: -5.25, meridian: 112 } };

  test.each(['R -4.50 @ 022 / -5.25 @ 112', 'R -4.50@022/-5.25@112', 'R -4.50 @ 022 -5.25 @ 112'])('%s', (line) => {
    expect(entry(line)?.power).toEqual(crossed);
    expect(told(line).codes).toEqual([]);
  });

  test.each([
    ['R ‹-4.50 @ 022›', 'meridian-missing'],
    ['R ‹-4.50 @ 022 / -5.25›', 'meridian-missing'],
    ['R -4.50 @ ‹022 / -5.25 @ 110›', 'meridians-not-square'],
    ['R -4.50 @ ‹22› / -5.25 @ 112', 'axis-short'],
    ['R -4.50 @ ‹202› / -5.25 @ 112', 'axis-range'],
    ['R ‹4.50› @ 022 / -5.25 @ 112', 'sign-missing'],
    ['R -4.50 ‹@›', 'value-missing'],
  ])('%s', (sample, code) => {
    expect(told(unmark(sample).text)).toEqual({ codes: [code], marked: sample });
  });
});

describe('two drum positions and the wheel', () => {
  test.each([
    ['R lines -4.25 / -5.25 x 168', { thin: -4.25, wide: -5.25, wheel: 168 }],
    ['R lines -4.25 -5.25 x 168', { thin: -4.25, wide: -5.25, wheel: 168 }],
    ['R lines wide -5.25 thin -4.25 x 168', { thin: -4.25, wide: -5.25, wheel: 168 }],
    ['R lines thin -4.25 wide -5.25 axis 168', { thin: -4.25, wide: -5.25, wheel: 168 }],
    ['again L lines plano / -0.50 x 090', { thin: 0, wide: -0.5, wheel: 90 }],
  ])('%s', (line, positions) => {
    expect(entry(line)?.power).toEqual({ form: 'lines', ...positions });
    expect(told(line).codes).toEqual([]);
  });

  test.each([
    ['R lines ‹4.25› / -5.25 x 168', 'sign-missing'],
    ['R lines -4.25 / -5.25 x ‹181›', 'axis-range'],
    ['R lines -4.25 / -5.25 ‹-6.00› x 168', 'unexpected-text'],
  ])('%s', (sample, code) => {
    expect(told(unmark(sample).text)).toEqual({ codes: [code], marked: sample });
  });
});
