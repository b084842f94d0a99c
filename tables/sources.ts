import { dressEyewearSources } from './sources/dress-eyewear';
import { formulaSources } from './sources/formulas';
import { instrumentAndImpactSources } from './sources/instruments-and-impact';
import { isoSources } from './sources/iso';
import { materialSources } from './sources/materials';

export type { Source } from './sources/source';

/** Every source that a table, a formula or the page of a finding cites, once. */
export const sources = [
  ...dressEyewearSources,
  ...isoSources,
  ...instrumentAndImpactSources,
  ...materialSources,
  ...formulaSources,
] as const;

export type SourceId = (typeof sources)[number]['id'];
