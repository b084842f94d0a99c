import type { CodeLens, CodeLensParams } from 'vscode-languageserver';
import type { BlockAnalysis } from '../../orders';
import type { Snapshot } from '../snapshot';
import { isVeryLarge } from './large';
import { inShort } from './measures-in-short';
import { verdictInWords } from './verdict-words';

/**
 * Above each order its verdict, above each of its readings what came of it: how many measures are inside and outside,
 * and which one has used up most of its limit. Left off for very large files.
 */
export function codeLens(snapshot: Snapshot, _: CodeLensParams): CodeLens[] | null {
  if (isVeryLarge(snapshot)) return null;
  return snapshot.document.blocks.flatMap(({ kind }, block) => {
    if (kind !== 'order') return [];
    return lensesOf(snapshot.block(block)).map(
      ({ line, title }): CodeLens => ({
        range: snapshot.range(block, { line, start: 0, end: 0 }),
        // Something to read, and nothing to be done: such a command has no name.
        command: { title, command: '' },
      }),
    );
  });
}

function lensesOf({ order, evaluation }: BlockAnalysis): readonly { readonly line: number; readonly title: string }[] {
  if (!order || !evaluation) return [];
  const { measures, earlier } = evaluation;
  const ofReadings = order.readings.map(({ place }, at) => ({
    line: place.line,
    title: inShort([...measures, ...earlier].filter(({ reading }) => reading === at)) || 'nothing judged',
  }));
  const verdict = [verdictInWords(order, evaluation), inShort(measures)].filter(Boolean).join(' · ');
  return [{ line: order.place.line, title: verdict }, ...(evaluation.set ? ofReadings : [])];
}
