import { dressEyewearSources } from './sources/dress-eyewear';
import { instrumentAndImpactSources } from './sources/instruments-and-impact';
import { isoSources } from './sources/iso';
import { materialSources } from './sources/materials';

export type { Source } from './sources/source';

/** Every source that a table or the page of a finding cites, once. */
export const sources = [
  ...dressEyewearSources,
  ...isoSources,
  ...instrumentAndImpactSources,
  ...materialSources,
] as const;

export type SourceId = (typeof sources)[number]['id'];
