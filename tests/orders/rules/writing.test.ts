import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLine } from '../../../grammar';
import type { Finding, Fix } from '../../../orders/finding';
import { RULES, ruleOf } from '../../../orders/rules/catalogue';
import type { BlockOfFinding, Rule } from '../../../orders/rules/rule';
import { WRITING } from '../../../orders/rules/writing';

const ROOT = join(import.meta.dirname, '..', '..', '..');

interface Row {
  readonly wrong: string;
  /** What else the same line is told; `any` where its pieces may be told of as well. */
  readonly also?: readonly string[] | 'any';
  /** The line after each fix, in the order in which they are offered. */
  readonly fixed: readonly string[];
}

/**
 * Lines as they are typed. The figures are those of published slips where a comment names one; the rest is common
 * practice, no source.
 */
const ROWS: Readonly<Record<string, readonly Row[]>> = {
  'add-for-both': [
    { wrong: 'OD -4.50 -0.75 x 022 OS -4.25 -1.00 x 168 add +2.00', also: ['two-eyes'], fixed: [] },
    { wrong: 'R -4.50 / L -4.25 add 2.00', also: ['two-eyes'], fixed: [] },
  ],
  'base-range': [
    { wrong: 'prism R 2.06 base 361', fixed: [] },
    { wrong: 'prism L 2.00 base 1014', fixed: [] },
  ],
  'other-spelling': [
    { wrong: 'reading 2026.11.24 14:30', fixed: ['reading 2026-11-24 14:30'] },
    { wrong: 'calibrated 2026/5/14 due 2027-05-14', fixed: ['calibrated 2026-05-14 due 2027-05-14'] },
    // Lens size and bridge with a dash between them: the inside of many frames.
    { wrong: 'frame 52-18', fixed: ['frame 52[]18'] },
  ],
  'prism-eye-unsaid': [
    {
      wrong: 'OD -4.50 OS -4.25 add +2.00 prism 1.00 BU',
      also: ['add-for-both', 'two-eyes'],
      fixed: ['OD -4.50 OS -4.25 add +2.00 prism L 1.00 BU', 'OD -4.50 OS -4.25 add +2.00 prism R 1.00 BU'],
    },
    {
      wrong: 'R plano L plano add +2.00 prism 2.06 base 014',
      also: ['add-for-both', 'two-eyes'],
      fixed: ['R plano L plano add +2.00 prism L 2.06 base 014', 'R plano L plano add +2.00 prism R 2.06 base 014'],
    },
  ],
  'time-impossible': [
    { wrong: 'reading 2026-11-24 25:61', fixed: [] },
    { wrong: 'reading 2026-11-24 14:30:60 by KO', fixed: [] },
  ],
  'tint-unclear': [
    { wrong: 'tint 80', fixed: ['tint absorbs 80', 'tint transmits 80'] },
    { wrong: 'tint light grey 20%', fixed: ['tint light grey absorbs 20%', 'tint light grey transmits 20%'] },
  ],
  'two-eyes': [
    { wrong: 'R -4.50, L -4.25', fixed: [] },
    { wrong: 'OD plano OS +1.25 -0.50 x 090', fixed: [] },
  ],
  'look-alike': [
    { wrong: 'R -4.50 -0.75 х 022', fixed: ['R -4.50 -0.75 x 022'] },
    { wrong: 'R -4.50\u00A0-0.75 x 022', fixed: ['R -4.50 -0.75 x 022'] },
  ],
  'prism-mark': [
    { wrong: 'prism R 2.00^ BI', fixed: ['prism R 2.00 BI'] },
    { wrong: 'prism L 0.50 ∆ BU', fixed: ['prism L 0.50  BU'] },
  ],
  'text-cut': [
    { wrong: 'note ask for #3', fixed: ['note "ask for #3"'] },
    { wrong: 'ref #12', fixed: ['ref "#12"'] },
  ],
  'axis-missing': [
    // A cylinder of -1.25 with an empty axis box: Pacific University thesis on laboratory orders, 1992.
    { wrong: 'R plano -1.25', fixed: [] },
    { wrong: 'L -2.00 +0.50 x', fixed: [] },
  ],
  'axis-or-meridian': [
    { wrong: 'R -4.50 -0.75 @ 112', fixed: ['R -4.50 -0.75 x 112', 'R -4.50 -0.75 x 022'] },
    // Axis 0 is 180, and across it lies 90, never 0 or 270.
    { wrong: 'L +2.00 -0.50 @ 0', fixed: ['L +2.00 -0.50 x 180', 'L +2.00 -0.50 x 090'] },
    { wrong: 'L +2.00 -0.50 @', fixed: [] },
  ],
  'axis-range': [
    { wrong: 'R -4.50 -0.75 x -22', fixed: ['R -4.50 -0.75 x 022'] },
    { wrong: 'R -4.50 -0.75 x 022.', fixed: ['R -4.50 -0.75 x 022'] },
    { wrong: 'R -4.50 -0.75 x 7.0', fixed: ['R -4.50 -0.75 x 007'] },
    { wrong: 'R -4.50 -0.75 x 22.5', fixed: [] },
    { wrong: 'R -4.50 -0.75 x 270', fixed: [] },
  ],
  'axis-short': [
    // Axis 153 that became 53: a wearer’s weblog, 2009.
    { wrong: 'L plano +0.25 x 53', fixed: ['L plano +0.25 x 053'] },
    { wrong: 'R -4.50-0.75x22', fixed: ['R -4.50-0.75x022'] },
    { wrong: 'R -4.50 @ 22 / -5.25 @ 112', fixed: ['R -4.50 @ 022 / -5.25 @ 112'] },
  ],
  'axis-unmarked': [
    { wrong: 'R -4.50 -0.75 175', fixed: ['R -4.50 -0.75 x 175'] },
    // “- / -75 / 27”, the point put right: a retailer’s page on prescription figures.
    { wrong: 'R plano/-0.75/027', fixed: ['R plano/-0.75/x 027'] },
  ],
  'axis-unreadable': [
    { wrong: 'L -1.25 -0.50 x 17o', fixed: [] },
    { wrong: 'L -1.25 -0.50 x 17?', fixed: [] },
  ],
  'axis-zero': [
    // Axis 0 made from 90 by a rule of thumb: a German question page on sphere and cylinder.
    { wrong: 'L +0.25 +0.50 x 0', fixed: ['L +0.25 +0.50 x 180'] },
    { wrong: 'L +0.25 +0.50 x 000', fixed: ['L +0.25 +0.50 x 180'] },
  ],
  'bare-point': [
    { wrong: 'R +.50', fixed: ['R +0.50'] },
    { wrong: 'R -2. -0.75 x 022', fixed: ['R -2.00 -0.75 x 022'] },
    { wrong: 'pd 63.', fixed: ['pd 63'] },
    { wrong: 'add .50', fixed: ['add 0.50'] },
  ],
  'cylinder-missing': [
    { wrong: 'R -0.75 x 027', fixed: ['R plano -0.75 x 027', 'R -0.75 DS'] },
    { wrong: 'L +1.25 / axis 090', fixed: ['L plano +1.25 axis 090', 'L +1.25 DS'] },
    { wrong: 'L SPH -4.50 x 022', fixed: ['L -4.50 DS'] },
    // An axis beside a zero, as on the form of axis 153: a wearer’s weblog, 2009.
    { wrong: 'L 0.00 x 053', fixed: ['L 0.00 DS'] },
  ],
  'date-impossible': [
    { wrong: 'reading 2026-24-11 by KO', fixed: ['reading 2026-11-24 by KO'] },
    { wrong: 'calibrated 2026-05-14 due 2027-02-29', fixed: [] },
  ],
  'date-order': [
    { wrong: 'reading 01/12/2026', fixed: ['reading 2026-12-01', 'reading 2026-01-12'] },
    { wrong: 'reading 24.11.2026 14:30', fixed: ['reading 2026-11-24 14:30'] },
    { wrong: 'due 5/5/2026', fixed: ['due 2026-05-05'] },
    { wrong: 'due 31/02/2026', fixed: [] },
  ],
  'figures-in-remark': [
    { wrong: 'R -2.00 -0.50 x 010 # -0.75', fixed: ['R -2.00 -0.50 x 010 -0.75'] },
    { wrong: 'pd 63 # R 31', fixed: ['pd 63 R 31'] },
  ],
  'polarised-share': [
    { wrong: 'tint grey polarised 80%', fixed: ['tint grey polarised 180 absorbs 80'] },
    { wrong: 'tint polarised 75 %', fixed: ['tint polarised 180 absorbs 75'] },
  ],
  'round-or-right': [
    { wrong: 'R-24', fixed: ['design round 24', 'R -24.00'] },
    { wrong: 'R-28', fixed: ['design round 28', 'R -28.00'] },
  ],
  'decimal-comma': [
    { wrong: 'R -,75', fixed: ['R -.75'] },
    // 1,50 as it is written in France: a French note on reading spectacle corrections, 2022.
    { wrong: 'R +1,50', fixed: ['R +1.50'] },
    { wrong: 'height R 17,5 L 17', fixed: ['height R 17.5 L 17'] },
  ],
  'eye-twice': [
    { wrong: 'height R 17 R 17', fixed: [] },
    { wrong: 'prism 0 L 0', fixed: [] },
    { wrong: 'add both +2.00 L +2.25', fixed: [] },
    { wrong: 'lens resin-1.60 L resin-1.67', fixed: [] },
  ],
  'eye-unsaid': [
    { wrong: '+2.00', fixed: ['R +2.00', 'L +2.00'] },
    { wrong: '  -4.50 DS', fixed: ['  R -4.50 DS', '  L -4.50 DS'] },
    { wrong: 'SPH -4.50 CYL -0.75 AX 022', fixed: ['R SPH -4.50 CYL -0.75 AX 022', 'L SPH -4.50 CYL -0.75 AX 022'] },
    { wrong: 'plano -0.75 x 022', fixed: ['R plano -0.75 x 022', 'L plano -0.75 x 022'] },
    { wrong: 'kept -4.50', fixed: ['kept R -4.50', 'kept L -4.50'] },
  ],
  'figures-touch': [
    { wrong: 'R -4.5.0', also: 'any', fixed: [] },
    { wrong: 'R -4,50,75', also: 'any', fixed: [] },
  ],
  fraction: [
    { wrong: 'prism R 1/4 BU', fixed: ['prism R 0.25 BU'] },
    { wrong: 'prism R 3/8 BU', fixed: ['prism R 0.375 BU'] },
    { wrong: 'prism R 1/0 BU', fixed: [] },
  ],
  'length-negative': [
    { wrong: 'height -17', fixed: ['height 17'] },
    { wrong: 'blank - 70', fixed: ['blank 70'] },
    { wrong: 'inset R -2', fixed: ['inset R 2'] },
  ],
  'lone-mark': [
    // “-2.25 / -”: two retailers’ pages on prescription figures.
    { wrong: 'R -2.25 / -', fixed: ['R -2.25 / DS'] },
    { wrong: 'R - / -0.75 x 027', fixed: ['R plano / -0.75 x 027'] },
    { wrong: 'R-2.25-', fixed: ['R-2.25 DS'] },
  ],
  'loose-form': [
    // -3.00 (+1.00 at 110): a French note on reading spectacle corrections, 2022.
    { wrong: 'R -3.00(+1.00 x 110)add +2.00', fixed: ['R -3.00 +1.00 x 110 add +2.00'] },
    { wrong: 'R -4.50, -0.75 x 022', fixed: ['R -4.50 -0.75 x 022'] },
    { wrong: 'R -4.50;-0.75 x 022', fixed: ['R -4.50 -0.75 x 022'] },
    { wrong: 'R SPH -4.50 CYL -0.75 AX 022', fixed: ['R  -4.50  -0.75 AX 022'] },
    { wrong: 'L +1.25 - -0.50 x 022', fixed: ['L +1.25  -0.50 x 022'] },
    { wrong: 'design bifocal, flat-top 28', fixed: ['design bifocal flat-top 28'] },
  ],
  'meridian-missing': [
    { wrong: 'R -4.50 @ 022', fixed: [] },
    { wrong: 'R -4.50 @ 112 / -5.25', fixed: ['R -4.50 @ 112 / -5.25 @ 022'] },
    { wrong: 'R -4.50 @ 090 / -5.25 @', fixed: ['R -4.50 @ 090 / -5.25 @ 180'] },
  ],
  'meridians-not-square': [
    {
      wrong: 'L +1.00 @ 090 / +2.00 @ 170',
      fixed: ['L +1.00 @ 090 / +2.00 @ 180', 'L +1.00 @ 080 / +2.00 @ 170'],
    },
    {
      wrong: 'L +1.00 @ 045 / +2.00 @ 45',
      also: ['axis-short'],
      fixed: ['L +1.00 @ 045 / +2.00 @ 135', 'L +1.00 @ 135 / +2.00 @ 45'],
    },
  ],
  'pair-unclear': [
    { wrong: 'pd 32/63', fixed: ['pd 32 near 63', 'pd R 32 L 63'] },
    { wrong: 'pd 63 near 60/30', fixed: ['pd 63 near R 60 L 30'] },
  ],
  'point-ambiguous': [
    { wrong: 'R -4.50 -25 x 022', fixed: ['R -4.50 -25.00 x 022', 'R -4.50 -0.25 x 022'] },
    // -75 and -50 for -0.75 and -0.50: a retailer’s page on prescription figures. No lens of 75 dioptres is offered.
    { wrong: 'R plano -75 x 027', fixed: ['R plano -0.75 x 027'] },
    { wrong: 'R -50', fixed: ['R -0.50'] },
    { wrong: 'R +05', fixed: ['R +5.00', 'R +0.50'] },
    { wrong: 'add 12', fixed: ['add 12.00', 'add 0.12'] },
  ],
  'point-missing': [
    // 150 for 1.50: a French note on reading spectacle corrections, 2022.
    { wrong: 'R +150', fixed: ['R +1.50'] },
    // “+225 / -150”: a retailer’s page on prescription figures.
    { wrong: 'R +225 / -0.75 x 022', fixed: ['R +2.25 / -0.75 x 022'] },
    { wrong: 'R -050', fixed: ['R -0.50'] },
    { wrong: 'R -1050', fixed: ['R -10.50'] },
    { wrong: 'add 225', fixed: ['add 2.25'] },
  ],
  'power-implausible': [
    { wrong: 'R -5000', fixed: ['R -5.00', 'R -0.50'] },
    { wrong: 'R -150.00', fixed: ['R -15.00', 'R -1.50'] },
    { wrong: 'R -41', fixed: [] },
    { wrong: 'prism R 200 BI', fixed: ['prism R 20.00 BI', 'prism R 2.00 BI'] },
  ],
  'quote-open': [
    { wrong: 'coating "hard, antireflection', fixed: ['coating "hard, antireflection"'] },
    { wrong: 'ref "tray #7  ', fixed: ['ref "tray #7"  '] },
  ],
  'sign-apart': [
    { wrong: 'R - 4.50', fixed: ['R -4.50', 'R +4.50'] },
    // “add - 2.00” that meant +2.00: an opticians’ forum thread on a compensated lens.
    { wrong: 'add R - 2.00', fixed: ['add R +2.00', 'add R -2.00'] },
    { wrong: 'L + 1.25', fixed: ['L +1.25'] },
    { wrong: 'R ‒ 4.50', fixed: ['R -4.50', 'R +4.50'] },
  ],
  'sign-missing': [
    { wrong: 'R -4.50 0.75 x 022', fixed: ['R -4.50 +0.75 x 022', 'R -4.50 -0.75 x 022'] },
    // Sphere 1.25 copied without the sign above it: a British safety-spectacle seller’s help page.
    { wrong: 'R 1.25', fixed: ['R +1.25', 'R -1.25'] },
  ],
  'slash-pair': [
    // 62/59 is distance and near, 30/31 right and left: two question pages about PDs.
    { wrong: 'pd 62/59', fixed: ['pd 62 near 59'] },
    { wrong: 'pd 30/31', fixed: ['pd R 30 L 31'] },
    { wrong: 'pd 63 near 30 / 31', fixed: ['pd 63 near R 30 L 31'] },
    { wrong: 'height 17/16.5', fixed: ['height R 17 L 16.5'] },
    { wrong: 'height 17 16.5', fixed: ['height R 17 L 16.5'] },
    {
      wrong: 'add +2.00 intermediate +1.00 / +2.25 intermediate +1.12',
      fixed: ['add R +2.00 intermediate +1.00 L +2.25 intermediate +1.12'],
    },
    { wrong: 'optical-centres 33/32', fixed: ['optical-centres R 33 L 32'] },
  ],
  'third-figure': [
    { wrong: 'R -4.50 -0.75 -2.00', fixed: ['R -4.50 -0.75 add +2.00'] },
    { wrong: 'R -4.50 -0.75 2.25', fixed: ['R -4.50 -0.75 add +2.25'] },
    { wrong: 'R -4.50 -0.75 200', fixed: ['R -4.50 -0.75 add +200'] },
    { wrong: 'R -4.50 -0.75 22.5', fixed: [] },
  ],
  'typographic-sign': [
    { wrong: 'R –4.50', fixed: ['R -4.50'] },
    { wrong: 'L plano ‒0.75 x 022', fixed: ['L plano -0.75 x 022'] },
  ],
  'unexpected-text': [
    { wrong: 'pd 63 ok', fixed: ['pd 63 # ok'] },
    { wrong: 'R -4.50 -0.75 x 022 +2.00', fixed: ['R -4.50 -0.75 x 022 add +2.00'] },
    { wrong: 'R -4.50 DS adn +2.00', fixed: ['R -4.50 DS add +2.00', 'R -4.50 DS # adn +2.00'] },
    { wrong: 'pd 63 62', fixed: [] },
    { wrong: 'order QL#1042', fixed: ['order "QL#1042"'] },
    { wrong: 'remake-of QL#1001 "axis"', fixed: ['remake-of "QL#1001" "axis"'] },
    { wrong: 'frame 52 18', fixed: ['frame 52[]18'] },
    { wrong: 'design bifocal R 22', fixed: ['design bifocal R22'] },
    { wrong: 'height 17 up', fixed: ['height 17 # up'] },
  ],
  'unknown-choice': [
    { wrong: 'decided acept by MT', fixed: ['decided accept by MT'] },
    { wrong: 'reading 2026-11-24 stage edgd', fixed: ['reading 2026-11-24 stage edged'] },
    { wrong: 'prism R 0 at prism-pont', fixed: ['prism R 0 at prism-point'] },
    { wrong: 'as-worn vertx 13', fixed: ['as-worn vertex 13'] },
    { wrong: 'frame Q 5', fixed: [] },
  ],
  'unknown-line': [
    { wrong: 'ordr QL-1043', fixed: ['order QL-1043'] },
    { wrong: 'OX -4.50', fixed: ['R -4.50', 'L -4.50'] },
    { wrong: 'customer waits', fixed: ['note customer waits'] },
    { wrong: '(by phone)', fixed: ['note (by phone)'] },
  ],
  'value-missing': [
    { wrong: 'again', fixed: [] },
    { wrong: 'R -4.50 @', fixed: [] },
    { wrong: 'segment R', fixed: [] },
    { wrong: 'clock R +6.25 L', fixed: [] },
    { wrong: 'add R -4.50 ->', fixed: [] },
    { wrong: 'reading 2026-11-24 by', fixed: [] },
    { wrong: 'zero +', fixed: [] },
    { wrong: 'due', fixed: [] },
  ],
  'whole-dioptres': [
    { wrong: 'R -4', fixed: ['R -4.00'] },
    { wrong: 'R -10-0.75x022', fixed: ['R -10.00-0.75x022'] },
    { wrong: 'add 2', fixed: ['add 2.00'] },
  ],
  'wide-characters': [
    { wrong: 'R -４．５０', fixed: ['R -4.50'] },
    { wrong: 'pd ６３', fixed: ['pd 63'] },
    { wrong: 'R －４，５０', fixed: ['R -4.50'] },
  ],
};

/** Lines that are right and raise nothing at all. */
const QUIET = [
  'R -4.50 -0.75 x 022',
  'L -4.25 -1.00 x 168',
  'R -4.50-0.75x022',
  'R -4.50 / -0.75 x 022',
  'R plano',
  'R pl -0.75 x 180',
  'R ∞ DS',
  'R 0.00',
  'add 2.00',
  'add R -4.50 -> -2.50 front-vertex',
  'R -4.50 @ 022 / -5.25 @ 112',
  'R lines -4.25 / -5.25 x 168',
  'pd R 31.5 L 31.5 near R 30 L 30',
  'height R 17 L 16.5',
  'reading 2026-11-24 14:30 by KO with FOC-A',
  'note call the shop # about the tint',
  // Each quantity has one unit, so a unit that is typed cannot be misread.
  'R -4.50 -0.75 x 022°',
  'R -4.50D',
  'pd 63mm',
  'as-worn vertex 13 mm panto 8° wrap 5°',
  'thickness 2.0',
  'inset R 2 L 2',
  'as-worn panto -2',
];

const findings = (line: string): readonly Finding[] =>
  parseLine(line).problems.map(({ code, start, end, data = {} }) => {
    const level = levelOf(ruleOf(code) as Rule, data, 'order');
    return { code, level, line: 0, start, end, data, eye: null };
  });

const levelOf = ({ level }: Rule, data: Finding['data'], block: BlockOfFinding): string & Finding['level'] =>
  typeof level === 'function' ? level(data, block) : level;

const codes = (line: string): readonly string[] => parseLine(line).problems.map(({ code }) => code);

const fixesOf = (line: string, finding: Finding): readonly Fix[] =>
  ruleOf(finding.code)?.fixes?.({ finding, lines: [line] }) ?? [];

function applied(line: string, { edits }: Fix): string {
  let text = line;
  for (const edit of [...edits].sort((a, b) => b.start - a.start))
    text = text.slice(0, edit.start) + edit.text + text.slice(edit.end);
  return text;
}

const timesIn = (line: string, code: string): number => codes(line).filter((other) => other === code).length;

function checkRow(code: string, { wrong, also = [], fixed }: Row): void {
  if (also === 'any') expect(codes(wrong)).toContain(code);
  else expect([...new Set(codes(wrong))].sort()).toEqual([code, ...also].sort());
  const finding = findings(wrong).find((one) => one.code === code) as Finding;
  expect(fixesOf(wrong, finding).map((fix) => applied(wrong, fix))).toEqual(fixed);
  for (const line of fixed) expect(timesIn(line, code)).toBe(timesIn(wrong, code) - 1);
}

describe.each(WRITING)('$code', (rule) => {
  const { code, page } = rule;

  test.each(ROWS[code] ?? [])('is told of “$wrong” and mended', (row) => checkRow(code, row));

  test('has at least two cases beside its example', () => {
    expect(ROWS[code]?.length).toBeGreaterThanOrEqual(2);
  });

  test('shows an example that raises it and one that is well written', () => {
    expect(codes(page.example.wrong)).toContain(code);
    expect(findings(page.example.right).filter(({ level }) => level !== 'hint')).toEqual([]);
  });

  test('mends its example', () => {
    for (const finding of findings(page.example.wrong).filter((one) => one.code === code))
      for (const fix of fixesOf(page.example.wrong, finding))
        expect(timesIn(applied(page.example.wrong, fix), code)).toBe(timesIn(page.example.wrong, code) - 1);
  });

  test('tells of a fix exactly where it has one', () => {
    expect(page.fix !== undefined).toBe(rule.fixes !== undefined);
  });

  test('says in one sentence what it looks at', () => {
    expect(page.checks).toMatch(/^[A-Z].*\.$/);
    expect(page.checks).not.toMatch(/\. [A-Z]/);
  });

  test('speaks plainly', () => {
    const lines = [page.example.wrong, ...(ROWS[code] ?? []).map(({ wrong }) => wrong)];
    for (const line of lines) {
      for (const { data } of findings(line).filter((one) => one.code === code)) {
        const message = rule.message(data);
        expect(message).toMatch(/^[A-Z“\d].*[.?]$/);
        expect(message).not.toMatch(/please|!|undefined|NaN|null|token|pars/i);
      }
    }
  });
});

test.each(QUIET)('“%s” is left alone', (line) => {
  expect(codes(line)).toEqual([]);
});

test.each([
  ['R -450', 'Taken as -4.50; the point is missing.'],
  ['R -12', 'The point is missing: is it -12.00 or -0.12?'],
  ['R -75', 'The point is missing: is it -0.75?'],
  ['R -45.00', '45.00 dioptres is beyond any spectacle lens (40). Where does the point belong?'],
  ['R -4.50 -0.75 x 5', 'Taken as 005. Was a digit of the axis lost?'],
  ['R -4.50 -0.75 x 190', 'An axis is a whole number from 1 to 180. 190 is not taken.'],
  ['prism R 1/2 BU', 'Taken as 0.50.'],
  ['due 01/12/2026', 'Day or month first? Write 01/12/2026 as year-month-day.'],
  ['heigth 17', '“heigth” does not begin any line here. The line is not taken.'],
  ['clock R', 'What belongs to “R” is missing.'],
  ['supply glaced', '“glaced” is not taken. Here may stand: glazed, edged, uncut.'],
])('of “%s” it says “%s”', (line, message) => {
  expect(findings(line).map(({ code, data }) => ruleOf(code)?.message(data))).toEqual([message]);
});

test('one digit of an axis is a warning in an order and a hint in a reading', () => {
  const rule = ruleOf('axis-short') as Rule;
  const level = (digits: number, block: BlockOfFinding): string => levelOf(rule, { digits }, block);
  expect([level(1, 'order'), level(1, 'reading'), level(2, 'order')]).toEqual(['warning', 'hint', 'hint']);
});

test('a fraction is a hint, and an error where it has no value', () => {
  expect(findings('prism R 1/2 BU').map(({ level }) => level)).toEqual(['hint']);
  expect(findings('prism R 1/0 BU').map(({ level }) => level)).toEqual(['error']);
});

test.each([
  ['length-negative', '-60', 'pd 63-60', ['pd 63/60', 'pd 63.60']],
  ['pair-unclear', '63-60', 'pd 63-60', ['pd 63 near 60', 'pd R 63 L 60', 'pd 63.60']],
  ['pair-unclear', '63,60', 'pd 63,60', ['pd 63 near 60', 'pd R 63 L 60', 'pd 63.60']],
])('%s at “%s” of “%s” offers the pair and the decimal', (code, covered, line, fixed) => {
  const start = line.indexOf(covered);
  const end = start + covered.length;
  const finding: Finding = { code, level: 'error', line: 0, start, end, data: {}, eye: null };
  expect(fixesOf(line, finding).map((fix) => applied(line, fix))).toEqual(fixed);
});

test('a comma that may stand between two lengths is not changed without looking', () => {
  const safe = (line: string): readonly boolean[] =>
    findings(line).flatMap((finding) => fixesOf(line, finding).map((fix) => fix.safe));
  expect(safe('pd 63,60')).not.toContain(true);
  expect(safe('pd 63,5')).toEqual([true]);
});

test('a limit of a house set is not taken for a line of an order', () => {
  const finding: Finding = {
    code: 'unknown-line',
    level: 'error',
    line: 1,
    start: 0,
    end: 4,
    data: { word: 'powr' },
    eye: null,
  };
  const titles = (head: string): readonly string[] =>
    ruleOf('unknown-line')
      ?.fixes?.({ finding, lines: [head, 'powr 0.12'] })
      .map(({ title }) => title) ?? [];
  expect(titles('tolerance house from z80.1-2015')).toEqual(['Write power']);
  expect(titles('order QL-1')).toEqual([]);
});

describe('the catalogue', () => {
  test('has each code once, by family and then by code', () => {
    expect(new Set(RULES.map(({ code }) => code)).size).toBe(RULES.length);
    const writing = RULES.filter(({ family }) => family === 'writing').map(({ code }) => code);
    expect(writing).toEqual([...writing].sort());
    expect(RULES.slice(0, writing.length).every(({ family }) => family === 'writing')).toBe(true);
    expect(ruleOf('sign-missing')?.level).toBe('error');
    expect(ruleOf('no-such-code')).toBeUndefined();
  });

  test('has a page for every code that the grammar emits', () => {
    const emitted = sources(join(ROOT, 'grammar')).flatMap(codesIn);
    expect(emitted.length).toBeGreaterThan(30);
    expect(emitted.filter((code) => !ruleOf(code))).toEqual([]);
  });

  test('has a file for each page of the family, named as its code', () => {
    const files = readdirSync(join(ROOT, 'orders', 'rules', 'writing'));
    expect(WRITING.map(({ code }) => `${code}.ts`).filter((file) => !files.includes(file))).toEqual([]);
  });
});

function sources(folder: string): readonly string[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  return files.map((file) => readFileSync(join(folder, file), 'utf8'));
}

/** Codes stand behind `code:` or `code =`, as a word or as the two words of a choice. */
const codesIn = (source: string): readonly string[] =>
  [...source.matchAll(/\bcode(?::| =)([^,;\n]*)/g)].flatMap(([, rest = '']) =>
    [...rest.matchAll(/'([a-z]+(?:-[a-z]+)*)'/g)].map(([, code = '']) => code),
  );

describe('over lines put together at random', () => {
  const PARTS = [
    'R|L|both|add|pd|near|height|prism|again|lines|design|clock|due|note|intermediate|plano|DS|SPH|heigth|ok|"open',
    '-4.50|−4.50|- 4.50|+2|-12|-450|-45.00|4.50|.50|-2.|-4,50|－４．５０|0|-0.75|022|63|31|63/60|1/2|2.00 BI',
    '-|/|(|)|,|@|x|x 22|x 5|x 0|x 190|x 3u!|@ 112|01/12/2026|2026-13-01',
  ].flatMap((words) => words.split('|'));
  const line = fc
    .array(fc.tuple(fc.constantFrom(...PARTS), fc.constantFrom(' ', ' ', ' ', '')), { minLength: 1, maxLength: 7 })
    .map((parts) => parts.flat().join(''));
  const options = { seed: 20261124, numRuns: 2500 };

  test('every fix takes away what it was offered for', () => {
    fc.assert(
      fc.property(line, (text) => {
        for (const finding of findings(text))
          for (const fix of fixesOf(text, finding))
            expect(timesIn(applied(text, fix), finding.code)).toBeLessThan(timesIn(text, finding.code));
      }),
      options,
    );
  });

  test('a safe fix leaves the meaning as it was', () => {
    fc.assert(
      fc.property(line, (text) => {
        for (const finding of findings(text))
          for (const fix of fixesOf(text, finding).filter(({ safe }) => safe))
            expect(meaning(applied(text, fix))).toBe(meaning(text));
      }),
      options,
    );
  });
});

/** The tree without places and without the number of typed decimals, which a fix may change. */
const meaning = (line: string): string =>
  JSON.stringify(parseLine(line).node, (key, value) =>
    ['start', 'end', 'decimals'].includes(key) ? undefined : value,
  );
