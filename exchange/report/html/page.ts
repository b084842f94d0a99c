/** The report as one page that needs nothing else: no network, no script, no other file; and its parts for a view. */
import type { ReportJson } from '../report-json';
import { times, whole } from './figures';
import { type Markup, markup, type Part } from './markup';
import type { Section } from './section';
import { deviations } from './sections/deviations';
import { failures } from './sections/failures';
import { files } from './sections/files';
import { instruments } from './sections/instruments';
import { method } from './sections/method';
import { operators } from './sections/operators';
import { overTime } from './sections/over-time';
import { overview } from './sections/overview';
import { published } from './sections/published';
import { remakes } from './sections/remakes';
import { repeatability } from './sections/repeatability';
import { waiting } from './sections/waiting';
import { STYLE } from './style';
import type { LinkTo } from './where';

const SECTIONS: readonly ((report: ReportJson, linkTo: LinkTo) => Section | null)[] = [
  overview,
  overTime,
  failures,
  deviations,
  instruments,
  repeatability,
  operators,
  waiting,
  remakes,
  published,
  method,
  files,
];

/** What a report looks like in a page that has a head of its own. */
export interface ReportParts {
  /** Such as `Quality report, 2026-01-05 to 2026-12-30`. */
  readonly title: string;
  /** HTML for the body of a page, every text in it escaped. */
  readonly body: string;
  /** The style sheet of the body. */
  readonly style: string;
}

/** @param linkTo gives the address that leads to an order; its line is counted from 1 */
export const reportParts = (report: ReportJson, linkTo: LinkTo): ReportParts => ({
  title: title(report),
  body: bodyOf(report, linkTo).markup,
  style: STYLE,
});

/** The same report gives the same page, byte for byte. */
export function reportInHtml(report: ReportJson): string {
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="color-scheme" content="light dark">
<title>${title(report)}</title>
<style>${{ markup: STYLE }}</style>
</head>
<body>
${bodyOf(report, () => null)}</body>
</html>
`.markup;
}

function bodyOf(report: ReportJson, linkTo: LinkTo): Markup {
  const sections = SECTIONS.flatMap((section) => section(report, linkTo) ?? []);
  return markup`${PATTERNS}<header>
<h1>Quality report</h1>
<p class="scope">${scopeInWords(report)}</p>
<div class="cautions" role="note" aria-label="Cautions">${report.cautions.map((text) => markup`<p>${withCode(text)}</p>\n`)}</div>
<nav aria-label="Contents"><ol>${sections.map(({ id, title }) => markup`<li><a href="#${id}">${title}</a></li>`)}</ol></nav>
</header>
<main>
${sections.map(sectionInHtml)}</main>
`;
}

/** What stands between backquotes is something to type. */
const withCode = (text: string): readonly Part[] =>
  text.split('`').map((part, at) => (at % 2 === 1 ? markup`<code>${part}</code>` : part));

const title = ({ scope: { from, to } }: ReportJson): string => `Quality report${from ? `, ${from} to ${to}` : ''}`;

function scopeInWords({ scope }: ReportJson): Markup {
  const { orders, files, filesUnreadable, from, to, standards, readings, evidence } = scope;
  const judged = standards
    .map(({ name, orders: count }) => `${name ?? 'none, so not judged'} (${whole(count)})`)
    .join(', ');
  const rests = evidence.map(({ evidence: grade, orders: count }) => `${grade} ${whole(count)}`).join(', ');
  return markup`${times(orders, 'order')} with ${times(readings, 'reading')} in ${times(files, 'file')}${
    filesUnreadable > 0 ? markup`, of which <a href="#files">${whole(filesUnreadable)} could not be read</a>` : null
  }. ${from ? `Readings from ${from} to ${to}. ` : ''}Standard, with the number of orders: ${judged || 'no orders'}.${
    rests ? ` Orders by the weakest evidence of the limits that decided: ${rests}.` : ''
  }`;
}

const sectionInHtml = ({ id, title: name, body }: Section): Markup => markup`<section aria-labelledby="${id}">
<h2 id="${id}">${name}</h2>
${body}</section>
`;

/** The hatching of what lies outside, used by every picture of the page. */
const PATTERNS = markup`<svg width="0" height="0" aria-hidden="true" class="patterns"><defs><pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="5" height="5" class="hatch-ground"/><line x1="0" y1="0" x2="0" y2="5" class="hatch-line"/></pattern></defs></svg>
`;
