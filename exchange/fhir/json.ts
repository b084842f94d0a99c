/** Resources as text, with decimals that keep their digits. */
import { LosslessNumber, stringify } from 'lossless-json';

export type Resource = Readonly<Record<string, unknown>>;

/** A decimal of FHIR: no plus, and no minus before nothing. */
export const decimalOf = (text: string): LosslessNumber =>
  new LosslessNumber(/^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text);

export const textOf = (resource: unknown): string => `${stringify(resource, undefined, 2)}\n`;

/** The entries of an object that say something. */
export const given = (entries: Readonly<Record<string, unknown>>): Resource =>
  Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined && !isEmptyList(value)));

const isEmptyList = (value: unknown): boolean => Array.isArray(value) && value.length === 0;
