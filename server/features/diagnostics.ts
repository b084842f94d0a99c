import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import { type Finding, type Level, ruleOf } from '../../orders';
import type { Snapshot } from '../snapshot';
import type { Options } from './options';

/** From the one that is told first. */
const LEVELS: readonly Level[] = ['error', 'warning', 'info', 'hint'];

const SEVERITIES: Readonly<Record<Level, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/**
 * The findings of a document in the order of its lines. Above the settable number only some are given: errors first,
 * then those nearest the last edit, and one note at the end says how many more there are.
 */
export function diagnostics(snapshot: Snapshot, { settings, abilities }: Options): Diagnostic[] {
  const picked = pick(snapshot, settings.most);
  const list: Diagnostic[] = [];
  for (const block of [...picked.keys()].sort((one, other) => one - other)) {
    for (const finding of (picked.get(block) as Finding[]).sort(byPlace))
      list.push(diagnosticOf(snapshot, block, finding, abilities.relatedInformation));
  }
  const more = LEVELS.reduce((sum, level) => sum + snapshot.tally[level], 0) - list.length;
  return more > 0 ? [...list, noteOf(snapshot, more)] : list;
}

export function diagnosticOf(snapshot: Snapshot, block: number, finding: Finding, withRelated: boolean): Diagnostic {
  const diagnostic: Diagnostic = { range: snapshot.range(block, finding), ...placeless(finding) };
  const level = snapshot.shownLevel(finding);
  if (level !== finding.level && level !== 'off') diagnostic.severity = SEVERITIES[level];
  if (!withRelated || !finding.related) return diagnostic;
  const { uri } = snapshot;
  const message = relationOf(finding);
  return {
    ...diagnostic,
    relatedInformation: finding.related.map((place) => ({
      location: { uri, range: snapshot.range(block, place) },
      message,
    })),
  };
}

type Placeless = Omit<Diagnostic, 'range'>;

/** Sentences are made once and kept with their finding, since an editor is sent all of them again after every edit. */
function placeless(finding: Finding): Placeless {
  let known = said.get(finding);
  if (!known) {
    const { code, level, data } = finding;
    known = { severity: SEVERITIES[level], code, source: 'lentil', message: ruleOf(code)?.message(data) ?? code };
    said.set(finding, known);
  }
  return known;
}

const said = new WeakMap<Finding, Placeless>();

function relationOf({ code }: Finding): string {
  if (code === 'said-twice') return 'Said here first.';
  const family = ruleOf(code)?.family;
  if (family === 'tolerance') return 'Ordered here.';
  return family === 'cause' ? 'Explained by it.' : 'It goes with this.';
}

/** Findings by the index of their block. */
type Picked = Map<number, Finding[]>;

/** Down the page; a cause comes before the measures that hang under it. */
const byPlace = (a: Finding, b: Finding): number =>
  a.line - b.line || a.start - b.start || Number(isCause(b)) - Number(isCause(a));

const isCause = ({ code }: Finding): boolean => ruleOf(code)?.family === 'cause';

/** Looks from the edited block outwards, one level after the other, and no further than the number asked for. */
function pick(snapshot: Snapshot, most: number): Picked {
  const picked: Picked = new Map();
  const home = snapshot.document.blockAt(snapshot.edited);
  let room = most;
  for (const level of LEVELS) {
    let left = Math.min(snapshot.tally[level], room);
    room -= left;
    if (left === 0) continue;
    for (const block of snapshot.outwards(home, level)) {
      const found = nearest(snapshot, block, level, left);
      const before = picked.get(block);
      if (before) before.push(...found);
      else picked.set(block, found);
      left -= found.length;
      if (left === 0) break;
    }
  }
  return picked;
}

/** Findings of one block at a level, those nearest the edit where not all can be taken. */
function nearest(snapshot: Snapshot, block: number, level: Level, most: number): Finding[] {
  const all = snapshot.block(block).findings.filter((finding) => snapshot.shownLevel(finding) === level);
  if (all.length <= most) return all;
  const edited = snapshot.edited - snapshot.firstLine(block);
  return all.sort((a, b) => Math.abs(a.line - edited) - Math.abs(b.line - edited)).slice(0, most);
}

/** Stands on the last line, after everything it speaks of. */
function noteOf(snapshot: Snapshot, more: number): Diagnostic {
  const line = snapshot.document.lineCount - 1;
  const end = { line, character: snapshot.document.line(line)?.text.length ?? 0 };
  return {
    range: { start: { line, character: 0 }, end },
    severity: DiagnosticSeverity.Information,
    source: 'lentil',
    message: `${more} more ${more === 1 ? 'finding is' : 'findings are'} not shown. Those shown are errors first, then the nearest to the last edit.`,
  };
}
