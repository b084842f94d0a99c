import type { ReportJson } from '../../report-json';
import { times } from '../figures';
import { markup } from '../markup';
import type { Section } from '../section';
import { table } from '../table';

/** Null where every file could be read. */
export function files({ unreadable, scope }: ReportJson): Section | null {
  if (scope.filesUnreadable === 0) return null;
  const left = scope.filesUnreadable - unreadable.length;
  return {
    id: 'files',
    title: 'Files that could not be read',
    body: [
      markup`<p>The report is of the other files.</p>\n`,
      table(
        [
          { title: 'File', cell: ({ path }) => markup`<code>${path}</code>` },
          { title: 'Why', cell: ({ error }) => error },
        ],
        unreadable,
        { caption: 'Files that could not be read', tall: true },
      ),
      left > 0 ? markup`<p>And ${times(left, 'more file')}.</p>\n` : null,
    ],
  };
}
