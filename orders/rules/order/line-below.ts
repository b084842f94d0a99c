import type { Fix } from '../../finding';
import type { FixSite } from '../rule';

/** A fix that writes one more line under that of the finding, as deep as it. */
export function lineBelow({ finding, lines }: FixSite, title: string, text: string): Fix {
  const line = lines[finding.line] ?? '';
  const indent = /^\s*/.exec(line)?.[0] ?? '';
  const { length } = line;
  return {
    title,
    safe: false,
    edits: [{ line: finding.line, start: length, end: length, text: `\n${indent}${text}` }],
  };
}
