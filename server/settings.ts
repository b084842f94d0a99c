/**
 * Settings as an editor sends them. Whatever is missing, of a wrong type or not among the choices gives the default of
 * that one setting; the others are taken all the same.
 */
import { GUARD_BANDS, type GuardBand, ruleOf } from '../orders';
import type { ShownLevel } from './snapshot';

export interface Settings {
  /** Tolerance set for orders and files that name none. */
  readonly standard: string | null;
  /** What to do with a reading that its instrument cannot tell from the limit. */
  readonly guard: GuardBand;
  /** From how many percent of its limit on a deviation that passes is told; null tells none. */
  readonly nearPercent: number | null;
  /** Most findings published for one document. */
  readonly most: number;
  /** Levels at which findings of single codes are shown. */
  readonly levels: ReadonlyMap<string, ShownLevel>;
  readonly hints: HintSettings;
}

export const CYLINDER_FORMS = ['other', 'minus', 'plus'] as const;
export const HINT_KINDS = ['verdict', 'ordered', 'read', 'defaults'] as const;

export interface HintSettings {
  /** The form a worked-out power is shown in: the one the order does not use, or always the same. */
  readonly cylinder: (typeof CYLINDER_FORMS)[number];
  /** Decimal places of worked-out powers; null shows two, and three where the third says something. */
  readonly decimals: 2 | 3 | null;
  /** What is shown beside the lines. */
  readonly show: ReadonlySet<(typeof HINT_KINDS)[number]>;
}

export const DEFAULT_SETTINGS: Settings = {
  standard: null,
  guard: 'simple',
  nearPercent: null,
  most: 400,
  levels: new Map(),
  hints: { cylinder: 'other', decimals: null, show: new Set(HINT_KINDS) },
};

/** Reads the `lentil` section. */
export function settingsFrom(section: unknown): Settings {
  const { standard, guard, near, diagnostics, hints } = fields(section);
  const { percent } = fields(near);
  const { most, levels } = fields(diagnostics);
  const { cylinder, decimals, show } = fields(hints);
  return {
    standard: typeof standard === 'string' && standard.trim() !== '' ? standard.trim() : DEFAULT_SETTINGS.standard,
    guard: oneOf(GUARD_BANDS, guard) ?? DEFAULT_SETTINGS.guard,
    nearPercent: isNumber(percent) && percent > 0 && percent <= 100 ? percent : DEFAULT_SETTINGS.nearPercent,
    most: isNumber(most) && most >= 1 ? Math.floor(most) : DEFAULT_SETTINGS.most,
    levels: levelsFrom(levels),
    hints: {
      cylinder: oneOf(CYLINDER_FORMS, cylinder) ?? DEFAULT_SETTINGS.hints.cylinder,
      decimals: oneOf([2, 3] as const, decimals) ?? DEFAULT_SETTINGS.hints.decimals,
      show: Array.isArray(show) ? new Set(HINT_KINDS.filter((kind) => show.includes(kind))) : new Set(HINT_KINDS),
    },
  };
}

const LEVELS: readonly ShownLevel[] = ['error', 'warning', 'info', 'hint', 'off'];

/** What no confirmation covers cannot be switched off either: failed measures, missing signs, decisions against a failed test. */
export const canBeOff = (code: string): boolean =>
  code !== 'sign-missing' && code !== 'decision-differs' && ruleOf(code)?.family !== 'tolerance';

function levelsFrom(value: unknown): ReadonlyMap<string, ShownLevel> {
  const chosen = Object.entries(fields(value)).flatMap(([code, level]) => {
    const known = oneOf(LEVELS, level);
    return known && ruleOf(code) && (known !== 'off' || canBeOff(code)) ? [[code, known] as const] : [];
  });
  return chosen.length > 0 ? new Map(chosen) : DEFAULT_SETTINGS.levels;
}

const oneOf = <T>(choices: readonly T[], value: unknown): T | undefined => choices.find((choice) => choice === value);

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

const fields = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};

/** Settings that come again with the same values keep their old object, so that nothing is worked out anew for them. */
export const kept = (before: Settings, after: Settings): Settings =>
  JSON.stringify(before, listed) === JSON.stringify(after, listed) ? before : after;

const listed = (_: string, value: unknown): unknown =>
  value instanceof Map || value instanceof Set ? [...value] : value;
