/**
 * Every word of the notation once: spelling, other spellings, what it is, where it may stand, and a line of help.
 * The lexer, completion, hover and the colours all read this table; nothing else lists words.
 */

export type BlockKind = 'order' | 'reading' | 'instrument' | 'defaults' | 'tolerance';

export type WordRole =
  | 'block'
  | 'line'
  | 'eye'
  | 'base'
  | 'cross'
  | 'plano'
  | 'no-cylinder'
  | 'label'
  | 'unit'
  | 'clause'
  | 'value';

export interface VocabularyEntry {
  /** Canonical spelling. */
  readonly word: string;
  /** Other spellings the trade types; understood and left as typed. */
  readonly also: readonly string[];
  readonly role: WordRole;
  /** Blocks in which a line word may open a line. */
  readonly blocks: readonly BlockKind[];
  /** How the line or clause is written. */
  readonly syntax: string;
  readonly help: string;
}

const entry = (
  role: WordRole,
  word: string,
  also: readonly string[],
  syntax: string,
  help: string,
  blocks: readonly BlockKind[] = [],
): VocabularyEntry => ({ role, word, also, syntax, help, blocks });

const ORDER: readonly BlockKind[] = ['order', 'defaults'];
const READING: readonly BlockKind[] = ['reading'];
const BOTH: readonly BlockKind[] = ['order', 'defaults', 'reading'];

export const VOCABULARY: readonly VocabularyEntry[] = [
  // Blocks
  entry(
    'block',
    'order',
    [],
    'order NAME',
    'Opens an order. Everything below it, up to the next block word, belongs to it.',
  ),
  entry(
    'block',
    'reading',
    [],
    'reading DATE [TIME] [by WHO] [with INSTRUMENT] [stage uncut|edged|final]',
    'Opens a set of bench readings of the order above.',
    ['order'],
  ),
  entry('block', 'instrument', [], 'instrument NAME', 'Describes a focimeter or lens measure that readings name.'),
  entry(
    'block',
    'defaults',
    [],
    'defaults',
    'Lines that hold for every order of the file which does not say otherwise.',
  ),
  entry('block', 'tolerance', [], 'tolerance NAME from SET', 'A set of limits of the house, built on a published set.'),
  entry(
    'line',
    'standard',
    [],
    'standard SET',
    'The tolerance set, by edition: unindented for the whole file, indented for one order.',
    ['order'],
  ),
  entry('line', 'end', [], 'end', 'Closes a reading; the lines after it belong to the order again.', ['reading']),

  // Lines of an order, a reading, or both
  entry(
    'line',
    'rx',
    [],
    'rx R … L … add … prism …',
    'The prescription as received, beside the order made from it.',
    ORDER,
  ),
  entry(
    'line',
    'again',
    [],
    'again R -4.50 -0.62 x 022',
    'The same measurement once more; the mean is judged.',
    READING,
  ),
  entry('line', 'zero', [], 'zero +0.03', 'What the power drum shows with nothing on the stop.', [
    'reading',
    'instrument',
  ]),
  entry(
    'line',
    'add',
    ['addition'],
    'add +2.00 | add R +2.00 L +2.25 | add R -4.50 -> -2.50 front-vertex',
    'Near addition, as ordered, as reduced, or as two drum positions: distance portion, then segment.',
    [...BOTH, 'tolerance'],
  ),
  entry(
    'line',
    'prism',
    [],
    'prism R 2.00 BI 0.50 BU L 2.00 BI | prism R 2.06 base 014',
    'Ordered or measured prism, per eye, with its base.',
    [...BOTH, 'tolerance'],
  ),
  entry(
    'line',
    'pd',
    ['ipd'],
    'pd 63 near 60 | pd R 31.5 L 31.5 near R 30 L 30',
    'Interpupillary distance in millimetres: binocular, monocular, or both; in a reading the distance between the points with the ordered prism.',
    [...BOTH, 'tolerance'],
  ),
  entry('line', 'near-pd', ['npd'], 'near-pd 60', 'Near interpupillary distance, when written on a line of its own.', [
    ...BOTH,
    'tolerance',
  ]),
  entry(
    'line',
    'optical-centres',
    ['optical-centers', 'ocs', 'oc'],
    'optical-centres R 33 L 32 | optical-centres 66',
    'Bare optical centres as spotted.',
    READING,
  ),
  entry(
    'line',
    'height',
    ['heights', 'ht'],
    'height 17 | height R 17 L 16.5',
    'Height above the lower tangent of the boxed lens: segment top, fitting point, or the point of the ordered prism.',
    [...BOTH, 'tolerance'],
  ),
  entry(
    'line',
    'height-difference',
    [],
    'height-difference 1.0',
    'Limit on the difference of the two heights of a pair.',
    ['tolerance'],
  ),
  entry('line', 'design', ['lens-type', 'type'], 'design bifocal flat-top 28', 'Lens type.', ORDER),
  entry(
    'line',
    'lens',
    ['material'],
    'lens resin-1.60 | lens MATERIAL index 1.60 abbe 41 density 1.3',
    'Lens material; a known one fills in its constants.',
    ORDER,
  ),
  entry(
    'line',
    'base-curve',
    ['base', 'bc'],
    'base-curve 4.00 | base-curve R 4.12 L 4.00',
    'Front base curve in dioptres.',
    [...BOTH, 'tolerance'],
  ),
  entry(
    'line',
    'thickness',
    [],
    'thickness centre 2.0 edge 1.5 min 1.8',
    'Thickness in millimetres: at the distance reference point, at the thinnest edge, or a lower bound anywhere.',
    [...BOTH, 'tolerance'],
  ),
  entry('line', 'blank', [], 'blank 70', 'Diameter of the lens blank in millimetres.', ORDER),
  entry('line', 'inset', [], 'inset R 2 L 2', 'Inset of the near point towards the nose in millimetres.', ORDER),
  entry(
    'line',
    'frame',
    [],
    'frame A 52 B 36 DBL 18 ED 55 | frame 52[]18',
    'Boxing dimensions of the frame in millimetres.',
    ORDER,
  ),
  entry(
    'line',
    'as-worn',
    ['worn'],
    'as-worn vertex 13 panto 8 wrap 5',
    'Position of wear: vertex distance in millimetres, pantoscopic tilt and wrap in degrees.',
    ORDER,
  ),
  entry('line', 'tested', [], 'tested vertex 12', 'Vertex distance of the refraction in millimetres.', ORDER),
  entry(
    'line',
    'compensation',
    [],
    'compensation none | done | vertex | by-maker',
    'Whether the powers above still have to be converted.',
    ORDER,
  ),
  entry(
    'line',
    'verification',
    [],
    'verification R -3.12 -0.93 x 012 add +2.12 L …',
    'What a focimeter should read, where the maker states it; tolerances then apply to it.',
    ORDER,
  ),
  entry(
    'line',
    'supply',
    [],
    'supply glazed | edged | uncut',
    'How the lenses are supplied; selects what is called for.',
    ORDER,
  ),
  entry(
    'line',
    'decentre',
    ['decenter', 'decentration'],
    'decentre R 2.5 in 1 up',
    'Decentration for uncut and stock orders in millimetres.',
    ORDER,
  ),
  entry('line', 'make', [], 'make R', 'Only that lens is ordered.', ORDER),
  entry('line', 'kept', [], 'kept L -2.00 -0.25 x 015', 'The lens that stays in the frame: matched, not made.', ORDER),
  entry(
    'line',
    'balance',
    ['bal'],
    'balance L | balance L -4.25',
    'A balance lens: made, its power not judged.',
    ORDER,
  ),
  entry('line', 'previous', [], 'previous R … L … add …', 'The old pair as read before ordering; never judged.', ORDER),
  entry('line', 'split', [], 'split free | equal | as-written', 'How the lab may share prism between the eyes.', ORDER),
  entry('line', 'yoked', [], 'yoked', 'Prism of the same direction for both eyes is meant.', ORDER),
  entry('line', 'thinning', [], 'thinning 1.50 BD | thinning none', 'Equal prism thinning in both lenses.', ORDER),
  entry('line', 'slab-off', [], 'slab-off R 3.00', 'Bicentric grinding, base up, on that lens.', ORDER),
  entry('line', 'reverse-slab', [], 'reverse-slab L 3.00', 'Bicentric grinding, base down, on that lens.', ORDER),
  entry(
    'line',
    'confirmed',
    [],
    'confirmed CODE "quoted line" "reason" by WHO',
    'Silences one finding of this order while the quoted line still reads the same.',
    ORDER,
  ),
  entry('line', 'purpose', [], 'purpose general | safety | child', 'Which thickness and impact cautions apply.', ORDER),
  entry(
    'line',
    'tint',
    [],
    'tint brown absorbs 80 | transmits 20 | polarised 180',
    'Tint or polarising filter.',
    ORDER,
  ),
  entry('line', 'coating', [], 'coating "hard, antireflection"', 'Coatings, in free words.', ORDER),
  entry('line', 'ref', [], 'ref "tray 7"', 'A reference of the lab or the shop.', ORDER),
  entry('line', 'due', [], 'due 2026-12-01', 'When the job is wanted.', ORDER),
  entry('line', 'note', [], 'note "…"', 'Anything else worth keeping.', [
    'order',
    'defaults',
    'reading',
    'instrument',
    'tolerance',
  ]),
  entry('line', 'remake-of', [], 'remake-of QL-1001 "axis"', 'This order repeats another one, and why.', ORDER),
  entry(
    'line',
    'clock',
    [],
    'clock R +6.25 -> +8.25',
    'Lens measure on the front, then on the segment, or along two meridians.',
    READING,
  ),
  entry('line', 'segment', ['seg'], 'segment R 28.0 tilt 1 nasal-up', 'Width and tilt of the segment as measured.', [
    ...READING,
    'tolerance',
  ]),
  entry('line', 'impact', [], 'impact passed | impact batch "cert 88"', 'The impact test, as recorded.', READING),
  entry(
    'line',
    'cosmetic',
    [],
    'cosmetic passed | cosmetic failed "scratch R"',
    'Surface quality, as judged.',
    READING,
  ),
  entry('line', 'marking', [], 'marking passed "…"', 'Markings, as checked.', READING),
  entry('line', 'replaced', [], 'replaced R "axis"', 'The lens in the frame is a new one from here on.', READING),
  entry(
    'line',
    'decided',
    [],
    'decided accept by MT "why"',
    'A person’s decision, shown beside the computed verdict.',
    READING,
  ),
  // Lines of an instrument
  entry('line', 'kind', [], 'kind manual focimeter', 'What the instrument is, in free words.', ['instrument']),
  entry('line', 'reads-to', ['step'], 'reads-to 0.125', 'The smallest step the instrument shows, in dioptres.', [
    'instrument',
  ]),
  entry(
    'line',
    'calibrated',
    [],
    'calibrated 2026-05-14 due 2027-05-14',
    'Last calibration, and when the next one is due.',
    ['instrument'],
  ),
  entry('line', 'test-lens', [], 'test-lens +5.00 read +5.06', 'A reference lens and what the instrument read.', [
    'instrument',
  ]),
  entry('line', 'uncertainty', [], 'uncertainty 0.06', 'Stated uncertainty of a power reading, in dioptres.', [
    'instrument',
  ]),
  // Lines of a tolerance set
  entry('line', 'power', [], 'power 0.12', 'Limit on a meridian power in dioptres.', ['tolerance']),
  entry('line', 'cylinder', ['cyl'], 'cylinder 0.12', 'Limit on the cylinder in dioptres.', ['tolerance']),
  entry('line', 'axis', ['ax'], 'axis to 0.50 6 | axis above 1.50 2', 'Limit on the axis in degrees, by cylinder.', [
    'tolerance',
  ]),

  // Eyes
  entry('eye', 'R', ['OD', 'RE', 'right'], 'R -4.50 -0.75 x 022', 'Right eye, or the lens before it.', BOTH),
  entry('eye', 'L', ['OS', 'LE', 'left'], 'L -4.25 -1.00 x 168', 'Left eye, or the lens before it.', BOTH),
  entry('eye', 'both', ['OU', 'BE', 'B/E'], 'both -2.00', 'Both eyes alike.', BOTH),

  // Parts of a power or a prism
  entry('cross', 'x', ['×', 'х'], 'x 022', 'Axis of the cylinder, 1 to 180 degrees.'),
  entry('plano', 'plano', ['pl', 'plan'], 'plano', 'No power: 0.00.'),
  entry('no-cylinder', 'DS', ['sph.', 'sphere'], '-4.50 DS', 'A sphere: no cylinder.'),
  entry('label', 'sph', [], '-4.50 sph', 'Sphere: before a figure its label, after it “no cylinder”.'),
  entry('label', 'cyl', ['cylinder'], 'cyl -0.75', 'Label of a cylinder.'),
  entry('label', 'axis', ['ax'], 'axis 22', 'Label of an axis.'),
  entry('unit', 'D', ['dpt', 'dioptres', 'diopters', 'dptr'], '', 'Dioptres.'),
  entry('unit', 'DC', [], '-0.75 DC', 'Dioptres of cylinder; in the cylinder’s place without a figure: no cylinder.'),
  entry('unit', 'mm', [], '', 'Millimetres.'),
  entry('unit', 'deg', ['degrees'], '', 'Degrees.'),
  entry('base', 'BI', ['in'], '2.00 BI', 'Base in, towards the nose.'),
  entry('base', 'BO', ['out'], '2.00 BO', 'Base out, towards the temple.'),
  entry('base', 'BU', ['up'], '0.50 BU', 'Base up.'),
  entry('base', 'BD', ['down'], '0.50 BD', 'Base down.'),

  // Words that open a clause
  entry('clause', 'near', [], 'near 60', 'Near distance; after a design, a near use.'),
  entry('clause', 'intermediate', ['int'], 'intermediate +1.12', 'Intermediate addition.'),
  entry('clause', 'base', [], 'base 014', 'Base direction in degrees, 0 to 360, seen facing the wearer.'),
  entry('clause', 'at', [], 'at prism-point', 'Where on the lens the reading was taken.'),
  entry('clause', 'with', [], 'with FOC-A', 'The instrument used.'),
  entry('clause', 'by', [], 'by KO', 'Who did it.'),
  entry('clause', 'stage', [], 'stage edged', 'Stage of the work at which the reading was taken.'),
  entry('clause', 'from', [], 'from z80.1-2015', 'The set that this one is built on.'),
  entry('clause', 'due', [], 'due 2027-05-14', 'When something is next due.'),
  entry('clause', 'read', ['reads'], 'read +5.06', 'What was read.'),
  entry('clause', 'to', [], 'to 0.25', 'Up to and including.'),
  entry('clause', 'above', [], 'above 1.50', 'Above this value.'),
  entry('clause', 'below', [], '2 below datum', 'Below the datum (boxed centre) line.'),
  entry('clause', 'datum', ['datum-line'], '2 below datum', 'The horizontal line through the boxed centre.'),
  entry('clause', 'lines', [], 'R lines -4.50 / -5.12 x 024', 'The two drum positions as read, thin lines first.'),
  entry('clause', 'wide', [], 'wide -5.12', 'Drum position of the wide (cylinder) lines.'),
  entry('clause', 'thin', [], 'thin -4.50', 'Drum position of the thin (sphere) lines.'),
  entry('clause', 'total', [], 'prism total 4 BI', 'For both eyes together; the lab shares it.'),
  entry('clause', 'corrected', [], 'corrected', 'The zero of the instrument is already taken off.'),
  entry('clause', 'engraved', [], 'add R +2.00 engraved', 'As engraved on the lens, not measured.'),
  entry('clause', 'front-vertex', ['fvp'], 'front-vertex', 'The front surface was on the stop.'),
  entry('clause', 'back-vertex', ['bvp'], 'back-vertex', 'The back surface was on the stop.'),
  entry('clause', 'tilt', [], 'tilt 1 nasal-up', 'Tilt of the segment in degrees.'),
  entry('clause', 'nasal-up', [], 'tilt 1 nasal-up', 'The nasal end is the higher one.'),
  entry('clause', 'nasal-down', [], 'tilt 1 nasal-down', 'The nasal end is the lower one.'),
  entry('clause', 'index', ['n'], 'index 1.60', 'Refractive index of the material.'),
  entry('clause', 'abbe', ['v'], 'abbe 41', 'Abbe number of the material.'),
  entry('clause', 'density', [], 'density 1.3', 'Density in grams per cubic centimetre.'),
  entry('clause', 'gap', [], 'gap 13', 'Clear distance between the two segments in millimetres.'),
  entry('clause', 'corridor', [], 'corridor 14', 'Corridor length in millimetres.'),
  entry('clause', 'degression', [], 'degression 1.25', 'How much weaker the top is than the near power, in dioptres.'),
  entry('clause', 'working', [], 'working 60', 'Working distance in centimetres.'),

  // Designs
  entry('value', 'single-vision', ['sv', 'monofocal'], 'design single-vision', 'One power all over.'),
  entry('value', 'bifocal', ['bf'], 'design bifocal flat-top 28', 'Distance and a segment for near.'),
  entry('value', 'trifocal', ['tf'], 'design trifocal flat-top 7x28', 'Distance, intermediate and near.'),
  entry('value', 'double', ['double-segment'], 'design double flat-top 28 gap 13', 'A second segment above.'),
  entry(
    'value',
    'progressive',
    ['pal', 'varifocal', 'ppl'],
    'design progressive corridor 14',
    'Power rising without a line.',
  ),
  entry(
    'value',
    'office',
    ['degressive'],
    'design office degression 1.25 working 60',
    'Near power falling towards the top.',
  ),
  entry('value', 'flat-top', ['ft', 'st', 'd-seg'], 'flat-top 28', 'Segment with a straight upper edge.'),
  entry('value', 'round', ['rd'], 'round 22', 'Round segment.'),
  entry('value', 'curve-top', ['ct-seg'], 'curve-top 28', 'Segment with a curved upper edge.'),
  entry('value', 'full-width', ['executive-style'], 'full-width', 'Segment across the whole lens.'),
  entry('value', 'distance', [], 'single-vision distance', 'For far.'),
];

const BY_SPELLING: ReadonlyMap<string, readonly VocabularyEntry[]> = (() => {
  const map = new Map<string, VocabularyEntry[]>();
  for (const item of VOCABULARY) {
    for (const spelling of [item.word, ...item.also]) {
      const key = spelling.toLowerCase();
      const list = map.get(key);
      if (list) list.push(item);
      else map.set(key, [item]);
    }
  }
  return map;
})();

/** All meanings of a word, without regard to case; empty when it is not a word of the notation. */
export const meaningsOf = (word: string): readonly VocabularyEntry[] => BY_SPELLING.get(word.toLowerCase()) ?? [];

/** The meaning of a word at the head of a line, or undefined. */
export const lineWord = (word: string): VocabularyEntry | undefined =>
  meaningsOf(word).find(({ role }) => role === 'line' || role === 'block' || role === 'eye');
