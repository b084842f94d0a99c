import type { Evidence } from './evidence';

/** A document or account that a figure or formula of this project rests on. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly kind: 'standard' | 'regulation' | 'guidance' | 'secondary' | 'course' | 'book' | 'journal' | 'memory';
  /** The firmest evidence that a cell citing this source may claim. */
  readonly grade: Evidence;
  /** Where it was read, in free words. */
  readonly where: string;
  readonly note?: string;
}

export const sources = [
  // United States, dress eyewear.
  {
    id: 'z80.1-2015-reference-guide',
    title: 'Quick Reference Guide, ANSI Z80.1-2015',
    kind: 'secondary',
    grade: 'secondary',
    where: 'docslib.org/download/92180',
    note: 'The copy breaks off in item 6.',
  },
  {
    id: 'z80.1-1999-page',
    title: 'American National Standard Z80.1-1999, tables as reproduced by a laboratory',
    kind: 'secondary',
    grade: 'secondary',
    where: 'hollywoodoptical.com/surfacedLensStandards.htm',
    note: 'The copy breaks off in item 8.',
  },
  {
    id: 'z80.1-2010-summary',
    title: 'ANSI Z80.1-2010 Summary',
    kind: 'secondary',
    grade: 'secondary',
    where: 'a continuing-education summary page, site not recorded',
    note: 'The copy breaks off in the rows for progressive lenses.',
  },
  {
    id: 'z80.1-2005-white-paper',
    title: 'D. Torgersen, white paper on ANSI Z80.1-2005',
    kind: 'secondary',
    grade: 'secondary',
    where: 'scribd.com/document/40096878; same text at buenastareas.com',
    note: 'Derives the axis limits from the rotation that leaves 0.12 D.',
  },
  {
    id: 'z80.1-2015-study-page',
    title: 'ANSI Standards (2015), study page for opticians',
    kind: 'course',
    grade: 'secondary',
    where: 'opticianstudy.com/ansi-standards-optical-abo',
  },
  {
    id: 'z80.1-course-cards',
    title: 'Optometry course cards on ANSI tolerances',
    kind: 'course',
    grade: 'secondary',
    where: 'knowt.com/flashcards/787c3dbe',
  },
  {
    id: 'z80.1-2005-abstract',
    title: 'Abstract on the change of tolerances in ANSI Z80.1-2005, Optometry 2006;77:343-9',
    kind: 'journal',
    grade: 'secondary',
    where: 'pubmed 16814238',
  },
  {
    id: 'z80.1-cards-a',
    title: 'Study cards "Ansi", edition not named',
    kind: 'course',
    grade: 'secondary',
    where: 'freezingblue.com/flashcards/243561',
    note: 'Has slips in the cylinder columns, which are not used.',
  },
  {
    id: 'z80.1-cards-b',
    title: 'Study cards "ANSI Standards", edition not named',
    kind: 'course',
    grade: 'secondary',
    where: 'brainscape.com, pack 21309369',
    note: 'Breaks off. Its segment sizes (0.05 mm, pair 0.5 mm) contradict the 1999 page and are not used.',
  },
  {
    id: 'z80.1-2010-single-lens-quotation',
    title: 'ANSI Z80.1-2010, clauses 5.1.4 and 8.4 as quoted in a discussion of prism inspection',
    kind: 'standard',
    grade: 'published',
    where: 'optiboard.com, thread 61288',
    note: 'By quotation: 5.1.4 joins the two limits, 8.4 lets a lens pass on the second.',
  },
  {
    id: 'z80.1-2010-horizontal-quotation',
    title: 'ANSI Z80.1, clause 8.5.2 as quoted in a discussion of horizontal prism',
    kind: 'standard',
    grade: 'published',
    where: 'optiboard.com, "Horizontal Prism Tolerance Question"',
    note: 'By quotation. The procedure starts from the lens stronger along the horizontal.',
  },
  {
    id: 'z80.1-2005-progressive-quotation',
    title: 'ANSI Z80.1-2005, mounted progressive lenses, as quoted in a discussion of centration',
    kind: 'standard',
    grade: 'published',
    where: 'optiboard.com, "Tolerance for optical center placement (PD) on progressive segs"',
    note: 'By quotation: 3.75 D, 0.67 prism dioptres, 1.0 mm.',
  },
  {
    id: 'height-quiz',
    title: 'College quiz, midterm review 2',
    kind: 'course',
    grade: 'secondary',
    where: 'jeopardylabs.com',
    note: 'Spells 3.375 D and fails heights 2 mm apart; addition under 4.00 D within 0.12 D.',
  },
  {
    id: 'virginia-18-vac-80-30-120',
    title: '18 VAC 80-30-120, Virginia, 2012 text of an older rule',
    kind: 'regulation',
    grade: 'published',
    where: 'varules.elaws.us',
    note: 'The column with the axis limits is lost in the copy.',
  },
  {
    id: 'z80.1-from-memory',
    title: 'ANSI Z80.1, from memory',
    kind: 'memory',
    grade: 'memory',
    where: 'not seen',
    note: 'The bought text of the standard rules.',
  },
] as const satisfies readonly Source[];

export type SourceId = (typeof sources)[number]['id'];
