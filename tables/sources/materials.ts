import type { Source } from './source';

/** Lens materials. */
export const materialSources = [
  {
    id: 'opticianry-course-materials',
    title: 'National Federation of Opticianry Schools, OPT11, surface and vertex power answers',
    kind: 'course',
    grade: 'secondary',
    where: 'nfos.org/degree/opt11, answers 06a, practice answers 06 and 11a',
    note: 'Uses crown glass 1.523, allyl diglycol carbonate 1.498, polycarbonate 1.586 and tooling index 1.530.',
  },
  {
    id: 'jalie-materials',
    title: 'M. Jalie, physical data of lens materials',
    kind: 'secondary',
    grade: 'secondary',
    where: 'precision-optical.co.uk/Resources/Jalie/Lens_Data.html',
    note: 'Index classes of the British standard, and which reference line is used where.',
  },
  {
    id: 'material-handbooks-from-memory',
    title:
      'Jalie, Principles of Ophthalmic Lenses; Brooks and Borish, System for Ophthalmic Dispensing; Fannin and Grosvenor, Clinical Optics: material lists, from memory',
    kind: 'memory',
    grade: 'memory',
    where: 'not seen',
    note: 'Sheets vary by about 1 in the Abbe number and 0.02 in density; the maker of the blank knows better.',
  },
  {
    id: 'mid-index-resin-from-memory',
    title: 'Resin 1.56, trade figures from memory',
    kind: 'memory',
    grade: 'memory',
    where: 'not seen',
    note: 'Stands in none of the handbook lists; several resins share the label.',
  },
] as const satisfies readonly Source[];
