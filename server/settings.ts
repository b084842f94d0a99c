/** Settings as an editor sends them. Anything missing or of a wrong type gives the default. */

export interface Settings {
  /** Tolerance set for orders and files that name none. */
  readonly standard: string | null;
  /** Most findings published for one document. */
  readonly most: number;
}

export const DEFAULT_SETTINGS: Settings = { standard: null, most: 400 };

/** Reads the `lentil` section. */
export function settingsFrom(section: unknown): Settings {
  const { standard, diagnostics } = fields(section);
  const { most } = fields(diagnostics);
  return {
    standard: typeof standard === 'string' && standard.trim() !== '' ? standard.trim() : DEFAULT_SETTINGS.standard,
    most: typeof most === 'number' && most >= 1 && Number.isFinite(most) ? Math.floor(most) : DEFAULT_SETTINGS.most,
  };
}

const fields = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
