import { PUBLISHED } from '../../published';
import { markup } from '../markup';
import type { Section } from '../section';
import { table } from '../table';

export const published = (): Section => ({
  id: 'published',
  title: 'Published figures, for context',
  body: [
    markup`<p>Other samples, other limits and other ways of counting: these are no targets, and a laboratory cannot be held against them. They were taken from the accounts named beside them.</p>\n`,
    table(
      [
        { title: 'What', cell: ({ what }) => what },
        { title: 'Sample', cell: ({ sample }) => sample },
        { title: 'Result', cell: ({ result }) => result },
        { title: 'Source', cell: ({ source, address }) => markup`<a href="${address}">${source}</a>` },
      ],
      PUBLISHED,
      { caption: 'Published figures' },
    ),
  ],
});
