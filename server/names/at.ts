import type { Position } from 'vscode-languageserver';
import type { Block } from '../../grammar';
import type { Snapshot } from '../snapshot';
import { type Named, namesOf } from './names';

export interface NameAt extends Named {
  /** Index of its block; the line is counted from there. */
  readonly block: number;
}

/** The name of an order, an instrument or a tolerance that stands at a place. */
export function nameAt(snapshot: Snapshot, position: Position): NameAt | null {
  const { block, line, character } = snapshot.site(position);
  const found = namesOf(snapshot.document.blocks[block] as Block).find(
    (one) => one.line === line && one.start <= character && character <= one.end,
  );
  return found ? { ...found, block } : null;
}
