import type { Evidence } from './evidence';
import type { SourceId } from './sources';
import type { Band } from './standards/tolerance-set';

/*
 * Impact resistance and safety thickness. People are hurt where these are missed: the bought text of the standard and
 * the regulation rule, and a recorded test here is never the test itself.
 */

/** One thing that a regulation or standard says, as a figure where it is one and in words where it is not. */
export interface ImpactFact {
  readonly id: string;
  readonly says: string;
  readonly value?: number;
  readonly unit?: 'mm' | 'g' | 'm' | 'kg' | 'years' | 'm/s' | 'devices';
  readonly source: SourceId;
  readonly evidence: Evidence;
  readonly alsoIn?: readonly SourceId[];
}

const fda = { source: 'fda-impact-guidance-2010', evidence: 'published' } as const;
const fdaAndState = { ...fda, alsoIn: ['ohio-4725.32'] } as const;
const fdaRecords = { ...fda, alsoIn: ['fda-0910-0182-statement'] } as const;

/** United States, 21 CFR 801.410: lenses for dress eyewear. */
export const dressImpactFacts: readonly ImpactFact[] = [
  { id: 'ball-diameter', says: 'Steel ball of 5/8 inch.', value: 15.9, unit: 'mm', ...fdaAndState },
  { id: 'ball-mass', says: 'Ball of about 0.56 ounce.', value: 15.9, unit: 'g', ...fdaAndState },
  { id: 'drop', says: 'Drop of 50 inches onto the horizontal upper surface.', value: 1.27, unit: 'm', ...fdaAndState },
  {
    id: 'point-of-strike',
    says: 'Inside a circle of 5/8 inch at the geometric centre of the lens.',
    value: 15.9,
    unit: 'mm',
    ...fda,
  },
  { id: 'guide-tube', says: 'Allowed; must not restrict the fall and ends about 4 inches above the lens.', ...fda },
  {
    id: 'support',
    says: 'Rigid tube, 1 inch inside and 1 1/4 inches outside, about 1 inch high, with a neoprene gasket of 1/8 by 1/8 inch bonded on top: hardness 40 ± 5, tensile strength at least 1,200 pounds, elongation at least 400 per cent.',
    ...fda,
  },
  { id: 'base-plate', says: 'Base plate with fixtures of at least 27 pounds.', value: 12.2, unit: 'kg', ...fda },
  {
    id: 'failure',
    says: 'A crack through the whole thickness and across a complete diameter into two or more pieces, or any visible material leaving the eye side.',
    ...fda,
  },
  { id: 'glass', says: 'Every finished prescription glass lens is tested by itself.', ...fda },
  {
    id: 'plastic',
    says: 'Plastic lenses and all lenses without prescription: a statistically significant sample of each production batch, uncut or finished.',
    ...fda,
  },
  { id: 'other-test', says: 'An equal or superior test may be used.', ...fda },
  {
    id: 'not-tested',
    says: 'Must be impact resistant but need not be tested: prism segments, slab-off, lenticular cataract, iseikonic, depressed one-piece segments, biconcave, myodisc and minus lenticular, custom laminates, cemented assemblies; raised multifocals need only design testing.',
    ...fda,
  },
  {
    id: 'exemption',
    says: 'Only by a physician or optometrist, in writing, with written notice to the patient.',
    ...fda,
  },
  {
    id: 'sale-records',
    says: 'Invoices, shipping papers, records of sale or distribution are kept for three years.',
    value: 3,
    unit: 'years',
    ...fdaRecords,
  },
  {
    id: 'test-records',
    says: 'Test results and the description of method and apparatus are kept for three years.',
    value: 3,
    unit: 'years',
    ...fdaRecords,
  },
  {
    id: 'manufacturer',
    says: 'Whoever grinds, coats, heat-treats or bevels, and importers; a shop that only edges is not treated as one.',
    ...fda,
  },
];

/** A least thickness of prescription lenses in protective eyewear. */
export interface SafetyThickness {
  readonly rating: 'basic' | 'impact-rated';
  /** Signed ordered power of the strongest meridian, plus for a plus lens. Absent: any power. */
  readonly power?: Band;
  /** Millimetres; exactly this much is enough. */
  readonly atLeast: number;
  readonly where: 'anywhere' | 'thinnest-point';
  readonly source: SourceId;
  readonly evidence: Evidence;
  readonly alsoIn?: readonly SourceId[];
  readonly note?: string;
}

const manual = { source: 'z87.1-2020-laboratory-manual', evidence: 'secondary' } as const;

/** ANSI Z87.1, prescription safety lenses. */
export const safetyThicknesses: readonly SafetyThickness[] = [
  {
    rating: 'basic',
    power: { below: 3 },
    atLeast: 3,
    where: 'anywhere',
    ...manual,
    alsoIn: ['z87.1-thickness-article'],
  },
  {
    rating: 'basic',
    power: { atLeast: 3 },
    atLeast: 2.5,
    where: 'thinnest-point',
    ...manual,
    alsoIn: ['z87.1-thickness-article'],
    note: 'That it is measured at the thinnest point or edge is from memory.',
  },
  { rating: 'impact-rated', atLeast: 2, where: 'thinnest-point', ...manual },
];

const text2010 = { source: 'z87.1-2010-text', evidence: 'published' } as const;

/** ANSI Z87.1: impact tests. The drop height of the high-mass frame test is unresolved and left out. */
export const safetyImpactFacts: readonly ImpactFact[] = [
  { id: 'basic-ball-diameter', says: 'Basic drop ball: steel, 1 inch.', value: 25.4, unit: 'mm', ...manual },
  { id: 'basic-ball-mass', says: 'Basic drop ball: 2.4 ounces.', value: 68, unit: 'g', ...manual },
  { id: 'basic-drop', says: 'Basic drop: 50 inches.', value: 1.27, unit: 'm', ...manual },
  {
    id: 'basic-sample',
    says: 'Basic: four devices of each material and coating, two left and two right; glass every one, plastic sampled.',
    value: 4,
    unit: 'devices',
    ...manual,
  },
  {
    id: 'rated-ball-diameter',
    says: 'Impact-rated material: ball of 1/4 inch.',
    value: 6.35,
    unit: 'mm',
    ...text2010,
    alsoIn: ['z87.1-2020-laboratory-manual'],
  },
  {
    id: 'rated-speed',
    says: 'Impact-rated material: 150 feet a second, three lenses, hit in the centre.',
    value: 45.7,
    unit: 'm/s',
    ...text2010,
    alsoIn: ['z87.1-2020-laboratory-manual'],
  },
  {
    id: 'rated-lens',
    says: 'Qualified on plano lenses, base curve at most 6.25 D, bevel 115° ± 5°, round of 55.0 mm +0.04/-0.25.',
    ...text2010,
  },
  {
    id: 'rated-failure',
    says: 'Lens pushed through the holder, fracture, any piece off the inner surface, or penetration of the full thickness.',
    ...text2010,
  },
  {
    id: 'rated-thickness',
    says: 'After qualifying: same maker, material and coatings, and at least the thickness that was tested.',
    ...text2010,
  },
  {
    id: 'optical-tolerances',
    says: 'The optical tolerances of prescription lenses follow Z80.1.',
    source: 'z87.1-from-memory',
    evidence: 'memory',
  },
];
