import { describe, expect, test } from 'vitest';
import { type CompletionItem, CompletionTriggerKind, InsertTextFormat, type TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { VOCABULARY } from '../../grammar';
import { format, parseDocument } from '../../orders';
import type { Abilities } from '../../server/abilities';
import { completion, resolveCompletion } from '../../server/features/completion';
import { BIFOCAL, options, sample } from './support/sample';

interface Asking {
  readonly abilities?: Partial<Abilities>;
  /** Whether a blank has just been typed, and nobody has asked. */
  readonly byBlank?: boolean;
  readonly standard?: string;
}

function listAt(marked: string, { abilities = {}, byBlank = false }: Asking = {}) {
  const { snapshot, position } = sample(marked);
  const { abilities: usual, ...rest } = options();
  const triggerKind = byBlank ? CompletionTriggerKind.TriggerCharacter : CompletionTriggerKind.Invoked;
  const params = { textDocument: { uri: '' }, position, context: { triggerKind } };
  return completion(snapshot, params, { ...rest, abilities: { ...usual, ...abilities } });
}

const itemsAt = (marked: string, asking: Asking = {}): readonly CompletionItem[] =>
  [...(listAt(marked, asking)?.items ?? [])].sort((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1));

const labelsAt = (marked: string, asking: Asking = {}): string[] => itemsAt(marked, asking).map(({ label }) => label);

/** Compares the first offers in their order, and looks that others are not there at all. */
function checkOffers(
  marked: string,
  first: readonly string[],
  none: readonly string[] = [],
  asking: Asking = {},
): void {
  const labels = labelsAt(marked, asking);
  expect(labels.slice(0, first.length)).toEqual(first);
  expect(new Set(labels).size).toBe(labels.length);
  expect(labels.filter((label) => none.includes(label))).toEqual([]);
}

/** The text after the item of a label has been taken. */
function taken(marked: string, label: string, asking: Asking = {}): string {
  const { text } = sample(marked);
  const item = itemsAt(marked, asking).find((one) => one.label === label);
  if (!item) throw new Error(`“${label}” is not offered: ${labelsAt(marked, asking).join(', ')}`);
  return TextDocument.applyEdits(TextDocument.create('', 'lentil', 0, text), [item.textEdit as TextEdit]);
}

/** Places whose figures are kept and not judged. */
const PLACES = ['edge', 'periphery', 'temporal', 'nasal', 'upper', 'lower'];

describe('at the head of a line', () => {
  test('an empty text begins with a block or a standard', () => {
    checkOffers('|', ['order', 'standard', 'instrument', 'defaults', 'tolerance'], ['R', 'add', 'reading']);
  });

  test('an order is offered what it has not said yet before the rest, and other blocks last', () => {
    checkOffers('order A\n  R -1.00\n  pd 63\n  |\n', ['L', 'add', 'prism', 'height', 'design'], ['zero', 'power']);
    const labels = labelsAt('order A\n  R -1.00\n  pd 63\n  |\n');
    expect(labels.indexOf('pd')).toBeGreaterThan(labels.indexOf('note'));
    expect(labels.indexOf('instrument')).toBeGreaterThan(labels.indexOf('pd'));
  });

  test('lines are counted as said in the same reading only', () => {
    const above = 'order A\n  reading 2026-11-23\n    R -1.00\n    L -1.00\n  reading 2026-11-24\n    R -1.00\n    |';
    checkOffers(above, ['L', 'add', 'pd', 'prism', 'height']);
  });

  test('a line no deeper than its reading may be one of the order', () => {
    checkOffers('order A\n  R -1.00\n  reading 2026-11-24\n    R -1.00\n  |', ['L', 'add', 'prism', 'pd']);
    expect(labelsAt('order A\n  reading 2026-11-24\n    |')).toContain('frame');
  });

  test.each([
    ['instrument F\n  |', ['kind', 'reads-to', 'zero', 'calibrated', 'test-lens'], ['R', 'design']],
    ['tolerance house from z80.1-2015\n  |', ['power', 'cylinder', 'axis', 'add'], ['R', 'design']],
    ['defaults\n  |', ['lens', 'design', 'supply'], ['zero', 'reading']],
  ])('%j', (marked, first, none) => checkOffers(marked, first, none));

  test('the eyes are named as the order names them', () => {
    checkOffers('order A\n  OD -1.00\n  |', ['OS', 'add'], ['L', 'R']);
    checkOffers('order A\n  right -1.00\n  |', ['left', 'add'], ['L', 'both ']);
    expect(labelsAt('order A\n  RE -1.00\n  |')).toContain('BE');
  });

  test('the word under the cursor is replaced as a whole, also when half of it stands behind the cursor', () => {
    expect(taken('order A\n  de|\n', 'design')).toBe('order A\n  design\n');
    expect(taken('order A\n  hei|gth 17\n', 'height')).toBe('order A\n  height 17\n');
    expect(taken('order A\n  base-c| 4.00\n', 'base-curve')).toBe('order A\n  base-curve 4.00\n');
    expect(taken('ordr| QL-1\n', 'order')).toBe('order QL-1\n');
  });

  test('a text that begins with a byte order mark is edited in its own columns', () => {
    const { snapshot } = sample('\uFEFFor A\n');
    const params = { textDocument: { uri: '' }, position: { line: 0, character: 3 } };
    const edit = completion(snapshot, params, options())?.items[0]?.textEdit;
    expect(edit).toMatchObject({ range: { start: { character: 1 }, end: { character: 3 } } });
  });

  test('indentation asks for nothing', () => {
    expect(labelsAt('order A\n  |', { byBlank: true })).toEqual([]);
  });
});

describe('inside a line', () => {
  const inOrder = (line: string): string => `order A\n  ${line}\n`;
  const inReading = (line: string): string => `instrument FOC-A\norder A\n  reading 2026-11-24\n    ${line}\n`;

  test.each([
    ['supply |', ['glazed', 'edged', 'uncut']],
    ['supply e|', ['glazed', 'edged', 'uncut']],
    ['compensation |', ['none', 'done', 'vertex', 'by-maker']],
    ['split |', ['free', 'equal', 'as-written']],
    ['purpose |', ['general', 'safety', 'child']],
    ['design |', ['single-vision', 'bifocal', 'progressive', 'trifocal', 'office', 'double', 'R', 'L']],
    ['design bifocal |', ['flat-top', 'round', 'curve-top', 'full-width']],
    ['design single-vision |', ['distance', 'near', 'intermediate']],
    ['design office |', ['degression', 'working']],
    ['lens resin-1.60 |', ['R', 'L', 'index', 'abbe', 'density']],
    ['frame |', ['A', 'B', 'DBL', 'ED']],
    ['frame A 52 B 36 |', ['DBL', 'ED']],
    ['as-worn vertex 13 |', ['panto', 'wrap']],
    ['thickness centre 2.0 |', ['edge', 'min', 'R', 'L']],
    ['pd 63 |', ['R', 'L', 'near']],
    ['pd R 31.5 |', ['L', 'near']],
    ['pd R 31.5 L 31.5 near |', ['R', 'L']],
    ['prism R 2.00 |', ['L', 'BI', 'BO', 'BU', 'BD', 'base']],
    ['prism R 2.00B|', ['L', 'BI', 'BO', 'BU', 'BD', 'base']],
    ['R -4.50 -0.75 |', ['x', 'DS', 'add', 'prism']],
    ['R |', ['plano']],
    ['R -4.50 prism 1.00 |', ['x', 'DS', 'add', 'prism', 'BI', 'BO', 'BU', 'BD', 'base']],
    ['decentre R 2.5 |', ['L', 'in', 'out', 'up', 'down']],
    ['height 2 |', ['R', 'L', 'below']],
    ['height 2 below |', ['datum']],
    ['make |', ['R', 'L']],
  ])('order: %s', (line, expected) => expect(labelsAt(inOrder(line))).toEqual(expected));

  test.each([
    ['R |', ['lines', 'plano']],
    ['R -4.50 |', ['x', 'DS', 'add', 'prism', 'at', 'with', 'corrected']],
    ['R lines -4.50 |', ['wide', 'thin', 'x', 'DS', 'add', 'prism', 'at', 'with', 'corrected']],
    [
      'add R -4.50 -> -2.50 |',
      ['L', 'intermediate', 'front-vertex', 'back-vertex', 'engraved', 'at', 'with', 'corrected'],
    ],
    ['again pd 63 |', ['R', 'L', 'near', 'at', 'with', 'corrected']],
    [
      'prism R 0 at |',
      ['distance-point', 'prism-point', 'near-point', 'fitting-cross', 'top', 'upper-segment', ...PLACES],
    ],
    ['R -4.50 with |', ['FOC-A']],
    ['cosmetic |', ['passed', 'failed', 'R', 'L']],
    ['impact |', ['passed', 'failed', 'batch', 'R', 'L']],
    ['decided |', ['accept', 'reject', 'remake', 'R', 'L']],
    ['segment R 28 tilt 1 |', ['L', 'nasal-up', 'nasal-down', 'at', 'with', 'corrected']],
  ])('reading: %s', (line, expected) => expect(labelsAt(inReading(line))).toEqual(expected));

  test('the other eye is named as the order names the first', () => {
    expect(labelsAt('order A\n  OD -1.00\n  pd OD 31 |\n')).toEqual(['OS', 'near']);
  });

  test('the header of a reading is offered today, then who, with what and at which stage', () => {
    checkOffers('order A\n  reading |', ['2026-11-25'], ['by']);
    checkOffers('order A\n  reading 2026-11-25 |', ['by', 'with', 'stage'], ['2026-11-25']);
    expect(taken('order A\n  reading 2026|', '2026-11-25')).toBe('order A\n  reading 2026-11-25');
    const readings =
      'instrument FOC-A\ninstrument "lens bench"\norder A\n  reading 2026-11-24 by KO\n  reading 2026-11-25';
    expect(labelsAt(`${readings} by |`)).toEqual(['KO']);
    expect(labelsAt(`${readings} stage |`)).toEqual(['edged', 'uncut', 'final']);
    expect(labelsAt(`${readings} with |`)).toEqual(['FOC-A', 'lens bench']);
    expect(taken(`${readings} with FO|C`, 'lens bench')).toBe(`${readings} with "lens bench"`);
  });

  test('materials stand behind the word and behind an eye', () => {
    checkOffers('order A\n  lens |', ['resin-1.50', 'resin-1.53', 'resin-1.56', 'polycarbonate']);
    checkOffers('order A\n  lens R |', ['resin-1.50']);
    expect(taken('order A\n  lens resin-1.|5', 'resin-1.60')).toBe('order A\n  lens resin-1.60');
  });

  test('standards are the built-in sets and those of the house', () => {
    const house = 'tolerance house from z80.1-2015\n  power 0.12\n';
    checkOffers(`${house}standard |`, ['house', 'z80.1-2015']);
    expect(taken('standard z80.1-1|999', 'iso-21987-2017')).toBe('standard iso-21987-2017');
    checkOffers('tolerance house from |', ['z80.1-2015'], ['house']);
    checkOffers('tolerance house |', ['from']);
  });

  test('an instrument of a bench file is offered like one of the file', () => {
    const bench = parseDocument('instrument FOC-B\n  kind manual focimeter\n  reads-to 0.125\n');
    const { snapshot, position } = sample('order A\n  reading 2026-11-24 with |', null, [bench]);
    const list = completion(snapshot, { textDocument: { uri: '' }, position }, options());
    expect(list?.items).toMatchObject([{ label: 'FOC-B', detail: 'manual focimeter, reads to 0.125 D' }]);
  });

  test('other orders are offered from the nearest, and the list says when it is not all of them', () => {
    const orders = (from: number, to: number): string =>
      Array.from({ length: to - from }, (_, at) => `order QL-${from + at}\n`).join('');
    expect(labelsAt(`${orders(1, 4)}order X\n  remake-of |\norder "a b"\n`)).toEqual(['QL-3', 'a b', 'QL-2', 'QL-1']);
    expect(listAt(`${orders(1, 4)}order X\n  remake-of |\n`)?.isIncomplete).toBe(false);
    expect(listAt(`${orders(0, 600)}order X\n  remake-of |\n`)?.isIncomplete).toBe(true);
  });

  test('two orders of one name are offered once', () => {
    expect(labelsAt('order A\norder A\norder X\n  remake-of |\n')).toEqual(['A']);
  });

  test('findings of the order come before all other codes, and what cannot be confirmed is none of them', () => {
    const text = 'standard z80.1-2015\norder A\n  R -4.50 -0.75 x 5\n  L 4.50\n  confirmed |';
    checkOffers(text, [], ['sign-missing', 'power-outside', 'axis-outside']);
    expect(labelsAt(text).indexOf('axis-short')).toBeLessThan(3);
    expect(labelsAt(text)).toContain('cross-room');
  });

  test.each([
    '# note to |',
    'order A\n  R -4.50  # fr|',
    'order A\n  note "su|"',
    'order A\n  note su|',
    'order A\n  confirmed axis-short "R |',
    'order A\n  reading 2026-11-24 by KO\n    note by |',
    'instrument FOC-A\norder A\n  reading 2026-11-24\n    note with |',
    'order A by |',
    'order A\n  note “su|',
    'order A\n  R -4.5|',
    'order A\n  R -|',
    'order A\n  foo |',
    'order A|',
    'order |',
  ])('nothing is offered: %j', (marked) => expect(listAt(marked)).toBeNull());

  test('a closed quoted text is followed by words again', () => {
    checkOffers('order A\n  confirmed axis-short "R" "why" |', ['by']);
  });

  test('a typed blank asks only where one of a few words has to stand', () => {
    const byBlank = true;
    expect(labelsAt(inOrder('supply |'), { byBlank })).toHaveLength(3);
    expect(labelsAt(inReading('R -4.50 with |'), { byBlank })).toEqual(['FOC-A']);
    for (const line of ['R |', 'R -4.50 |', 'pd 63 |', 'add R |'])
      expect(labelsAt(inOrder(line), { byBlank })).toEqual([]);
  });
});

describe('whole blocks', () => {
  const snippets = (marked: string, asking: Asking = {}) =>
    itemsAt(marked, asking).filter(({ label }) => label.includes(', with'));

  /** Every place filled in with a figure, or with the first word to choose. */
  const filledIn = (snippet: string): string =>
    snippet
      .replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, '$1')
      .replace('\n  $0', '')
      .replace(/\$\d+/g, '63');

  test('each of them reads as it is laid out, and has nothing in it that is not known', () => {
    const [asSnippet, asPlain] = [true, false].map((snippets) => ({ abilities: { snippets } }));
    const labels = snippets('|').map(({ label }) => label);
    expect(labels).toHaveLength(4);
    for (const label of labels) {
      const filled = filledIn(taken('|', label, asSnippet));
      expect(format(filled)).toBe(filled);
      const { kind, lines } = parseDocument(filled).blocks[0] ?? { lines: [] };
      expect(lines.filter((line) => line.parsed(kind ?? 'order').node.kind === 'unknown')).toEqual([]);
      expect(taken('|', label, asPlain)).not.toMatch(/[$\d]/);
    }
  });

  test('an order is written with places to fill in, by an editor that has them', () => {
    const [order] = snippets('|', { abilities: { snippets: true } });
    expect(order).toMatchObject({ label: 'order, with its lines', insertTextFormat: InsertTextFormat.Snippet });
    expect(taken('|', 'order, with its lines', { abilities: { snippets: true } })).toMatch(
      /^order \$1\n {2}R {11}\$2\n {2}L {11}\$3\n/,
    );
  });

  test('a reading lists what its order calls for, with the expected figures as remarks only', () => {
    const marked = `${BIFOCAL.slice(0, BIFOCAL.indexOf('\n  reading'))}\n  |`;
    const label = 'reading, with its lines';
    const text = taken(marked, label, { abilities: { snippets: false } });
    expect(text).toContain('  reading 2026-11-25 with FOC-A\n');
    expect(text).toMatch(/\n {4}L {8}lines {2}\/ {2}x {3}# expect thin lines -4\.25/);
    const lines = text.slice(text.indexOf('with FOC-A\n')).trimEnd().split('\n').slice(1);
    expect(lines.length).toBeGreaterThan(6);
    for (const line of lines) expect(line.slice(0, line.indexOf('#'))).not.toMatch(/\d/);
  });

  test('a reading is found by its first letters', () => {
    const order = 'order A\n  R -1.00\n  L -1.00\n  pd 63\n  ';
    expect(labelsAt(`${order}read|`)).toContain('reading, with its lines');
    expect(labelsAt(`${order}hei|`)).not.toContain('reading, with its lines');
  });

  test('a block is not set in front of what the line says already', () => {
    expect(snippets('or| QL-1\n')).toEqual([]);
  });

  test('line ends of the text are kept where the editor takes them as they are', () => {
    const text = taken('# a\r\n|', 'defaults, with its lines', { abilities: { snippets: false } });
    expect(text).toBe('# a\r\ndefaults\r\n  lens\r\n  supply\r\n');
  });
});

describe('what is said about an offer', () => {
  const about = (marked: string, label: string, abilities: Partial<Abilities>): CompletionItem => {
    const item = itemsAt(marked, { abilities }).find((one) => one.label === label);
    if (!item) throw new Error(`“${label}” is not offered`);
    return resolveCompletion(item, { ...options().abilities, ...abilities });
  };

  test.each([
    ['order A\n  |', 'height', /lower tangent.*height R 17 L 16\.5/s],
    ['order A\n  supply |', 'uncut', /not yet cut/],
    ['order A\n  lens |', 'polycarbonate', /Index 1\.586.*Source/s],
    ['standard |', 'z80.1-2015', /edition 2015/],
    ['order A\n  confirmed |', 'cross-room', /cross-room/],
  ])('%j: %s', (marked, label, expected) => {
    const late = about(marked, label, { lateDocumentation: true, markdownCompletion: true });
    expect(late.documentation).toMatchObject({ kind: 'markdown', value: expect.stringMatching(expected) });
    expect(itemsAt(marked, { abilities: { lateDocumentation: true } })[0]?.documentation).toBeUndefined();
    const early = about(marked, label, { lateDocumentation: false, markdownCompletion: false });
    expect(early.documentation).toMatchObject({ kind: 'plaintext', value: expect.stringMatching(expected) });
    expect(JSON.stringify(early.documentation)).not.toMatch(/\*\*|`/);
  });

  test('another spelling of a word finds it', () => {
    const design = itemsAt('order A\n  design |').find(({ label }) => label === 'progressive');
    expect(design?.filterText?.split(' ')).toContain('varifocal');
  });

  test('every word of the notation has something to say', () => {
    for (const { word, help, role } of VOCABULARY) expect(`${role} ${word}: ${help}`).toMatch(/: [A-ZÄ“].*\.$/);
  });
});
