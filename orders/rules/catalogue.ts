import type { Family } from '../finding';
import { BENCH } from './bench';
import { BLOCKS } from './blocks';
import { CAUSES } from './cause';
import { ORDER } from './order';
import type { Rule } from './rule';
import { TOLERANCE } from './tolerance';
import { WRITING } from './writing';

const FAMILIES: readonly Family[] = ['writing', 'order', 'tolerance', 'bench', 'cause'];

const byFamilyThenCode = (a: Rule, b: Rule): number =>
  FAMILIES.indexOf(a.family) - FAMILIES.indexOf(b.family) || (a.code < b.code ? -1 : 1);

/** Every rule once, by family and then by code. */
export const RULES: readonly Rule[] = [...WRITING, ...BLOCKS, ...ORDER, ...TOLERANCE, ...BENCH, ...CAUSES].sort(
  byFamilyThenCode,
);

const BY_CODE: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.code, rule]));

/** The rule that owns a code, or undefined when nothing is known by that code. */
export const ruleOf = (code: string): Rule | undefined => BY_CODE.get(code);
