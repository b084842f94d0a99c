import { iso_8980_2004 } from './iso-8980-2004';
import { iso_8980_2017 } from './iso-8980-2017';
import { iso_21987_2017 } from './iso-21987-2017';
import { nj_13_35_5_2 } from './nj-13-35-5.2';
import type { ToleranceSet } from './tolerance-set';
import { z80_1_1999 } from './z80.1-1999';
import { z80_1_2010 } from './z80.1-2010';
import { z80_1_2015 } from './z80.1-2015';

/** The built-in tolerance sets, in the order in which they are shown. */
export const toleranceSets: readonly ToleranceSet[] = [
  z80_1_2015,
  z80_1_2010,
  z80_1_1999,
  iso_21987_2017,
  iso_8980_2017,
  iso_8980_2004,
  nj_13_35_5_2,
];

/** The same sets by id. Names compare exactly. */
export const toleranceSetById: ReadonlyMap<string, ToleranceSet> = new Map(toleranceSets.map((set) => [set.id, set]));
