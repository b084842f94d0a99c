/** Data sets in the DICOM JSON model (PS3.18 Annex F): keys in ascending order at every level, and no value where none is. */
import { elementOf, type Keyword } from './tags';

/** A name by its forms of writing. */
export interface DicomPersonName {
  readonly Alphabetic?: string;
  readonly Ideographic?: string;
  readonly Phonetic?: string;
}

/** One value of an element. */
export type DicomValue = string | number | null | DicomPersonName | DicomDataSet;

/** One element of a data set. */
export interface DicomElement {
  readonly vr: string;
  readonly Value?: readonly DicomValue[];
  readonly BulkDataURI?: string;
  readonly InlineBinary?: string;
}

/** A data set of the DICOM JSON model, by tag. */
export interface DicomDataSet {
  readonly [tag: string]: DicomElement;
}

/** A data set from its elements by keyword. An empty text is an element without a value; undefined is no element. */
export function dataSetOf(elements: Partial<Record<Keyword, DicomValue | undefined>>): DicomDataSet {
  const entries = Object.entries(elements).flatMap(([keyword, value]): [string, DicomElement][] => {
    if (value === undefined) return [];
    const { tag, vr } = elementOf(keyword as Keyword);
    return [[tag, value === '' || value === null ? { vr } : { vr, Value: [value] }]];
  });
  return Object.fromEntries(entries.sort(([one], [other]) => (one < other ? -1 : 1)));
}
