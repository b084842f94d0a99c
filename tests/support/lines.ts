/** What lines of the notation say, in few words, and the lines that tests start from. */
import { type BlockKind, type LineNode, type ParsedLine, parseLine } from '../../grammar';
import { mark } from './marks';

/** What stands where a figure could not be read. */
export const UNREADABLE = '?';

/**
 * A node without spans, without what was left out, and with figures, names, words and eyes as bare values: `R -4.50`
 * becomes `{ kind: 'power', entries: [{ eye: 'R', power: { form: 'sphero-cylinder', sphere: -4.5 } }] }`.
 */
export function said(line: string, block?: BlockKind): unknown {
  const { head: _, ...node } = parseLine(line, block).node;
  return bare(node);
}

function bare(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(bare);
  if (typeof value !== 'object' || value === null) return value;
  const part = value as Record<string, unknown>;
  if ('decimals' in part) return part.value ?? UNREADABLE;
  const kept = Object.entries(part).filter(([key]) => key !== 'start' && key !== 'end');
  const [only] = kept;
  if (kept.length === 0) return true;
  if (only && kept.length === 1 && ['text', 'word', 'eye', 'iso'].includes(only[0])) return only[1] ?? UNREADABLE;
  return Object.fromEntries(kept.filter(([, it]) => !isLeftOut(it)).map(([key, it]) => [key, bare(it)]));
}

const isLeftOut = (value: unknown): boolean =>
  value === null || value === false || (Array.isArray(value) && value.length === 0);

/** The codes of a line's problems in the order of their places, and the line with their places marked. */
export function told(line: string, block?: BlockKind): { readonly codes: readonly string[]; readonly marked: string } {
  const problems = [...parseLine(line, block).problems].sort((a, b) => a.start - b.start || b.end - a.end);
  return { codes: problems.map(({ code }) => code), marked: mark(line, problems) };
}

/** A tree that can be compared wherever its parts stand. */
export const withoutPlaces = ({ node }: ParsedLine): unknown =>
  JSON.parse(JSON.stringify(node, (key, value) => (key === 'start' || key === 'end' ? undefined : value)));

export type Kind = LineNode['kind'];

/** The example of the notation: a bench, an instrument, and an order with its reading. */
export const BENCH = `# Quay Lane bench, week 48
standard z80.1-2015

instrument FOC-A
  kind        manual focimeter
  reads-to    0.125
  calibrated  2026-05-14 due 2027-05-14
  test-lens   +5.00 read +5.06
  test-lens   -10.00 read -9.94

order QL-1042
  R           -4.50 -0.75 x 022
  L           -4.25 -1.00 x 168
  add         +2.00
  pd          63 near 60
  height      17
  design      bifocal flat-top 28
  lens        resin-1.50
  base-curve  4.00
  frame       A 52  B 36  DBL 18  ED 55
  supply      glazed

  reading 2026-11-24 14:30 by KO with FOC-A
    zero     +0.03
    R        -4.50 -0.62 x 024
    L        lines -4.25 / -5.25 x 168
    add      R -4.50 -> -2.50 front-vertex
    add      L +2.00
    pd       63.5 near 60
    prism    R 0  L 0
    height   R 17  L 16.5
    base-curve R 4.12  L 4.00
    cosmetic passed
`;
