import { type Analysis, type AnalysisOptions, analyse, type Finding, type Fix, ruleOf } from '../../orders';

/** A finding with the words it covers, and where it was found. */
export interface Told {
  readonly finding: Finding;
  /** The words it covers. */
  readonly text: string;
  readonly analysis: Analysis;
  /** Index of its block. */
  readonly block: number;
}

/** Everything told about a text. */
export function findingsOf(text: string, options: AnalysisOptions = {}): readonly Told[] {
  const analysis = analyse(text, options);
  return analysis.blocks.flatMap(({ findings, block: { lines } }, block) =>
    findings.map((finding) => ({
      finding,
      text: (lines[finding.line]?.text ?? '').slice(finding.start, finding.end),
      analysis,
      block,
    })),
  );
}

export const findingsWith = (text: string, code: string, options?: AnalysisOptions): readonly Told[] =>
  findingsOf(text, options).filter(({ finding }) => finding.code === code);

/** Findings of one code, as `level eye [covered words]`. */
export const told = (text: string, code: string, options?: AnalysisOptions): readonly string[] =>
  findingsWith(text, code, options).map(
    ({ finding: { level, eye }, text: words }) => `${level} ${eye ? `${eye} ` : ''}[${words}]`,
  );

/** Whatever is told above a hint, for texts that should stay quiet. */
export const alarms = (text: string): readonly string[] =>
  findingsOf(text)
    .filter(({ finding }) => finding.level !== 'hint')
    .map(({ finding, text: words }) => `${finding.level} ${finding.code} [${words}]`);

/** The messages of one code. */
export const messages = (text: string, code: string, options?: AnalysisOptions): readonly string[] =>
  findingsWith(text, code, options).map(({ finding }) => ruleOf(code)?.message(finding.data) ?? 'no such rule');

export function fixesOf({ finding, analysis, block }: Told): readonly Fix[] {
  const lines = analysis.blocks[block]?.block.lines.map(({ text }) => text) ?? [];
  return ruleOf(finding.code)?.fixes?.({ finding, lines }) ?? [];
}

/** The whole text after a fix, with plain line ends. */
export function mended({ analysis: { document }, block }: Told, { edits }: Fix): string {
  const lines = document.blocks.flatMap((one) => one.lines.map(({ text }) => text));
  const first = document.starts[block] ?? 0;
  for (const { line, start, end, text } of [...edits].sort((a, b) => b.line - a.line || b.start - a.start)) {
    const old = lines[first + line] ?? '';
    lines[first + line] = old.slice(0, start) + text + old.slice(end);
  }
  return lines.join('\n');
}
