import { expect, test } from 'vitest';
import type { CheckJson } from '../../exchange';
import { lentil } from './support/command';

/**
 * What must come out, reasoned from the printed tables and not from the program: ANSI Z80.1-2015 as the quick reference
 * guide and a study page give it, and ISO 21987:2017 (power table from memory) for AB-801. Limits are inclusive.
 */
interface Expected {
  readonly verdict: 'accept' | 'reject' | 'incomplete' | 'unread';
  /** Measures that fail, or that were not read or not judged. */
  readonly because?: readonly string[];
  readonly reservations?: readonly string[];
}

const EXPECTED: Readonly<Record<string, Expected>> = {
  // Cylinder -0.625 against -0.75: one eighth at 0.13 on a drum in eighths. Everything else is inside.
  'QL-1042': { verdict: 'accept', reservations: ['near-the-limit'] },

  // Strongest meridians -2.50/-2.50 and -2.50/-2.49; cylinders within 0.03; axes 2° of 7° and 5° of 14°; 0.5 mm at 2.25 D.
  'SV-301': { verdict: 'accept' },
  // -1.76 +0.74 x 180 is -1.02 -0.74 x 090, and -1.74 +0.49 x 176 is -1.25 -0.49 x 086.
  'SV-302': { verdict: 'accept' },
  // Cylinder 1.50 stands in the row above 0.75 to 1.50: 3°, and it is 4° off. The left one is 1° off.
  'SV-303': { verdict: 'reject', because: ['R axis'] },
  // The replaced lens is 1° off.
  'SV-304': { verdict: 'accept' },
  // -3.25 - 0.75 = -4.00 as ordered; the cylinder is 0.25 off where 0.13 are allowed.
  'SV-305': { verdict: 'reject', because: ['R cylinder'] },
  // 2 % of 11.00 are 0.22; -11.17 is 0.17 off, -10.92 is 0.08 off. 1 mm of PD and 0.5 mm of height are inside.
  'SV-306': { verdict: 'accept' },
  // 5 mm x 1.25 D / 10 = 0.625, and 0.67 are allowed up to 2.75 D.
  'SV-307': { verdict: 'accept' },
  // 6.25 D is above 2.75 D: 2.5 mm are allowed, and it is 3 mm off.
  'SV-308': { verdict: 'reject', because: ['pair pd'] },
  // 2 mm x 3.00 D / 10 = 0.60, and 0.33 are allowed up to 3.375 D.
  'SV-309': { verdict: 'reject', because: ['pair prism-vertical'] },
  // Each lens has the other one's power: -3.75 for -1.50 and back, cylinders 0.75 off, axes 40° off.
  'SV-310': {
    verdict: 'reject',
    because: ['R power', 'R cylinder', 'R axis', 'L power', 'L cylinder', 'L axis'],
  },
  // +1.00 with an add of +2.00 for near only is +3.00.
  'SV-311': { verdict: 'accept' },
  // Cylinder 1.75 is above 1.50: 2°, and it is 3° off. A decision does not change what was computed.
  'SV-312': { verdict: 'reject', because: ['R axis'] },
  'SV-313': { verdict: 'unread' },

  // +3.50 - 1.25 and +3.75 - 1.50 are both 2.25.
  'SG-401': { verdict: 'accept' },
  // (8.37 - 6.25) x 0.498 / 0.530 = 1.99.
  'SG-402': { verdict: 'accept' },
  // 2.65 - 2.50 = 0.15, and 0.12 are allowed up to 4.00.
  'SG-403': { verdict: 'reject', because: ['L add'] },
  // A bifocal calls for the heights of both segments and for the near PD.
  'SG-404': { verdict: 'incomplete', because: ['R height', 'L height', 'pair near-pd'] },
  // 19.5 - 18 = 1.5 with 1.0 allowed for each, and as much again between the two.
  'SG-405': { verdict: 'reject', because: ['L height', 'pair height-difference'] },

  // 0.16 for progressives: -2.01 for -2.00 and -2.49 for -2.50; both 0.05 off in the cylinder. Left point 0.5 mm low.
  'PR-501': { verdict: 'accept' },
  // 5.25 D is above 3.75 D: 1.0 mm for each eye, and the right one is 1.5 mm off.
  'PR-502': { verdict: 'reject', because: ['R pd'] },
  // The maker's powers are not known.
  'PR-503': { verdict: 'incomplete', because: ['R power', 'L power'] },
  // Held against the stated powers every figure is within 0.02.
  'PR-504': { verdict: 'accept' },
  'PR-505': { verdict: 'unread' },

  // 0.13 base out on the right and 0.12 base in on the left leave 0.01 over the pair.
  'PX-601': { verdict: 'accept' },
  // Half a prism dioptre less base down on the left: 0.50, and 0.33 are allowed.
  'PX-602': { verdict: 'reject', because: ['pair prism-vertical'] },

  // +1.50 and +0.75 less 0.03 of zero; +1.25 +0.50 x 075 is +1.75 -0.50 x 165; 0.25 base up in both leave nothing.
  'RR-951': { verdict: 'accept' },
  // 1.89 is 0.14 too much where 0.12 is allowed; 10.60 and 8.85 through 4.1 mm of 1.586 leave 0.09 of it to the surface.
  'RR-952': { verdict: 'incomplete', because: ['R add'] },

  // -4.50 -0.75 x 022 and -4.25 -1.00 x 168 with an add of 2.00, read within 0.03; what could be misread is asked about.
  'TS-701': { verdict: 'accept', reservations: ['point-missing', 'slash-pair'] },
  // Nobody knows what the line that cannot be read was to say.
  'TS-702': { verdict: 'incomplete' },
  // The right lens has no power that could be judged.
  'TS-703': { verdict: 'incomplete' },

  // +3.27 for +2.00 and +1.98 for +3.25; cylinders 0.23 off; axes 9° of 7° at 0.50 and 10° of 5° at 0.75.
  'WH-901': {
    verdict: 'reject',
    because: ['R power', 'R cylinder', 'R axis', 'L power', 'L cylinder', 'L axis'],
  },
  // -5.25 +0.75 x 022 is -4.50 -0.75 x 112.
  'WH-902': { verdict: 'reject', because: ['R axis'] },
  // 2.5 mm, and 1 mm is allowed for each eye of a progressive.
  'WH-903': { verdict: 'reject', because: ['R pd'] },
  // 8°, and 3° are allowed from 0.75 to 1.50.
  'WH-904': { verdict: 'reject', because: ['R axis', 'L axis'] },

  // Strongest meridian -2.00, read -1.95; the weaker one +1.00, read +1.15, and 0.12 are allowed up to 3.00.
  'AB-801': { verdict: 'reject', because: ['R power 2'] },
};

const { stdout, stderr, status } = lentil(['check', '--format', 'json', 'examples']);
const { files, totals } = JSON.parse(stdout) as CheckJson;
const orders = files.flatMap((file) => file.orders);

test('every example is there, by its name, once', () => {
  expect(orders.map(({ name }) => name).sort()).toEqual(Object.keys(EXPECTED).sort());
  expect(orders.length).toBeGreaterThanOrEqual(14);
});

test.each(Object.entries(EXPECTED))('%s', (name, { verdict, because, reservations = [] }) => {
  const order = orders.find((one) => one.name === name);
  expect(order?.verdict).toBe(verdict);
  expect(order?.reservations).toEqual(reservations);
  if (verdict === 'unread') return;
  const faults = (order?.measures ?? [])
    .filter(({ outcome }) => (verdict === 'reject' ? outcome === 'fail' : outcome !== 'pass'))
    .map(({ quantity, eye, meridian }) => `${eye ?? 'pair'} ${quantity}${meridian === 2 ? ' 2' : ''}`);
  if (because || verdict === 'accept') expect(faults).toEqual(because ?? []);
});

test('an error is told for every failed measure, and for nothing else but the lines that cannot be read', () => {
  const errors = files.flatMap(({ findings }) => findings.filter(({ level }) => level === 'error'));
  const failed = Object.entries(EXPECTED)
    // A decision with a reason answers its reject.
    .filter(([name, { verdict }]) => verdict === 'reject' && name !== 'SV-312')
    .flatMap(([name, { because = [] }]) => because.map(() => name));
  const unreadable = errors.filter(({ code }) => code === 'unknown-line' || code === 'sign-missing');
  expect(unreadable.map(({ order }) => order)).toEqual(['TS-702', 'TS-703']);
  const told = errors.filter((error) => !unreadable.includes(error)).map(({ order }) => order);
  expect(told.sort()).toEqual(failed.sort());
});

test('the slip from the telephone is told of every point that is missing', () => {
  const codes = files
    .flatMap(({ findings }) => findings)
    .filter(({ order, level }) => order === 'TS-701' && level === 'warning')
    .map(({ code }) => code);
  expect(codes.filter((code) => code === 'point-missing')).toHaveLength(5);
  expect(codes).toContain('slash-pair');
});

test('the orders that tell what happened are told their causes', () => {
  const causes = files
    .flatMap(({ findings }) => findings)
    .filter(({ order, level }) => order?.startsWith('WH-') && level === 'info')
    .map(({ order, code }) => `${order} ${code}`);
  expect(causes).toEqual([
    'WH-901 eyes-swapped',
    'WH-902 axis-crossed',
    'WH-902 lines-swapped',
    'WH-903 one-centre-off',
    'WH-904 edged-off-axis',
  ]);
});

test('an everyday pair raises nothing at all', () => {
  const quiet = ['SV-301', 'SV-302', 'SV-307', 'SG-401', 'SG-402', 'PR-501', 'PX-601'];
  const loud = files
    .flatMap(({ findings }) => findings)
    .filter(
      ({ order, level }) => order !== null && quiet.includes(order) && (level === 'error' || level === 'warning'),
    );
  expect(loud).toEqual([]);
});

test('the totals add up, and the status tells of the errors', () => {
  const { accept, reject, incomplete, unread } = totals;
  expect(accept + reject + incomplete + unread).toBe(totals.orders);
  expect(totals).toMatchObject({ files: files.length, orders: Object.keys(EXPECTED).length });
  expect(stderr).toBe('');
  expect(status).toBe(1);
});
