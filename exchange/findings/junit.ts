/**
 * Verdicts as JUnit XML, for build servers. There is no standard for it; what is written here is the part that all
 * readers share. A file is a suite, and each measure of an order one case of the class that bears the order’s name.
 */
import { type BlockAnalysis, type Finding, inMarkup, type Measure, subjectInWords } from '../../orders';
import { inTextOrder, messageOf } from './finding-json';
import { type FindingsWriter, writerOf } from './writer';

/** Whatever is told about an order besides its failed measures is one case of this name. */
const FINDINGS = 'findings';

interface Suite {
  readonly path: string;
  /** The cases in their markup, and how many they are. */
  cases: string;
  tests: number;
  failures: number;
  skipped: number;
}

/**
 * Writes a suite for each file and a case for each measure.
 * @param strict whether warnings fail as well
 */
export function junitWriter(strict = false): FindingsWriter<Suite> {
  let suite = suiteOf('');
  let parts: string[] = [];
  return writerOf({
    start: () => '<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="lentil">\n',
    openFile: (path) => {
      suite = suiteOf(path);
      parts = [];
      return '';
    },
    part: (path, isStrict = strict) => {
      const own = suiteOf(path);
      return {
        block: (analysis, firstLine) => {
          addCases(own, analysis, firstLine, isStrict);
          return '';
        },
        note: () => own,
      };
    },
    add: ({ cases, tests, failures, skipped }) => {
      parts.push(cases);
      suite.tests += tests;
      suite.failures += failures;
      suite.skipped += skipped;
      return '';
    },
    closing: function* () {
      const { path, tests, failures, skipped } = suite;
      const counts = `tests="${tests}" failures="${failures}" errors="0" skipped="${skipped}"`;
      yield `  <testsuite name="${inMarkup(path)}" ${counts}>\n`;
      yield* parts;
      yield '  </testsuite>\n';
    },
    unreadable: (path, error) =>
      `  <testsuite name="${inMarkup(path)}" tests="1" failures="0" errors="1" skipped="0">\n` +
      `    <testcase classname="${inMarkup(path)}" name="read"><error message="${inMarkup(error)}"/></testcase>\n  </testsuite>\n`,
    end: () => '</testsuites>\n',
  });
}

/** Counts one case and keeps its markup. */
function put(suite: Suite, markup: string): void {
  suite.cases += markup;
  suite.tests++;
}

const suiteOf = (path: string): Suite => ({ path, cases: '', tests: 0, failures: 0, skipped: 0 });

function addCases(suite: Suite, { order, evaluation, findings }: BlockAnalysis, firstLine: number, strict: boolean) {
  const fails = ({ level }: Finding): boolean => level === 'error' || (strict && level === 'warning');
  const told = inTextOrder(findings).filter((finding) => fails(finding) && finding.data.outcome !== 'fail');
  // Blocks that are no orders, such as those of instruments, are only mentioned when something is wrong with them.
  if (!order && told.length === 0) return;
  const owner = order ? (order.name ?? '(no name)') : suite.path;
  const place = (finding: Finding): string => `${suite.path}:${firstLine + finding.line + 1}:${finding.start + 1}`;
  const failures = told.map((finding) =>
    failure(finding.code, messageOf(finding), `${place(finding)} ${messageOf(finding)}`),
  );
  if (failures.length > 0) suite.failures++;
  put(suite, testCase(owner, FINDINGS, failures.join('')));
  for (const measure of evaluation?.measures ?? []) addMeasure(suite, owner, measure, findings);
  if (order && evaluation?.verdict === 'unread') {
    suite.skipped++;
    put(suite, testCase(owner, 'reading', '<skipped message="no reading yet"/>'));
  }
}

function addMeasure(suite: Suite, owner: string, measure: Measure, findings: readonly Finding[]): void {
  const name = `${subjectInWords(measure)}${measure.meridian ? ` (meridian ${measure.meridian})` : ''}`;
  const { outcome } = measure;
  if (outcome === 'pass') put(suite, testCase(owner, name, ''));
  else if (outcome === 'fail') {
    const finding = findings.find((one) => isAbout(one, measure));
    // A failure that a person has decided on, or that the file records honestly as answered, is no failure of the build.
    if (finding && finding.level !== 'error') {
      suite.skipped++;
      put(suite, testCase(owner, name, `<skipped message="${inMarkup(messageOf(finding))}"/>`));
      return;
    }
    suite.failures++;
    put(suite, testCase(owner, name, failure(finding?.code ?? 'outside', finding ? messageOf(finding) : name, '')));
  } else {
    suite.skipped++;
    put(suite, testCase(owner, name, `<skipped message="${outcome === 'not-read' ? 'not read' : 'not judged'}"/>`));
  }
}

/** The finding that tells a measure, by what it holds. */
const isAbout = ({ data }: Finding, { quantity, eye, meridian, read }: Measure): boolean =>
  data.quantity === quantity &&
  data.eye === eye &&
  data.meridian === meridian &&
  data.read === read &&
  'outcome' in data;

const testCase = (owner: string, name: string, inner: string): string => {
  const head = `    <testcase classname="${inMarkup(owner)}" name="${inMarkup(name)}"`;
  return inner === '' ? `${head}/>\n` : `${head}>${inner}</testcase>\n`;
};

const failure = (type: string, message: string, text: string): string => {
  const head = `<failure type="${inMarkup(type)}" message="${inMarkup(message)}"`;
  return text === '' ? `${head}/>` : `${head}>${inMarkup(text)}</failure>`;
};
