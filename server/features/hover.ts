import type { Hover, HoverParams } from 'vscode-languageserver';
import type { Snapshot } from '../snapshot';
import { aboutFindings } from './hover/findings';
import { aboutNextSteps } from './hover/next-steps';
import { aboutOrder } from './hover/order';
import type { Spot } from './hover/part';
import { aboutReading } from './hover/reading';
import { aboutStandard } from './hover/standard';
import { aboutWord } from './hover/word';
import { withoutMarks } from './markdown';
import type { Options } from './options';

/** Everything there is to say about one place: why it is marked, how its figures come about, what its word means. */
export function hover(snapshot: Snapshot, { position }: HoverParams, { abilities }: Options): Hover | null {
  const site = snapshot.site(position);
  const analysis = snapshot.block(site.block);
  const line = analysis.block.lines[site.line];
  if (!line) return null;
  const spot: Spot = { ...site, analysis, text: line.text, node: line.parsed(analysis.block.kind).node };
  const parts = [aboutFindings, aboutNextSteps, aboutReading, aboutOrder, aboutStandard, aboutWord].flatMap((about) =>
    about(spot),
  );
  const narrowest = [...parts].sort((a, b) => a.end - a.start - (b.end - b.start))[0];
  if (!narrowest) return null;
  const { markdownHover } = abilities;
  const value = parts
    .map(({ markdown }) => (markdownHover ? markdown : withoutMarks(markdown)))
    .join(markdownHover ? '\n\n---\n\n' : '\n\n');
  return {
    contents: { kind: markdownHover ? 'markdown' : 'plaintext', value },
    range: snapshot.range(site.block, { line: site.line, start: narrowest.start, end: narrowest.end }),
  };
}
