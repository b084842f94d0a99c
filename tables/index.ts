export { EVIDENCE_FROM_FIRM_TO_WEAK, type Evidence } from './evidence';
export * from './focimeters';
export * from './impact';
export * from './materials';
export { type Source, type SourceId, sources } from './sources';
export { toleranceSetById, toleranceSets } from './standards';
export { type LensClassMembers, lensClasses } from './standards/lens-classes';
export type * from './standards/tolerance-set';
