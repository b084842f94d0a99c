/**
 * Slips as they are made at the counter, on the telephone and at the bench: what was typed, what it means, what is told.
 * A row names the account it comes from where there is one; “own” is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { ruleOf } from '../../orders';
import { findingsOf } from '../support/findings';
import { JOB, ORDER, only, ordered, read, without, written } from '../support/job';

/** Text, what was meant or what it means, and everything told above a hint, with the hints that matter. */
type Row = readonly [typed: string, text: string, means: string, told: readonly string[]];

const line = (typed: string, means: string, ...told: readonly string[]): Row => [typed, ordered(typed), means, told];
const lines = (typed: readonly string[], means: string, ...told: readonly string[]): Row => [
  typed.join(' | '),
  only(...typed),
  means,
  told,
];
const lacking = (word: string, means: string, ...told: readonly string[]): Row => [
  `no ${word}`,
  written({ ...ORDER, order: without(ORDER.order, word) }),
  means,
  told,
];
const measured = (typed: string, means: string, ...told: readonly string[]): Row => [typed, read(typed), means, told];

const PAIR = ['pd 62', 'design single-vision'];
const BIFOCAL = ['pd 63 near 60', 'height 17', 'design bifocal flat-top 28'];
const PROGRESSIVE = ['pd R 32 L 31', 'height 19', 'design progressive'];

/** Slips told of in public accounts, by the number of the case and its source. */
const REPORTED: Readonly<Record<string, readonly Row[]>> = {
  'W01; a wearer’s weblog, 2009: axis 153 became 53': [
    lines(
      ['R plano', 'L +0.25 0.00 x 053', ...PAIR],
      'the cylinder stands in no column',
      'error axis-without-cylinder',
    ),
    lines(['R plano', 'L 0.00 x 053', ...PAIR], 'an axis, and no cylinder', 'error cylinder-missing'),
    line('L -4.25 -1.00 x 53', 'the first digit may be lost', 'hint axis-short'),
    line('L -4.25 -1.00 x 5', 'a digit is lost', 'warning axis-short'),
    line('rx R -4.50 -0.75 x 022 L -4.25 -1.00 x 068', 'order and prescription differ', 'error rx-differs'),
  ],
  'W03 and W35; a British safety-spectacle seller’s help page': [
    line('R 1.25 1.50 x 090', 'signs above the figures, not copied', 'error sign-missing', 'error sign-missing'),
    line('R -4.50 -0.75 x 3u!', 'an axis that cannot be read', 'error axis-unreadable'),
  ],
  'W07; French notes on reading corrections': [
    line('R -4,50', 'a decimal comma', 'hint decimal-comma'),
    line('R -450', '4.50 without its mark', 'warning point-missing'),
    line('R -3.00 (-1.00 x 020)', 'the cylinder in brackets', 'hint loose-form'),
    line(
      'R -3.00 (-1.00 at 20)',
      '“at” for the axis',
      'error axis-missing',
      'error unexpected-text',
      'error unexpected-text',
      'hint loose-form',
    ),
  ],
  'W08 and W14; retailers’ pages on prescription figures': [
    line('R -450 -075 x 022', 'no points at all', 'warning point-missing', 'warning point-missing'),
    line(
      'R - / -75 / 027',
      'no sphere, cylinder -0.75',
      'error point-ambiguous',
      'hint lone-mark',
      'hint axis-unmarked',
    ),
    line('R -4.50 / - / -', 'no cylinder', 'hint lone-mark', 'hint lone-mark'),
    lines(['R -1.50', 'L -1.25', 'near R +0.75 L +1.00', ...PAIR], 'near as full powers', 'error unknown-line'),
  ],
  'W09 to W12; Pacific University thesis on laboratory orders, 1992': [
    lacking('add', 'a bifocal without its add', 'error add-missing'),
    line('add R +2.00', 'the left add is missing', 'error add-missing'),
    line('design single-vision', 'an add, and no use', 'error use-missing'),
    lacking('pd', 'no PD at all', 'error pd-missing'),
    line('pd R 31.5', 'no left PD', 'error pd-missing'),
    line('R -4.50 -1.25', 'no axis', 'error axis-missing'),
    line('R -0.75 x 027', 'a sphere or a cylinder is missing', 'error cylinder-missing'),
    line('tint brown', 'how dark?', 'info tint-depth-missing'),
    line('lens resn-1.60', 'a material that is none', 'warning material-unknown'),
  ],
  'W13; opticians’ forum, “calculation for a compensated lens”': [
    line('add -2.00', 'a dash taken for a minus', 'error add-negative'),
    line('add - 2.00', 'the same with a blank', 'warning sign-apart', 'error add-negative'),
    line('add R +2.00 L +2.25', 'one add belongs to another job', 'info adds-differ'),
  ],
  'W15; question pages on the PD': [
    line('pd 62/59', 'far and near', 'warning slash-pair'),
    line('pd R 62 L 59', 'far and near taken for right and left', 'warning pd-implausible', 'warning pd-implausible'),
    line('pd 30/31', 'right and left', 'warning slash-pair'),
    line('pd 32/63', 'no pair at all', 'error pair-unclear'),
  ],
  'W17; 20/20, “clinical tips”': [line('pd 63 R 31 L 31', 'the halves make 62', 'error pd-halves-disagree')],
  'W19; opticians’ forum, “how free-form challenges us”': [
    lines(
      ['R -6.00 -2.00 x 045', 'L -3.00 -2.00 x 135', 'add +2.00', ...PROGRESSIVE, 'prism R 2 BI'],
      'no vertex, prism in one eye, unequal powers',
      'info prism-one-sided',
      'warning near-imbalance',
      'info vertex-matters',
    ),
  ],
  'W21, W22, W26 and V11; Durham Technical Community College, OPH 142': [
    line('prism both 2.5 base 037', 'in for one eye is out for the other', 'error prism-angle-for-both'),
    line('prism R +2 BI', 'the change of a prism', 'error prism-relative'),
    lines(
      ['R -2.00', 'L -3.60', 'add +2.00', ...BIFOCAL],
      '1.6 prism dioptres between the eyes',
      'warning near-imbalance',
    ),
    lines(
      ['both +15.00', ...PAIR, 'height 20', 'tested vertex 12', 'as-worn panto 10'],
      'tilted, and centred before the pupil',
      'warning tilt-matters',
    ),
  ],
  'W24; ABO Masters paper, “assisting the anisometropic patient”, 1998': [
    lines(
      ['R +6.00 +2.50 x 015', 'L +2.75', 'add +2.75', 'tested vertex 12', ...BIFOCAL],
      'no slab-off',
      'warning near-imbalance',
    ),
    lines(
      ['R +6.00 +2.50 x 015', 'L +2.75', 'add +2.75', 'tested vertex 12', ...BIFOCAL, 'slab-off R 5.50'],
      'on the stronger lens',
      'warning slab-side',
    ),
  ],
  'W28; ProFile ANZ, “heights matter beyond the multifocal”': [
    lines(
      ['R +13.50 -0.75 x 030', 'L +13.00', 'tested vertex 12', ...PAIR],
      'a strong pair without heights',
      'warning height-missing',
    ),
  ],
  'W29; Daily Optician, “balance is good”': [
    lines(['R -2.00', 'L -4.25', 'balance L', ...PAIR], 'a power and a balance', 'error balance-with-power'),
  ],
  'W31; Optical Training Institute, computer vision': [
    lines(
      ['both +0.25', 'add +1.00', 'pd R 32 L 31', 'height 20', 'design office degression 1.25'],
      'the top is weaker than for far',
      'warning degression-beyond-add',
    ),
  ],
  'W37; a question page on base directions': [
    line('prism R 3', 'no base', 'error prism-base-missing'),
    line('prism R 2 BU L 2 BU', 'they cancel', 'warning prism-unusual'),
    line('prism R 2 BI L 2 BO', 'they cancel', 'warning prism-unusual'),
  ],
  'W38; 20/20 L&T, “ordering a single lens”': [
    lines(
      ['R -3.00 -0.75 x 180', 'L -3.50 -1.50 x 005', ...PAIR, 'height 20', 'make L', 'kept R -2.00 -0.25 x 015'],
      'the old lens stays in',
      'warning kept-differs',
    ),
  ],
  'W39; lab training page on prism thinning': [
    lines(
      ['R -3.00', 'L -3.25', 'add +2.00', ...PROGRESSIVE, 'make L', 'kept R -3.00 add +2.00'],
      'is the old lens thinned?',
      'warning thinning-unsaid',
    ),
  ],
  'W41 and F13; poster on spectacles bought on line, 2012': [
    lines(
      ['R -3.00', 'L -3.25', 'add +2.00', 'pd 63', 'height 19', 'design progressive'],
      'one PD',
      'error pd-halves-missing',
    ),
    lacking('height', 'no height', 'error height-missing'),
    line('design bifocal', 'which one?', 'warning segment-unsaid'),
    lacking('design', 'an add, and no lens type', 'error design-missing'),
  ],
  'F05; 20/20 CE, choosing a corridor length': [
    lines(
      ['R -3.00', 'L -3.25', 'add +2.00', 'pd R 32 L 31', 'height 16', 'design progressive corridor 14'],
      '2 mm to read through',
      'error cross-room',
    ),
  ],
  'F15; BHVI, facial measurements': [
    line('height 42', 'above the lens', 'error height-beyond-frame'),
    line('height 2', 'from which line?', 'warning height-datum-unclear'),
  ],
  'W40; 20/20, vertex, tilt and wrap': [
    lines(
      ['both -10.00', ...PAIR, 'height 20', 'tested vertex 12', 'as-worn vertex 14'],
      'converted already?',
      'error compensation-unsaid',
    ),
  ],
  'V06; exam-study page on the add': [
    measured('add R -2.50 -> -4.50 L +2.00', 'near read before far', 'error negative-add', 'error add-outside'),
  ],
};

const OWN: readonly Row[] = [
  line('R -4.50 -0.75 x 190', 'no such axis', 'error axis-range'),
  line('R -4.50 -0.75 x 22.5', 'an axis has no decimals', 'error axis-range'),
  line('R -4.50 -0.75 x l80', 'a letter for a digit', 'error axis-unreadable'),
  line('R -4.50 -0.75 x 10°', '10, or 100 with a small zero?', 'hint axis-short'),
  line('R -4.50 -0.75 @ 112', 'axis or meridian?', 'error axis-or-meridian'),
  line('R -4.50 -0.75 +2.00', 'the add without its word', 'error third-figure'),
  line('R -4.50 -0.75 2', 'axis 2, or add 2?', 'warning axis-unmarked'),
  line('R -12', '12.00 or 0.12?', 'error point-ambiguous'),
  line('R -45.00', 'the point slipped', 'error power-implausible'),
  line('R -4.5.0', 'two points', 'error figures-touch'),
  line('R - 4.50', 'a dash as a separator?', 'warning sign-apart'),
  line('R O.50', 'a letter for a zero', 'error unexpected-text'),
  line('-4.50 -0.75 x 022', 'which eye?', 'error eye-unsaid'),
  lines(['R -4.50', ...PAIR, 'height 20'], 'a line is lost', 'error eye-missing'),
  lines(['R +4.25', 'L -4.25', ...PAIR, 'height 20'], 'a sign flipped', 'warning opposite-signs'),
  line(
    'R -4.50 -9.25 x 022',
    'the wide lines for the cylinder',
    'warning unusual-value',
    'warning near-imbalance',
    'info vertex-matters',
  ),
  line('L -5.25 +1.00 x 078', 'two forms in one order', 'hint forms-mixed'),
  line('OD -4.50 -0.75 x 022', 'two ways to name an eye', 'hint eye-words-mixed'),
  line('add 22', '2.2, 2.25 or 22?', 'warning unusual-value', 'hint whole-dioptres'),
  line('add +5.50', 'near power for the add', 'warning unusual-value'),
  line('add +1.12 intermediate +2.25', 'the two exchanged', 'error intermediate-beyond-add'),
  line('pd 63,60', 'a pair or a decimal?', 'error pair-unclear'),
  line('pd 60 near 63', 'far and near exchanged', 'warning near-pd-wider'),
  line('pd 163', 'a digit too many', 'warning pd-implausible'),
  line('pd 63 60', 'two figures and no word', 'error unexpected-text'),
  line('pd 3', 'prism dioptres?', 'warning pd-implausible'),
  line('height -17', 'a dash as a separator', 'error length-negative'),
  line('height R 17', 'the left height is missing', 'error height-missing'),
  line('frame A 52 B 36 DBL 18 ED 45', 'an ED shorter than the lens is wide', 'error ed-impossible'),
  line('blank 55', 'a blank too small', 'error blank-short'),
  line('base-curve 400', 'no point', 'warning unusual-value'),
  line('as-worn vertex 1.3', 'centimetres', 'warning unusual-value'),
  line('prism R 2 80', 'BO read as 80', 'error power-implausible', 'error prism-base-missing'),
  line('prism R 1/2 BU', '12 without its stroke', 'hint fraction'),
  line('prism R 2 BI 1 BO', 'one of them is for the other eye', 'error prism-repeated'),
  line('slab-off 3.00', 'on which lens?', 'error slab-for-both'),
  line('decentre R 2.5', 'in which direction?', 'error decentre-unsaid'),
  line('tint 80', 'absorbs or transmits?', 'warning tint-unclear'),
  line('heigth 17', 'letters exchanged', 'error unknown-line'),
  line('design progresive', 'a letter lost', 'error unexpected-text'),
  line('supply glased', 'a word that is none', 'error unknown-choice'),
  line('due 01/12/2026', 'January or December?', 'error date-order'),
  line('due 2026-11-31', 'no such day', 'error date-impossible'),
  line('ref tray #7', 'the number is a remark', 'warning text-cut'),
  line('coating "hard', 'no closing quote', 'warning quote-open'),
  line('standard z80.1-2016', 'no such set', 'error standard-unknown'),
  ['pd 64 beside pd 63', written({ ...ORDER, order: [...ORDER.order, 'pd 64'] }), 'which one?', ['error said-twice']],
  ['ordr QL-1043', `${written(ORDER)}\nordr QL-1043\n  R 4.50`, 'another job begins', ['error block-unnamed']],
  measured('pd ok', 'not measured', 'error measured-word', 'warning not-read'),
  measured('prism R 0.50 L 0', 'in which direction?', 'error prism-base-missing', 'warning not-read'),
];

/** What is told, without the hints that a row does not ask about, and without what probably caused a wrong reading. */
function toldOf(text: string, wanted: readonly string[]): readonly string[] {
  return findingsOf(text)
    .filter(({ finding: { code } }) => ruleOf(code)?.family !== 'cause')
    .map(({ finding: { level, code } }) => `${level} ${code}`)
    .filter((one) => !one.startsWith('hint ') || wanted.includes(one))
    .sort();
}

/** Of a reading whatever else it shows may be told as well; of an order nothing else. */
function checkSlip([, text, , wanted]: Row): void {
  const found = toldOf(text, wanted);
  const isRead = text.includes('\n  reading ');
  expect(isRead ? found.filter((one) => wanted.includes(one)) : found, text).toEqual([...wanted].sort());
}

describe.each(Object.entries(REPORTED))('%s', (_, rows) => {
  test.each(rows.map((row) => [row[0], row[2], row] as const))('%s: %s', (_typed, _means, row) => checkSlip(row));
});

describe('own', () => {
  test.each(OWN.map((row) => [row[0], row[2], row] as const))('%s: %s', (_typed, _means, row) => checkSlip(row));
});

test('the job that the slips are put into raises nothing by itself', () => {
  expect(toldOf(written(JOB), [])).toEqual([]);
  expect(toldOf(written(ORDER), [])).toEqual([]);
});

test('no slip is in the table twice', () => {
  const texts = [...Object.values(REPORTED).flat(), ...OWN].map(([, text]) => text);
  expect(new Set(texts).size).toBe(texts.length);
  expect(texts.length).toBeGreaterThanOrEqual(60);
});
