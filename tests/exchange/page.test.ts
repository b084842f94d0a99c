/** The page about the formats: its tables are made here from what the conversions do. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Loss, toCsv, toDicomJson, toFhir, toOrdersJson } from '../../exchange';
import { LINE_WORDS, ROW_WORDS } from '../../exchange/csv/columns';
import { keywordOf } from '../../exchange/dicom/tags';
import { PART_UNITS } from '../../exchange/parts/part';
import { type Analysis, analyse } from '../../orders';
import { root } from './support/examples';

const path = join(root, 'docs/exchange.md');

const EQUIPMENT = { 'FOC-A': { manufacturer: 'Example Instruments', model: 'B', serial: '7', software: '1' } };

/** Each conversion on one text, with nothing missing but what the text leaves out. */
const FORMATS: readonly (readonly [name: string, losses: (analysis: Analysis) => readonly Loss[]])[] = [
  ['FHIR', (analysis) => toFhir(analysis).losses],
  ['DICOM', (analysis) => toDicomJson(analysis, { equipment: EQUIPMENT }).losses],
  ['CSV', (analysis) => toCsv(analysis).losses],
  ['JSON', (analysis) => toOrdersJson(analysis).losses],
];

const ORDER_LINES = [
  ...['R -4.50 -0.75 x 022', 'R -4.50 @ 022 / -5.25 @ 112', 'add +2.00', 'add +2.25 intermediate +1.12'],
  ...['prism R 2.00 BI 0.50 BU', 'prism R 2.06 base 014', 'pd 63 near 60', 'pd R 31.5 L 31.5', 'height 17'],
  ...['design bifocal flat-top 28', 'lens resin-1.50', 'base-curve 4.00', 'thickness centre 2.0'],
  ...['frame A 52 B 36 DBL 18 ED 55', 'as-worn vertex 13 panto 8 wrap 5', 'coating "hard"', 'tint brown absorbs 80'],
  ...['ref "tray 7"', 'note "call before noon"', 'balance L', 'kept L -2.00', 'rx R -4.50', 'inset 2', 'blank 70'],
  ...['slab-off R 3.00', 'thinning 1.50 BD', 'supply glazed', 'compensation done', 'due 2026-12-01'],
];

const READING_LINES = [
  ...['R -4.50 -0.62 x 024', 'R lines -4.50 / -5.12 x 024', 'again R -4.50 -0.62 x 022', 'R -2.50 at near-point'],
  ...['zero +0.03', 'add R +2.00', 'add R -4.50 -> -2.50', 'add R +2.00 engraved', 'clock R +6.25 -> +8.25'],
  ...[
    'prism R 0.50 BO',
    'prism R 0.50 BO 0.25 BD',
    'pd 63.5',
    'optical-centres R 33 L 32',
    'height R 17 L 16.5',
    'base-curve R 4.12',
  ],
  ...[
    'thickness R centre 2.1',
    'segment R 28.0 tilt 1',
    'segment R tilt 1 nasal-up',
    'impact passed',
    'impact batch "cert 88"',
    'replaced R',
    'decided accept by MT',
  ],
];

const HEAD = 'order A\n';
const OTHER = '  L -1.00\n';
const READ = '  reading 2026-11-24 14:30 by KO with FOC-A\n    L -1.00\n    R -4.00\n';

const WORDS: Readonly<Record<Loss['why'], string>> = {
  'no-place': '—',
  'as-words': 'in words',
  'worked-out': 'worked out',
  rounded: 'rounded',
  needed: '—',
  unclear: 'not read',
};

/** Parts of a line that may fare otherwise than the rest of it. */
const PARTS: readonly (readonly [start: string, words: string])[] = [
  ['intermediate', 'the intermediate'],
  ['nasal-up', 'its direction'],
  ['batch', 'the certificate'],
  ['cert', 'the certificate'],
];

/** What becomes of one line, and of part of it where its parts fare differently. */
function fateOf(text: string, line: number, losses: (analysis: Analysis) => readonly Loss[]): string {
  const analysis = analyse(text);
  const own = losses(analysis).filter((loss) => loss.line === line);
  const fates = [...new Set(own.map(({ why }) => WORDS[why]))];
  const partOf = ({ what }: Loss) => PARTS.find(([start]) => what.startsWith(start))?.[1];
  if (own.length > 0 && own.every(partOf)) return `all but ${[...new Set(own.map(partOf))].join(', ')}`;
  return fates.length === 0 ? 'whole' : fates.join(', ');
}

const orderRow = (line: string): readonly string[] => {
  // An eye that is kept or balanced has no other power.
  const other = /^(?:kept|balance)/.test(line) ? '' : OTHER;
  const text = `${HEAD}  ${line}\n${other}`;
  return [`\`${line}\``, ...FORMATS.map(([, losses]) => fateOf(text, 1, losses))];
};

const readingRow = (line: string): readonly string[] => {
  const text = `${HEAD}${OTHER}${READ.replace(/ {4}R -4\.00\n/, line.includes('R ') && !/add|prism|clock|again/.test(line) ? '' : '    R -4.00\n')}    ${line}\n`;
  const at = text.trimEnd().split('\n').length - 1;
  return [`\`${line}\``, ...FORMATS.map(([, losses]) => fateOf(text, at, losses))];
};

/** A table with its columns set under one another. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, at) => Math.max(...all.map((row) => (row[at] ?? '').length)));
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(' | ')} |`;
  return [line(head), `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`, ...rows.map(line)].join('\n');
}

const formats = FORMATS.map(([name]) => name);
const fates = [
  table(['line of an order', ...formats], ORDER_LINES.map(orderRow)),
  table(['line of a reading', ...formats], READING_LINES.map(readingRow)),
].join('\n\n');

/** Keys and values of an output, as `path: value`, so that what the page names can be looked up. */
function pathsIn(value: unknown, at = ''): readonly string[] {
  if (Array.isArray(value)) return value.flatMap((one) => pathsIn(one, at));
  if (typeof value !== 'object' || value === null) return [at];
  return Object.entries(value).flatMap(([key, part]) => {
    const inner = at === '' ? key : `${at}.${key}`;
    return [inner, ...pathsIn(part, inner)];
  });
}

const FULL = `order A
  R -4.50 -0.75 x 022
  L -1.00
  add +2.00
  prism R 2.00 BI
  pd 63 R 31.5 L 31.5 near 60
  height 17
  base-curve 4.00
  frame A 52 B 36 DBL 18 ED 55
  as-worn vertex 13 panto 8 wrap 5
  design bifocal flat-top 28
  note "call before noon"
  reading 2026-11-24 14:30 by KO with FOC-A
    R -4.50 -0.62 x 024
    add R +2.00 intermediate +1.00
    prism R 0.50 BO 0.25 BD
    note "tray 7"
`;

/** What stands where in FHIR; each path has to be in the output. */
const FHIR: readonly (readonly [what: string, where: string])[] = [
  ['name of the order', 'VisionPrescription.identifier.value'],
  ['eye', 'VisionPrescription.lensSpecification.eye'],
  ['sphere', 'VisionPrescription.lensSpecification.sphere'],
  ['cylinder', 'VisionPrescription.lensSpecification.cylinder'],
  ['axis', 'VisionPrescription.lensSpecification.axis'],
  ['add', 'VisionPrescription.lensSpecification.add'],
  ['prism', 'VisionPrescription.lensSpecification.prism.amount'],
  ['base', 'VisionPrescription.lensSpecification.prism.base'],
  ['design, in the words of the notation', 'VisionPrescription.lensSpecification.product.text'],
  ['note, coating, tint, material, reference', 'VisionPrescription.lensSpecification.note.text'],
  ['monocular PD, height, base curve', 'VisionPrescription.lensSpecification.extension.valueQuantity'],
  ['binocular PD, frame, position of wear', 'VisionPrescription.extension.valueQuantity'],
  ['order that a reading is about', 'Observation.focus.reference'],
  ['day of the reading', 'Observation.effectiveDateTime'],
  ['who read', 'Observation.performer.display'],
  ['instrument', 'Observation.device.display'],
  ['lens', 'Observation.bodySite.text'],
  ['note of the reading', 'Observation.note.text'],
  ['each figure read', 'Observation.component.valueQuantity'],
  ['base of a prism read', 'Observation.component.valueCodeableConcept'],
];

/** What stands where in DICOM, by tags that have to be in the output. */
const DICOM: readonly (readonly [what: string, where: readonly string[]])[] = [
  ['name of the order', ['00100020']],
  ['day of the reading', ['00080023']],
  ['time of the reading', ['00080033']],
  ['who read', ['00081070']],
  ['instrument', ['00081010']],
  ['design, in the words of the notation', ['00460012']],
  ['sphere of the right lens; the left has 0046,0015', ['00460014', '00460146']],
  ['cylinder', ['00460014', '00460018', '00460147']],
  ['axis', ['00460014', '00460018', '00220009']],
  ['horizontal prism', ['00460014', '00460028', '00460030']],
  ['its base', ['00460014', '00460028', '00460032']],
  ['vertical prism', ['00460014', '00460028', '00460034']],
  ['its base', ['00460014', '00460028', '00460036']],
  ['add', ['00460014', '00460100', '00460104']],
  ['intermediate add', ['00460014', '00460101', '00460104']],
  ['with or without a segment', ['00460014', '00460038']],
];

const tagged = (tag: string): string => `${keywordOf(tag)} (${tag.slice(0, 4)},${tag.slice(4)})`;

const resources = JSON.parse(toFhir(analyse(FULL)).result).entry.map(
  ({ resource }: { resource: { resourceType: string } }) => ({ [resource.resourceType]: resource }),
);
const fhirPaths = new Set(pathsIn(resources));
const dicomPaths = new Set(pathsIn(toDicomJson(analyse(FULL)).result));

test.each(FHIR)('FHIR: %s stands where the page says', (_, where) => expect([...fhirPaths]).toContain(where));
test.each(DICOM)('DICOM: %s stands where the page says', (_, where) =>
  expect([...dicomPaths]).toContain(where.join('.Value.')),
);

const code = (words: readonly string[]): string => words.map((word) => `\`${word}\``).join(', ');

/** The page with its tables made anew. */
const renewed = (page: string): string => {
  const between = (text: string, name: string, body: string): string => {
    const [start, end] = [`<!-- ${name}:start -->`, `<!-- ${name}:end -->`];
    return `${text.slice(0, text.indexOf(start) + start.length)}\n\n${body}\n\n${text.slice(text.indexOf(end))}`;
  };
  const where = (name: string, rows: readonly (readonly string[])[]): string => table(['fact', name], rows);
  const fhir = where(
    'element',
    FHIR.map(([what, place]) => [what, `\`${place}\``]),
  );
  const dicom = where(
    'element',
    DICOM.map(([what, tags]) => [what, tags.map(tagged).join(' › ')]),
  );
  return between(between(between(page, 'fates', fates), 'fhir', fhir), 'dicom', dicom)
    .replace(/^- Facts: .*$/m, `- Facts: ${code(Object.keys(PART_UNITS))}.`)
    .replace(/^- Of the row: .*$/m, `- Of the row: ${code(ROW_WORDS)}. Lines of the order: ${code(LINE_WORDS)}.`);
};

describe('docs/exchange.md', () => {
  if (process.env.UPDATE_PAGES) writeFileSync(path, renewed(readFileSync(path, 'utf8')));
  test('says what the conversions do; UPDATE_PAGES=1 writes it anew', () => {
    const page = readFileSync(path, 'utf8');
    expect(page).toBe(renewed(page));
  });
});
