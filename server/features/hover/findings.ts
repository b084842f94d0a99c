import { type Finding, ruleOf } from '../../../orders';
import { covers, type Part, type Spot } from './part';

/** The pages of the findings at a place, in short: why it matters, what the fix does, where the rule comes from. */
export function aboutFindings({ analysis, line, character }: Spot): Part[] {
  const told = new Set<string>();
  return causesLast(analysis.findings).flatMap((finding) => {
    const rule = ruleOf(finding.code);
    if (!rule || finding.line !== line || !covers(finding, character) || told.has(finding.code)) return [];
    told.add(finding.code);
    const { why, fix, source } = rule.page;
    const text = [`**${rule.code}**: ${why}`, fix ? `Fix: ${fix}` : '', `Source: ${source}`].filter(Boolean);
    return [{ start: finding.start, end: finding.end, markdown: text.join('\n\n') }];
  });
}

/** What is wrong comes before what it may come from. */
function causesLast(findings: readonly Finding[]): readonly Finding[] {
  const isCause = ({ code }: Finding): boolean => ruleOf(code)?.family === 'cause';
  return findings.some(isCause) ? [...findings.filter((one) => !isCause(one)), ...findings.filter(isCause)] : findings;
}
