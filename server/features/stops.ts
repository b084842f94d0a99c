/** Text with places to fill in, in the form that editors share: `$1`, `${1:NAME}`, `${1|one,two|}`, `$0`. */

/** Takes the places out: what is suggested in one is kept, and what is to be filled in or chosen is left empty. */
export const withoutStops = (snippet: string): string =>
  snippet
    .replace(/\$\{\d+:([^}$]*)\}/g, '$1')
    .replace(/\$(?:\d+|\{\d+\|[^$}]*\})/g, '')
    .replace(/\\([\\$}])/g, '$1')
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');

/** Text of a user that stands for itself between the places. */
export const literally = (text: string): string => text.replace(/[\\$}]/g, '\\$&');

/** A place with a few words to choose from. */
export const choiceAt = (stop: number, words: readonly string[]): string =>
  `\${${stop}|${words.map((word) => word.replace(/[\\,|]/g, '\\$&')).join(',')}|}`;
