/** What there is to say about an offered word, made when the editor shows it. */
import type { MarkupContent } from 'vscode-languageserver';
import { VOCABULARY } from '../../../grammar';
import { figure, materials, ruleOf, type Source, sources, toleranceSetById } from '../../../orders';
import { withoutMarks } from '../markdown';
import { wordInWords } from '../word-in-words';

/** What an offer is about, in a form that survives the way to the editor and back. */
export type About =
  | { readonly what: 'word'; readonly at: number }
  | { readonly what: 'material' | 'standard' | 'code'; readonly id: string };

export function documentationOf(about: About, markdown: boolean): MarkupContent {
  const value = inMarkdown(about);
  return { kind: markdown ? 'markdown' : 'plaintext', value: markdown ? value : withoutMarks(value) };
}

function inMarkdown(about: About): string {
  switch (about.what) {
    case 'word': {
      const entry = VOCABULARY[about.at];
      return entry ? wordInWords(entry) : '';
    }
    case 'material':
      return materialInWords(about.id);
    case 'standard': {
      const set = toleranceSetById.get(about.id);
      if (!set) return '';
      const { title, publisher, edition, jurisdiction, scope, cautions } = set;
      const about_ = `${publisher}, edition ${edition}; ${jurisdiction}; for ${scope.join(', ')} lenses.`;
      return [`**${title}**`, about_, ...cautions].join('\n\n');
    }
    case 'code': {
      const rule = ruleOf(about.id);
      return rule ? `**${rule.code}**: ${rule.page.checks}\n\n${rule.page.why}` : '';
    }
  }
}

/** The constants that the word stands for, and how well they are known. */
function materialInWords(id: string): string {
  const material = materials.find((one) => one.id === id);
  if (!material) return '';
  const { title, indexD, abbe, density } = material;
  const constants = `Index ${figure(indexD.value, 3)} (d line), Abbe number ${figure(abbe.value, 0)}, density ${figure(density.value)} g/cm³.`;
  const named = [...new Set([indexD, abbe, density].map(({ source }) => source))].map(
    (source) => sources.find((one: Source) => one.id === source)?.title ?? source,
  );
  return [`**${id}**: ${title}`, constants, `Source: ${named.join('; ')}`].join('\n\n');
}
