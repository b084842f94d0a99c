import { describe, expect, it } from 'vitest';
import {
  dressImpactFacts,
  EVIDENCE_FROM_FIRM_TO_WEAK,
  type Evidence,
  focimeterLimits,
  lensClasses,
  materials,
  type Source,
  safetyImpactFacts,
  safetyThicknesses,
  sources,
  toleranceSets,
} from '../../tables';
import { type Found, objectsIn } from './support/walk';

const SOURCES: ReadonlyMap<string, Source> = new Map(sources.map((source) => [source.id, source]));

const TABLES = [
  ...toleranceSets.map((set) => ({ name: set.id, data: set as unknown })),
  { name: 'materials', data: materials },
  { name: 'focimeter limits', data: focimeterLimits },
  { name: 'dress impact', data: dressImpactFacts },
  { name: 'safety impact', data: safetyImpactFacts },
  { name: 'safety thickness', data: safetyThicknesses },
];

describe.each(TABLES)('$name', ({ data }) => {
  const cells = objectsIn(data).filter(isCell);

  it('has a source and evidence on every cell', () => {
    expect(cells.length).toBeGreaterThan(2);
    expect(cells.filter(({ node }) => !('source' in node && 'evidence' in node)).map(({ path }) => path)).toEqual([]);
  });

  it('cites only sources that exist', () => {
    expect(cells.flatMap(({ node }) => cited(node)).filter((id) => !SOURCES.has(id))).toEqual([]);
  });

  it('never claims more than its source', () => {
    const bold = cells.filter(({ node }) => {
      const grade = SOURCES.get(String(node.source))?.grade ?? 'memory';
      return firmness(node.evidence as Evidence) < firmness(grade);
    });
    expect(bold.map(({ path }) => path)).toEqual([]);
  });

  it('calls every figure from a memory source memory', () => {
    const remembered = cells.filter(({ node }) => SOURCES.get(String(node.source))?.kind === 'memory');
    expect(remembered.filter(({ node }) => node.evidence !== 'memory').map(({ path }) => path)).toEqual([]);
  });

  it('survives JSON unchanged', () => {
    expect(JSON.parse(JSON.stringify(data))).toEqual(data);
    expect(JSON.stringify(data)).not.toContain('null');
  });
});

it('names every source once, and marks memory as memory', () => {
  expect(SOURCES.size).toBe(sources.length);
  expect(sources.filter((source) => !/^[a-z0-9]+([.-][a-z0-9]+)*$/.test(source.id))).toEqual([]);
  expect(sources.filter((source) => (source.kind as string) === 'memory' && source.grade !== 'memory')).toEqual([]);
  expect(sources.filter((source) => source.where.trim() === '' || source.title.trim() === '')).toEqual([]);
});

it('ranks evidence from firm to weak', () => {
  expect(EVIDENCE_FROM_FIRM_TO_WEAK).toEqual(['published', 'secondary', 'memory']);
});

it('judges office lenses by the tables for progressives, as common practice without a source', () => {
  const progressive = lensClasses.find((members) => members.lensClass === 'progressive');
  expect(progressive?.designs).toContain('office');
  expect(progressive?.note).toContain('common practice, no source');
  const designs = lensClasses.flatMap((members) => members.designs);
  expect(new Set(designs).size).toBe(designs.length);
});

/** A cell holds a figure or a statement: a limit, a value, or what a rule says. */
function isCell({ node }: Found): boolean {
  const holds = ['limit', 'limits', 'value', 'says', 'atLeast', 'source', 'evidence'].some((key) => key in node);
  const isPlainBand = Object.keys(node).every((key) => ['atLeast', 'above', 'atMost', 'below'].includes(key));
  return holds && !isPlainBand;
}

function cited(node: Found['node']): string[] {
  return [String(node.source), ...((node.alsoIn as string[] | undefined) ?? [])];
}

function firmness(evidence: Evidence): number {
  return EVIDENCE_FROM_FIRM_TO_WEAK.indexOf(evidence);
}
