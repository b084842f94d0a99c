import {
  type CompletionItem,
  type CompletionList,
  type CompletionParams,
  CompletionTriggerKind,
} from 'vscode-languageserver';
import type { Block, Span } from '../../grammar';
import type { Abilities } from '../abilities';
import type { Snapshot } from '../snapshot';
import { type Cursor, cursorAt } from './completion/cursor';
import { type About, documentationOf } from './completion/documentation';
import { eyeNamesOf } from './completion/eye-names';
import { insideLine } from './completion/inside-line';
import { lineWords } from './completion/line-words';
import { type Names, namesAt } from './completion/names';
import { itemOf, type Offer } from './completion/offer';
import { wholeBlocks } from './completion/whole-blocks';
import { lineEndOf } from './lines';
import type { Options } from './options';

/** A blank asks for words only where one of a few has to stand; anywhere else they would be in the way of typing. */
export const TRIGGERS: readonly string[] = [' '];

/**
 * What may be written at the cursor, the likeliest first: at the head of a line the words of its block, further on what
 * this line may say next. Looks at the block of the cursor and a fixed number of blocks around it.
 */
export function completion(
  snapshot: Snapshot,
  { position, context }: CompletionParams,
  { abilities, today }: Options,
): CompletionList | null {
  const site = snapshot.site(position);
  const block = snapshot.document.blocks[site.block] as Block;
  const cursor = cursorAt(block, site);
  if (!cursor) return null;
  const byBlank = context?.triggerKind === CompletionTriggerKind.TriggerCharacter;
  const { offers, span, more } = offersAt(snapshot, block, cursor, today, byBlank);
  if (offers.length === 0) return null;
  const range = snapshot.range(site.block, { line: site.line, ...span });
  const lineEnd = lineEndOf(snapshot);
  const isAlone = span.end >= cursor.text.trimEnd().length;
  return {
    isIncomplete: more,
    // Whole blocks cannot be set in front of what the line says already.
    items: offers
      .filter(({ snippet }) => snippet === undefined || isAlone)
      .map((offer, place) => itemOf(offer, place, range, lineEnd, abilities)),
  };
}

interface Found {
  readonly offers: readonly Offer[];
  readonly span: Span;
  readonly more: boolean;
}

function offersAt(snapshot: Snapshot, block: Block, cursor: Cursor, today: string, byBlank: boolean): Found {
  const { text, word, name, character } = cursor;
  const found = (offers: readonly Offer[], span: Span, more = false): Found => ({ offers, span, more });
  if (text.slice(0, name.start).trim() === '') {
    // A blank at the beginning of a line is indentation.
    if (byBlank || word.start > name.start) return found([], word);
    const eyes = eyeNamesOf(block);
    return found([...lineWords(block, cursor, eyes), ...wholeBlocks(snapshot, cursor, eyes, today)], word);
  }
  const names: Names | null = namesAt(snapshot, cursor, today);
  if (names?.only) return found(names.offers, name, names.more);
  // Right behind a figure or a mark nothing is begun yet.
  const isBegun = word.start < character || character === name.start;
  const { closed, open } = isBegun ? insideLine(cursor, eyeNamesOf(block)) : { closed: [], open: [] };
  const words = byBlank && closed.length === 0 ? [] : [...closed, ...open];
  return names ? found([...names.offers, ...words], name, names.more) : found(words, word);
}

/** The words about an item, for an editor that asks for them when it shows the item. */
export function resolveCompletion(item: CompletionItem, { markdownCompletion }: Abilities): CompletionItem {
  const about = item.data as About | undefined;
  return about ? { ...item, documentation: documentationOf(about, markdownCompletion) } : item;
}
