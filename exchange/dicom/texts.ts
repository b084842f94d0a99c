/** Texts as the value representations of DICOM take them (PS3.5, 6.2). */

/** Most characters of one value. */
export const TEXT_LENGTHS = { SH: 16, LO: 64, PN: 64 } as const;

/** What parts values, names and components of names, and control characters. */
const PARTING = /[\\^=\p{Cc}]+/gu;

/** The text without what would part it into several values, cut to a length in characters. */
export const fitting = (text: string, length: number): string =>
  [...text.replace(PARTING, ' ').trim()].slice(0, length).join('').trim();
