/** Findings about what holds for the whole file, told in the block that says it. */
import { type Block, misplacedLines } from '../../grammar';
import { type Context, contributionOf, setNamed } from '../context';
import type { Finding, FindingData, Level, Place } from '../finding';
import { instrumentFindings } from './bench/instrument-findings';
import { nearestSet } from './bench/standard-unknown';
import { impossibleDates } from './blocks/date-implausible';
import { impossibleLimits } from './tolerance/house-limit-impossible';
import { looserLimits } from './tolerance/house-looser';

const NONE: readonly Finding[] = [];

export function fileFindings(block: Block, context: Context): readonly Finding[] {
  const declares = block.kind === 'instrument' || block.kind === 'tolerance' || block.kind === 'defaults';
  if (!declares && !block.lines.some((line) => line.parsed(block.kind).node.kind === 'standard')) return NONE;
  const { standards, instrument, house } = contributionOf(block);
  if (standards.length === 0 && !declares) return NONE;
  const findings = standards.flatMap((standard) => {
    if (standard.name !== context.standard?.name) return [finding('said-twice', standard.place, { in: 'order' })];
    if (
      context.missing.length > 0 ||
      standard !== context.standard ||
      setNamed(standard.name) ||
      context.houses.has(standard.name)
    )
      return [];
    const near = nearestSet(standard.name, context);
    return [finding('standard-unknown', standard.place, { name: standard.name, named: true, near })];
  });
  if (instrument && context.instruments.get(instrument.name) !== instrument)
    findings.push(twice(block, instrument.name));
  if (instrument) findings.push(...instrumentFindings(instrument, context.today));
  if (house && context.houses.get(house.name) !== house) findings.push(twice(block, house.name));
  for (const number of misplacedLines(block)) {
    const { start = 0, end = 0, word = '' } = block.lines[number]?.parsed(block.kind).node.head ?? {};
    findings.push(finding('line-misplaced', { line: number, start, end }, { word, block: block.kind }));
  }
  if (block.kind === 'defaults' && context.defaults !== block) findings.push(twice(block, 'defaults'));
  if (house?.parentPlace && house.parent !== null && !setNamed(house.parent)) {
    const data = { name: house.parent, named: true, near: nearestSet(house.parent, null) };
    findings.push(finding('standard-unknown', house.parentPlace, data));
  }
  if (house)
    for (const limit of impossibleLimits(house))
      findings.push(finding('house-limit-impossible', limit.place, { ...limit }));
  for (const date of declares ? impossibleDates(block, context.today) : [])
    findings.push(finding('date-implausible', date.place, date.data));
  if (house && house.parent === null) findings.push(finding('house-base-missing', nameOf(block), { name: house.name }));
  const parent = house?.parent == null ? null : setNamed(house.parent);
  if (house && parent)
    findings.push(
      ...looserLimits(house, parent).map(({ limit, data }) => finding('house-looser', limit.place, data, 'warning')),
    );
  return findings.length > 0 ? findings : NONE;
}

const finding = (code: string, place: Place, data: FindingData, level: Level = 'error'): Finding => ({
  code,
  level,
  data,
  eye: null,
  ...place,
});

const twice = (block: Block, name: string): Finding => finding('defined-twice', nameOf(block), { name });

/** The name in the header of a block, or the word that opens it. */
function nameOf(block: Block): Place {
  const node = block.lines[0]?.parsed(block.kind).node;
  const { start = 0, end = 0 } = (node && 'name' in node ? node.name : null) ?? node?.head ?? {};
  return { line: 0, start, end };
}
