/** The same words for an editor that shows no Markdown. */
export const withoutMarks = (markdown: string): string => markdown.replace(/```\w*\n?|\*\*|`/g, '').trimEnd();
