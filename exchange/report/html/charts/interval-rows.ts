import type { Markup } from '../markup';
import { dot, label, marksWithin, picture, rule, scaleFrom, type Words } from './picture';

export interface IntervalRow {
  readonly name: string;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly small: boolean;
  /** Written at the end of the row. */
  readonly said: string;
}

export interface IntervalOptions extends Words {
  /** Where a dashed line stands to compare with, and its name. */
  readonly line: { readonly at: number; readonly name: string };
  readonly range: readonly [number, number];
  readonly mark: (value: number) => string;
}

const WIDTH = 760;
const ROW = 28;
const NAMES = 170;
const ENDS = 600;
const TOP = 24;

/** A dot with its interval for each name, hollow where the sample is small. */
export function intervalRows(rows: readonly IntervalRow[], { line, range, mark, ...words }: IntervalOptions): Markup {
  const x = scaleFrom(range, [NAMES, ENDS]);
  const bottom = TOP + rows.length * ROW;
  const marks = marksWithin(range, 5).map((at) => [
    rule(x(at), TOP, x(at), bottom, 'grid'),
    label(x(at), bottom + 16, mark(at), 'middle'),
  ]);
  const drawn = rows.map(({ name, value, low, high, small, said }, at) => {
    const y = TOP + at * ROW + ROW / 2;
    return [
      label(NAMES - 10, y + 4, name, 'end'),
      low === null || high === null ? null : rule(x(low), y, x(high), y, 'whisker'),
      dot(x(value), y, small ? 'hollow' : 'point'),
      label(WIDTH - 8, y + 4, said, 'end'),
    ];
  });
  return picture({ width: WIDTH, height: bottom + 24 }, words, [
    marks,
    rule(x(line.at), TOP - 4, x(line.at), bottom, 'limit'),
    label(x(line.at), TOP - 9, line.name, 'middle', 'quiet'),
    drawn,
  ]);
}
