import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { root } from './examples';

/**
 * Real pairs of spectacles as read on an automatic lensmeter, with the wearers' refraction: public-use files VIX of the
 * National Health and Nutrition Examination Survey, 1999 to 2008, National Center for Health Statistics. Cylinders are in
 * plus form as recorded. The table is not part of the project and may be absent.
 */
const table = join(root, '../shared/data/lensmeter-readings.csv');

export interface Figures {
  readonly sphere: number;
  readonly cylinder: number;
  /** As recorded, 0 to 180; 0 is horizontal like 180. */
  readonly axis: number;
}

export type Eyes = Readonly<Record<'R' | 'L', Figures | null>>;

export interface Row {
  readonly n: string;
  readonly glasses: Eyes;
  readonly refraction: Eyes;
}

/** All rows, or null where the table is absent. */
export function lensmeterReadings(): readonly Row[] | null {
  if (!existsSync(table)) return null;
  const records: readonly Record<string, string>[] = parse(readFileSync(table), { columns: true });
  return records.map((record) => ({
    n: record.n ?? '',
    glasses: { R: figures(record, 'glasses_r'), L: figures(record, 'glasses_l') },
    refraction: { R: figures(record, 'refraction_r'), L: figures(record, 'refraction_l') },
  }));
}

/** A lens that could be obtained in full; a sphere needs no axis. */
function figures(record: Record<string, string>, lens: string): Figures | null {
  const [sphere, cylinder, axis] = ['sphere', 'cylinder', 'axis'].map((part) => record[`${lens}_${part}`]);
  if (!sphere || !cylinder) return null;
  if (Number(cylinder) !== 0 && !axis) return null;
  return { sphere: Number(sphere), cylinder: Number(cylinder), axis: Number(cylinder) === 0 ? 180 : Number(axis) };
}
