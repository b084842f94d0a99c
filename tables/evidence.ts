/**
 * How well a figure is established.
 *
 * - `published`: seen in the standard, regulation or official guidance itself, or in a quotation of its text.
 * - `secondary`: seen in an account of it: a summary sheet, a study guide, an article.
 * - `memory`: not seen; written down from memory, or carried over from a neighbouring edition.
 */
export type Evidence = 'published' | 'secondary' | 'memory';

/** From firm to weak, so that the weakest evidence behind a verdict can be named. */
export const EVIDENCE_FROM_FIRM_TO_WEAK: readonly Evidence[] = ['published', 'secondary', 'memory'];
