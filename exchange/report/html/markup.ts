/** Markup in which every text is escaped, because only markup itself can get in unescaped. */
import { harmless } from '../../findings/excerpt';

export interface Markup {
  readonly markup: string;
}

export type Part = Markup | string | number | null | readonly Part[];

const ESCAPED: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => harmless(text).replace(/[&<>"']/g, (one) => ESCAPED[one] ?? one);

/** Lists are put together without anything between; null is nothing. */
function asMarkup(part: Part): string {
  if (part === null) return '';
  if (typeof part === 'string') return escaped(part);
  if (typeof part === 'number') return String(part);
  if ('markup' in part) return part.markup;
  return part.map(asMarkup).join('');
}

/** Put in front of a template of markup; what is filled in is escaped unless it is markup already. */
export const markup = (template: TemplateStringsArray, ...parts: readonly Part[]): Markup => ({
  markup: String.raw({ raw: template }, ...parts.map(asMarkup)),
});
