/** Names that a line may refer to: instruments, tolerance sets, materials, orders, codes, people, and today. */
import { CompletionItemKind } from 'vscode-languageserver';
import { type Block, meaningsOf, VOCABULARY } from '../../../grammar';
import { canBeConfirmed, figure, type Instrument, materials, RULES, toleranceSets } from '../../../orders';
import type { Snapshot } from '../../snapshot';
import { TAKEN_LINES } from './clauses';
import { type Cursor, headOf, isFigure, partsBefore } from './cursor';
import { asName, type Offer, wordOffer } from './offer';

export interface Names {
  readonly offers: readonly Offer[];
  /** Whether nothing but one of them can stand here. */
  readonly only: boolean;
  /** Whether there are more than are listed. */
  readonly more: boolean;
}

/** Null where no name is wanted. */
export function namesAt(snapshot: Snapshot, cursor: Cursor, today: string): Names | null {
  const parts = partsBefore(cursor.text, cursor.name.start);
  const head = headOf(parts);
  if (head === null) return null;
  const last = parts.at(-1) ?? '';
  const isFirst = parts.length === 1;
  const all = (offers: readonly Offer[], only = true): Names => ({ offers, only, more: false });
  if (isFirst) {
    if (head === 'standard') return all([...houses(snapshot), ...SETS]);
    if (head === 'confirmed') return all(codes(snapshot, cursor.block));
    if (head === 'remake-of') return orders(snapshot, cursor);
    if (head === 'reading' || head === 'calibrated') return all([dayOffer(today)], false);
  }
  if (head === 'lens' && (isFirst || isEye(last))) return all(MATERIALS, false);
  if (head === 'tolerance' && last === 'from') return all(SETS);
  if (last === 'by' && SIGNED.has(head)) return all(people(snapshot, cursor.block));
  const isHeader = head === 'reading';
  const isTaken = cursor.lineRoom === 'reading' && TAKEN_LINES.has(head);
  if (last === 'with' && (isHeader || isTaken))
    return all([...snapshot.context.instruments.values()].map(instrumentOffer));
  if (last === 'stage' && isHeader) return all(choicesOf('stage'));
  return last === 'at' && isTaken ? all(choicesOf('at')) : null;
}

/** Lines that say who did something. */
const SIGNED = new Set(['reading', 'decided', 'confirmed']);

const isEye = (part: string): boolean => !isFigure(part) && meaningsOf(part).some(({ role }) => role === 'eye');

const choicesOf = (of: string): Offer[] =>
  VOCABULARY.filter((entry) => entry.role === 'choice' && entry.of.includes(of)).map((entry) => wordOffer(entry));

const named = (name: string, kind: CompletionItemKind, more: Partial<Offer> = {}): Offer => ({
  label: name,
  text: asName(name),
  kind,
  ...more,
});

const SETS: readonly Offer[] = toleranceSets.map(({ id, title }) =>
  named(id, CompletionItemKind.Interface, { detail: title, about: { what: 'standard', id } }),
);

const MATERIALS: readonly Offer[] = materials.map(({ id, title, spellings }) =>
  named(id, CompletionItemKind.Constant, { detail: title, also: spellings, about: { what: 'material', id } }),
);

const houses = ({ context }: Snapshot): Offer[] =>
  [...context.houses.values()].map(({ name, parent }) =>
    named(name, CompletionItemKind.Interface, { detail: parent === null ? 'house set' : `house set from ${parent}` }),
  );

const instrumentOffer = ({ name, kind, step }: Instrument): Offer =>
  named(name, CompletionItemKind.Reference, {
    detail: [kind ?? '', step === null ? '' : `reads to ${figure(step)} D`].filter(Boolean).join(', '),
  });

const dayOffer = (today: string): Offer => ({ label: today, kind: CompletionItemKind.Value, detail: 'Today.' });

/** Findings of this order that a person may confirm come before all others. */
function codes(snapshot: Snapshot, block: number): Offer[] {
  const told = snapshot.block(block).findings.filter(canBeConfirmed);
  const all = [...told.map(({ code }) => code), ...RULES.filter(canBeConfirmed).map(({ code }) => code)];
  return [...new Set(all)].map((id) => named(id, CompletionItemKind.Constant, { about: { what: 'code', id } }));
}

/** So many blocks are looked at on either side, so that the time does not grow with the file. */
const NEAR = 500;
const HEADER = /^\s*order\s+([^\s"#“„«]+)/i;

/** Other orders, the nearest first. */
function orders({ document: { blocks } }: Snapshot, { block }: Cursor): Names {
  const names = new Set<string>();
  for (let away = 1; away <= NEAR; away++) {
    for (const at of [block - away, block + away]) {
      const name = nameOf(blocks[at]);
      if (name !== null) names.add(name);
    }
  }
  const offers = [...names].map((name) => named(name, CompletionItemKind.Reference));
  return { offers, only: true, more: block > NEAR || blocks.length - block > NEAR + 1 };
}

function nameOf(block: Block | undefined): string | null {
  if (block?.kind !== 'order') return null;
  const header = block.lines[0];
  const plain = HEADER.exec(header?.text ?? '')?.[1];
  if (plain !== undefined) return plain;
  const node = header?.parsed('order').node;
  return node?.kind === 'order' ? (node.name?.text ?? null) : null;
}

/** So many orders above are asked who took their readings. */
const LATELY = 5;

/** Who stands in the readings of this order and of those just above it. */
function people(snapshot: Snapshot, block: number): Offer[] {
  const found = new Set<string>();
  for (let at = block; at >= Math.max(0, block - LATELY); at--) {
    for (const { by } of snapshot.block(at).order?.readings ?? []) if (by !== null) found.add(by);
  }
  return [...found].map((name) => named(name, CompletionItemKind.Text));
}
