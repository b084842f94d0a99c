import {
  type DocumentSymbol,
  type DocumentSymbolParams,
  type SymbolInformation,
  SymbolKind,
} from 'vscode-languageserver';
import type { BlockAnalysis, Place, Reading } from '../../orders';
import type { Snapshot } from '../snapshot';
import { contentEnd, lastLine } from './lines';
import type { Options } from './options';
import { verdictInWords } from './verdict-words';

/** More symbols than anybody reads make an editor slow; what is left out is told at the end. */
const MOST = 5_000;

const KINDS = {
  preamble: SymbolKind.File,
  order: SymbolKind.Class,
  instrument: SymbolKind.Object,
  defaults: SymbolKind.Namespace,
  tolerance: SymbolKind.Interface,
  unnamed: SymbolKind.Null,
} as const;

/** The outline: blocks by their names, orders with their verdict, and their readings below them. */
export function documentSymbols(
  snapshot: Snapshot,
  _: DocumentSymbolParams,
  { abilities }: Options,
): DocumentSymbol[] | SymbolInformation[] {
  const symbols: DocumentSymbol[] = [];
  const { blocks } = snapshot.document;
  for (let index = 0; index < blocks.length && symbols.length < MOST; index++) {
    if (blocks[index]?.kind !== 'preamble') symbols.push(blockSymbol(snapshot, index));
  }
  const left = blocks.length - symbols.length - (blocks[0]?.kind === 'preamble' ? 1 : 0);
  if (left > 0) symbols.push(leftOut(snapshot, blocks.length - left, left));
  return abilities.nestedSymbols ? symbols : symbols.flatMap((symbol) => flat(snapshot.uri, symbol, undefined));
}

function blockSymbol(snapshot: Snapshot, index: number): DocumentSymbol {
  const analysis = snapshot.block(index);
  const { block, order, evaluation } = analysis;
  const last = lastLine(block.lines.map(({ text }) => text));
  const header = block.lines[0]?.text ?? '';
  const [word = '', ...name] = header.slice(0, contentEnd(header)).trim().split(/\s+/);
  return {
    name: named(block.kind === 'order' ? (order?.name ?? '') : name.join(' '), word),
    kind: KINDS[block.kind],
    detail: order && evaluation ? verdictInWords(order, evaluation) : block.kind === 'order' ? '' : word.toLowerCase(),
    range: wholeLines(snapshot, index, 0, last, block),
    selectionRange: snapshot.range(index, order?.place ?? { line: 0, start: 0, end: contentEnd(header) }),
    children: (order?.readings ?? []).map((reading, at, all) =>
      readingSymbol(snapshot, index, analysis, reading, all[at + 1]?.place.line ?? last + 1),
    ),
  };
}

function readingSymbol(
  snapshot: Snapshot,
  index: number,
  { block }: BlockAnalysis,
  { place, date, time, with: instrument, stage }: Reading,
  next: number,
): DocumentSymbol {
  const last = place.line + lastLine(block.lines.slice(place.line, next).map(({ text }) => text));
  const detail = [instrument ? `with ${instrument}` : '', stage === 'final' ? '' : stage].filter(Boolean).join(', ');
  return {
    name: named([date, time].filter(Boolean).join(' '), 'reading'),
    kind: SymbolKind.Event,
    detail,
    range: wholeLines(snapshot, index, place.line, last, block),
    selectionRange: snapshot.range(index, place),
  };
}

/** An editor refuses a whole outline for one blank name. */
const named = (name: string, otherwise: string): string => (name.trim() === '' ? otherwise || 'block' : name);

const wholeLines = (snapshot: Snapshot, index: number, first: number, last: number, block: BlockAnalysis['block']) => ({
  start: snapshot.range(index, { line: first, start: 0, end: 0 }).start,
  end: snapshot.range(index, endOf(block, last)).end,
});

function endOf(block: BlockAnalysis['block'], line: number): Place {
  const { length } = block.lines[line]?.text ?? '';
  return { line, start: length, end: length };
}

function leftOut(snapshot: Snapshot, index: number, count: number): DocumentSymbol {
  const range = snapshot.range(index, { line: 0, start: 0, end: 0 });
  return { name: `… ${count} more blocks, not listed`, kind: SymbolKind.Null, range, selectionRange: range };
}

const flat = (uri: string, symbol: DocumentSymbol, container: string | undefined): SymbolInformation[] => [
  {
    name: symbol.name,
    kind: symbol.kind,
    location: { uri, range: symbol.range },
    ...(container ? { containerName: container } : {}),
  },
  ...(symbol.children ?? []).flatMap((child) => flat(uri, child, symbol.name)),
];
