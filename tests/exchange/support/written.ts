import type { FindingsWriter } from '../../../exchange';
import type { Analysis } from '../../../orders';

/** What a writer makes of these files and of one more that cannot be read. */
export function written(
  writer: FindingsWriter,
  files: readonly (readonly [path: string, analysis: Analysis])[],
): string {
  const parts = [writer.start()];
  for (const [path, { document, blocks }] of files) {
    parts.push(writer.openFile(path));
    for (const [at, block] of blocks.entries()) parts.push(writer.block(block, document.starts[at] as number));
    parts.push(writer.closeFile());
  }
  parts.push(writer.unreadable('gone.lentil', 'no permission to read it'), writer.end());
  return parts.join('');
}
