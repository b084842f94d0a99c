import type { Source } from './source';

/** Focimeters, impact resistance and protective eyewear. */
export const instrumentAndImpactSources = [
  {
    id: 'iso-8598-1996',
    title: 'ISO 8598:1996 with Corrigendum 1:1998, read as the identical TCVN 8290:2009',
    kind: 'standard',
    grade: 'published',
    where: 'm.thuvienphapluat.vn, document 912484',
    note: 'Some cells are hidden in the copy. The 2014 edition (part 1) was not seen.',
  },
  {
    id: 'iso-8598-from-memory',
    title: 'ISO 8598, from memory',
    kind: 'memory',
    grade: 'memory',
    where: 'not seen',
  },
  {
    id: 'focimeter-verification-rule',
    title: 'Chinese focimeter verification rule, technical requirements',
    kind: 'secondary',
    grade: 'secondary',
    where: 'newyifan.com; zero error also smilingsouls.net/zh/wage_264371',
  },
  {
    id: 'fda-impact-guidance-2010',
    title: 'FDA, Impact-Resistant Lenses: Questions and Answers, 2 September 2010, quoting 21 CFR 801.410',
    kind: 'guidance',
    grade: 'published',
    where: 'a public collection of regulatory texts; also docslib.org/download/5109805',
  },
  {
    id: 'ohio-4725.32',
    title: 'Ohio Revised Code 4725.32',
    kind: 'regulation',
    grade: 'published',
    where: 'the code itself, site not recorded',
    note: 'Repeats ball, mass and drop height.',
  },
  {
    id: 'fda-0910-0182-statement',
    title: 'OMB 0910-0182, supporting statement',
    kind: 'guidance',
    grade: 'published',
    where: 'docsbay.net/doc/735335',
    note: 'Repeats how long records are kept.',
  },
  {
    id: 'z87.1-2020-laboratory-manual',
    title: "A vision plan's laboratory manual, safety page, ANSI Z87.1-2020",
    kind: 'secondary',
    grade: 'secondary',
    where: 'site not recorded',
  },
  {
    id: 'z87.1-thickness-article',
    title: 'What is the minimum thickness of a safety lens, edition not named',
    kind: 'secondary',
    grade: 'secondary',
    where: 'biologyinsights.com',
  },
  {
    id: 'z87.1-2010-text',
    title: 'ANSI Z87.1-2010, clauses 6.2.5 and 9.14',
    kind: 'standard',
    grade: 'published',
    where: 'issuu.com, prontomarketing',
  },
  {
    id: 'z87.1-from-memory',
    title: 'ANSI Z87.1, from memory',
    kind: 'memory',
    grade: 'memory',
    where: 'not seen',
  },
] as const satisfies readonly Source[];
