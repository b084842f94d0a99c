/** Problems of the writing, as the grammar told them, with the level their rules give them where they stand. */
import {
  type Block,
  type Line,
  type LineNode,
  lineWord,
  type Problem,
  type SectionKind,
  sectionsOf,
  type Word,
} from '../../grammar';
import type { Finding } from '../finding';
import { ruleOf } from './catalogue';
import { readingProblems } from './reading-problems';
import type { BlockOfFinding } from './rule';

const PLACES: Readonly<Record<SectionKind, BlockOfFinding>> = {
  reading: 'reading',
  'reading-header': 'reading',
  header: 'order',
  body: 'order',
  file: 'order',
  none: 'order',
};

/** Blocks whose lines a block word does not govern: their lines are told as a whole, not one by one. */
const WITHOUT_HOME = new Set<Block['kind']>(['preamble', 'unnamed']);

export function writingFindings(block: Block): Finding[] {
  const findings: Finding[] = [];
  if (block.kind === 'unnamed') return [unnamed(block)];
  const isHomeless = WITHOUT_HOME.has(block.kind);
  const sections = block.kind === 'order' ? sectionsOf(block) : null;
  for (let number = 0; number < block.lines.length; number++) {
    const line = block.lines[number] as Line;
    const { node, problems } = line.parsed(block.kind);
    const where: BlockOfFinding = sections ? PLACES[sections[number]?.kind ?? 'none'] : 'other';
    if (isHomeless && node.kind !== 'blank' && node.kind !== 'standard' && node.kind !== 'unknown') {
      if (node.head)
        findings.push(finding({ code: 'line-outside', ...node.head, data: { word: node.head.word } }, number, where));
      continue;
    }
    if (!isHome(block, node)) {
      const { word } = node.head as Word;
      findings.push(
        finding({ code: 'line-outside', ...(node.head as Word), data: { word, in: block.kind } }, number, where),
      );
      continue;
    }
    const told = where === 'reading' ? readingProblems(line, node, problems) : problems;
    for (const problem of told) findings.push(finding(problem, number, where));
  }
  return findings;
}

/** Whether a block that describes something may hold a line; an order tells what it cannot hold where it is resolved. */
function isHome({ kind }: Block, { head, kind: node }: LineNode): boolean {
  if (kind !== 'instrument' && kind !== 'tolerance' && kind !== 'defaults') return true;
  if (!head || node === kind || node === 'unknown' || node === 'standard') return true;
  return lineWord(head.word)?.blocks.includes(kind) ?? true;
}

function unnamed(block: Block): Finding {
  const node = block.lines[0]?.parsed(block.kind).node;
  const { start = 0, end = 0, word = '' } = node?.head ?? {};
  return finding({ code: 'block-unnamed', start, end, data: { word } }, 0, 'other');
}

function finding({ code, start, end, data = {} }: Problem, line: number, where: BlockOfFinding): Finding {
  const level = ruleOf(code)?.level ?? 'error';
  return { code, level: typeof level === 'function' ? level(data, where) : level, line, start, end, data, eye: null };
}
