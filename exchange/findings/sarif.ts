/** Findings as SARIF 2.1.0 (OASIS), for code hosts and editors that read the results of analysers. */
import type { Invocation, Location, Region, ReportingDescriptor, Result, Fix as SarifFix, ToolComponent } from 'sarif';
import type { Level, Range } from '../../orders';
import { ruleOf } from '../../orders';
import { version } from '../../package.json';
import { findingsInJson } from './finding-json';
import type { FindingJson, FixJson } from './shape';
import { CAUTION } from './text';
import { type FindingsWriter, writerOf } from './writer';

/** SARIF has no level below a note. */
const LEVELS = { error: 'error', warning: 'warning', info: 'note', hint: 'note' } as const satisfies Record<
  Level,
  Result['level']
>;

/**
 * One run with one result a line. The results go out block by block and the rules that they name after them, since a
 * reader may take the members of an object in any order. Files that could not be read are notifications of the run.
 */
export function sarifWriter(): FindingsWriter<readonly FindingJson[]> {
  const rules = new Map<string, number>();
  const unread: { readonly path: string; readonly error: string }[] = [];
  let path = '';
  let results = 0;
  let seen = new Map<string, number>();
  const indexOf = (code: string): number => {
    const known = rules.get(code);
    if (known !== undefined) return known;
    rules.set(code, rules.size);
    return rules.size - 1;
  };
  /** Stays the same while lines move: what is found, in which order, for which eye, and the how-manieth of its kind. */
  const fingerprintOf = ({ code, order, eye }: FindingJson): string => {
    const kind = [code, order ?? '', eye ?? ''].join('/');
    const number = (seen.get(kind) ?? 0) + 1;
    seen.set(kind, number);
    return `${kind}/${number}`;
  };
  const resultOf = (finding: FindingJson): Result => ({
    ruleId: finding.code,
    ruleIndex: indexOf(finding.code),
    level: LEVELS[finding.level],
    message: { text: finding.message },
    locations: [locationOf(path, finding.range)],
    ...(finding.related ? { relatedLocations: finding.related.map((range) => locationOf(path, range)) } : {}),
    partialFingerprints: { 'codeOrderEye/v1': fingerprintOf(finding) },
    ...(finding.fixes.length > 0 ? { fixes: finding.fixes.map((fix) => fixOf(path, fix)) } : {}),
    properties: { level: finding.level, order: finding.order, eye: finding.eye },
  });
  return writerOf({
    start: () =>
      '{ "$schema": "https://json.schemastore.org/sarif-2.1.0.json", "version": "2.1.0", "runs": [{ "columnKind": "utf16CodeUnits", "results": [',
    openFile: (opened) => {
      path = opened;
      seen = new Map();
      return '';
    },
    part: () => {
      const found: FindingJson[] = [];
      return {
        block: (analysis, firstLine) => {
          found.push(...findingsInJson(analysis, firstLine));
          return '';
        },
        note: () => found,
      };
    },
    add: (findings) =>
      findings.map((finding) => `${results++ === 0 ? '\n' : ',\n'}${JSON.stringify(resultOf(finding))}`).join(''),
    closing: () => [],
    unreadable: (gone, error) => {
      unread.push({ path: gone, error });
      return '';
    },
    end: () =>
      `\n], "invocations": ${JSON.stringify([invocationOf(unread)])}, "tool": { "driver": ${JSON.stringify(driverWith([...rules.keys()]))} } }] }\n`,
  });
}

const driverWith = (codes: readonly string[]): ToolComponent => ({
  name: 'lentil',
  version,
  semanticVersion: version,
  fullDescription: { text: CAUTION },
  rules: codes.map(descriptorOf),
});

function descriptorOf(code: string): ReportingDescriptor {
  const rule = ruleOf(code);
  if (!rule) return { id: code };
  const { family, level, page } = rule;
  const usual = typeof level === 'string' ? { defaultConfiguration: { level: LEVELS[level] } } : {};
  return {
    id: code,
    shortDescription: { text: page.checks },
    fullDescription: { text: page.why },
    help: { text: [page.why, page.fix, `Source: ${page.source}`].filter((part) => part !== undefined).join('\n\n') },
    ...usual,
    properties: { tags: [family] },
  };
}

function invocationOf(unread: readonly { readonly path: string; readonly error: string }[]): Invocation {
  return {
    executionSuccessful: unread.length === 0,
    toolExecutionNotifications: unread.map(({ path, error }) => ({
      level: 'error',
      message: { text: error },
      locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(path) } } }],
    })),
  };
}

function fixOf(path: string, { title, edits }: FixJson): SarifFix {
  const replacements = edits.map(({ range, text }) => ({
    deletedRegion: regionOf(range),
    insertedContent: { text },
  }));
  return { description: { text: title }, artifactChanges: [{ artifactLocation: { uri: uriOf(path) }, replacements }] };
}

const locationOf = (path: string, range: Range): Location => ({
  physicalLocation: { artifactLocation: { uri: uriOf(path) }, region: regionOf(range) },
});

/** SARIF counts lines and columns from one; its end column is one past the last character. */
const regionOf = ({ start, end }: Range): Region => ({
  startLine: start.line + 1,
  startColumn: start.character + 1,
  endLine: end.line + 1,
  endColumn: end.character + 1,
});

/** A relative reference as RFC 3986 writes it, so that a blank or a colon in a name does no harm; standard input has no address. */
function uriOf(path: string): string {
  if (path === '-') return 'stdin';
  const parts = path.split('/').map(encodeURIComponent).join('/');
  return path.startsWith('/') ? `file://${parts}` : parts;
}
