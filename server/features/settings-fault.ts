import { type Diagnostic, DiagnosticSeverity, type Position } from 'vscode-languageserver';
import type { SettingsFile } from '../nearby';

/** What is wrong with a settings file, at its place; nothing where it can be used. */
export function faultOf({ text, fault }: Pick<SettingsFile, 'text' | 'fault'>): Diagnostic[] {
  if (!fault) return [];
  const { message, start, end } = fault;
  return [
    {
      range: { start: positionOf(text, start), end: positionOf(text, end) },
      severity: DiagnosticSeverity.Error,
      code: 'input-missing',
      source: 'lentil',
      message: `No order below this folder is judged: ${message}.`.replace(/([.?])\.$/, '$1'),
    },
  ];
}

/** An editor does not count the byte order mark of a file on disk. */
function positionOf(text: string, offset: number): Position {
  const lines = text
    .slice(0, offset)
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/);
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}
