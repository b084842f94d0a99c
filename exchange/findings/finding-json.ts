import { type BlockAnalysis, type Finding, type Fix, ruleOf } from '../../orders';
import { rangeOf } from './plain';
import type { FindingJson, FixJson } from './shape';

/** The sentence of a finding, made by the rule that owns its code. */
export const messageOf = ({ code, data }: Finding): string => ruleOf(code)?.message(data) ?? code;

/** The findings of a block for JSON, in the order in which they stand in the text. */
export function findingsInJson({ block, order, findings }: BlockAnalysis, firstLine: number): FindingJson[] {
  if (findings.length === 0) return [];
  // Only rules with fixes need the text of the whole block, so it is gathered when first asked for.
  let texts: readonly string[] | undefined;
  const fixesOf = (finding: Finding): readonly Fix[] => {
    const fixes = ruleOf(finding.code)?.fixes;
    if (!fixes) return [];
    texts ??= block.lines.map(({ text }) => text);
    return fixes({ finding, lines: texts });
  };
  return inTextOrder(findings).map((finding) => ({
    code: finding.code,
    level: finding.level,
    message: messageOf(finding),
    order: order?.name ?? null,
    eye: finding.eye,
    range: rangeOf(finding, firstLine),
    ...(finding.related?.length ? { related: finding.related.map((place) => rangeOf(place, firstLine)) } : {}),
    fixes: fixesOf(finding).map((fix) => fixInJson(fix, firstLine)),
  }));
}

const fixInJson = ({ title, safe, edits }: Fix, firstLine: number): FixJson => ({
  title,
  safe,
  edits: edits.map(({ text, ...place }) => ({ range: rangeOf(place, firstLine), text })),
});

/** By place, so that what a reader sees goes down the page; findings of one place keep their order. */
export const inTextOrder = (findings: readonly Finding[]): readonly Finding[] =>
  findings.length < 2 ? findings : findings.toSorted((a, b) => a.line - b.line || a.start - b.start);
