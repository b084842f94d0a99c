import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar';
import germanBundle from '../../l10n/bundle.l10n.de.json';
import bundle from '../../l10n/bundle.l10n.json';
import { analyse } from '../../orders';
import manifest from '../../package.json';
import german from '../../package.nls.de.json';
import english from '../../package.nls.json';
import snippets from '../../snippets/lentil.json';
import { root } from '../exchange/support/examples';
import { findingsOf } from '../support/findings';

const { contributes } = manifest;
const sources = readdirSync(join(root, 'client'), { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);
const clientText = sources.map((name) => readFileSync(join(root, 'client', name), 'utf8')).join('\n');

/** First arguments of the calls of a function of an object, as `l10n.t('…')`. */
function firstArguments(object: string, name: string): readonly string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const called = ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression) ? node : undefined;
    const access = called?.expression as ts.PropertyAccessExpression | undefined;
    const [first] = called?.arguments ?? [];
    if (access?.expression.getText() === object && access.name.text === name && first && ts.isStringLiteralLike(first))
      found.push(first.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('client.ts', clientText, ts.ScriptTarget.Latest, true));
  return [...new Set(found)];
}

const sorted = (keys: Iterable<string>): readonly string[] => [...keys].sort();

describe('words', () => {
  const used = [...JSON.stringify(manifest).matchAll(/"%([^%"]+)%"/g)].map(([, key]) => key as string);

  test('of the manifest are there in both languages, and no others', () => {
    expect(used.length).toBeGreaterThan(20);
    expect(sorted(Object.keys(english))).toEqual(sorted(new Set(used)));
    expect(sorted(Object.keys(german))).toEqual(sorted(new Set(used)));
  });

  test('of the client are there in both languages, and no others', () => {
    const said = sorted(firstArguments('l10n', 't'));
    expect(said.length).toBeGreaterThan(10);
    expect(sorted(Object.keys(bundle))).toEqual(said);
    expect(sorted(Object.keys(germanBundle))).toEqual(said);
    expect(Object.entries(bundle).filter(([key, words]) => key !== words)).toEqual([]);
  });

  test.each(Object.entries(germanBundle))('“%s” keeps its places in German', (key, words) => {
    const places = (text: string) => sorted(text.match(/\{\d\}/g) ?? []);
    expect(places(words)).toEqual(places(key));
  });
});

describe('commands', () => {
  const listed = contributes.commands.map(({ command }) => command);

  test('that are listed are all made, and stand under one name', () => {
    const made = [...firstArguments('commands', 'registerCommand'), ...actionCommands()];
    expect(sorted(made)).toEqual(sorted(listed));
    expect(contributes.commands.filter(({ category }) => category !== 'Lentil')).toEqual([]);
  });

  test('that keys, menus and steps speak of exist', () => {
    const spoken = [
      ...JSON.stringify({ ...contributes, commands: [] }).matchAll(/(?<![\w/])lentil\.[a-z]\w+(?=[")])/gi),
    ].map(([one]) => one);
    const others = ['lentil.orders', 'lentil.isActive', ...Object.keys(contributes.configuration.properties)];
    expect(spoken.filter((one) => ![...listed, ...others].includes(one))).toEqual([]);
  });
});

/** Those that only pass an action of the server on are made from a list. */
const actionCommands = (): readonly string[] =>
  [...clientText.matchAll(/command: '(lentil\.\w+)', kind/g)].map(([, id]) => id as string);

test('every file that the manifest names is there', () => {
  const named = [...JSON.stringify(contributes).matchAll(/"(?:\.\/)?((?:media|snippets|grammar)\/[^"]+)"/g)].map(
    ([, path]) => path as string,
  );
  expect(named.length).toBeGreaterThan(5);
  expect([manifest.icon, ...named].filter((path) => !existsSync(join(root, path)))).toEqual([]);
});

describe.each(Object.entries(snippets))('the snippet “%s”', (_, { body }) => {
  /** As the editor inserts it: the first choice, the default, the day. */
  const text = body
    .join('\n')
    .replace(/\$\{CURRENT_YEAR\}-\$\{CURRENT_MONTH\}-\$\{CURRENT_DATE\}/, '2026-11-24')
    .replace(/\$\{CURRENT_HOUR\}:\$\{CURRENT_MINUTE\}/, '14:30')
    .replace(/\$\{\d+\|([^,|]+)[^|]*\|\}/g, '$1')
    .replace(/\$\{\d+:([^}]*)\}/g, '$1')
    .replace(/\$0/g, '');
  const isReading = text.startsWith('reading');
  const whole = `standard z80.1-2015\n${isReading ? 'order A\n  both -1.00 -0.50 x 090\n' : ''}${text}`;

  test('is understood as it stands', () => {
    const wrong = findingsOf(whole).filter(({ finding: { code } }) => ruleFamilies.test(code));
    expect(wrong.map(({ finding: { code }, text: words }) => `${code} [${words}]`)).toEqual([]);
    expect(parseLine(body[0]?.split('$')[0] ?? '').node.kind).not.toBe('unknown');
  });

  test('offers only what the notation knows', () => {
    for (const [, choices = ''] of body.join('\n').matchAll(/\$\{\d+\|([^|]*)\|\}/g))
      for (const choice of choices.split(',')) expect(choice.trim()).not.toBe('');
    expect(whole).not.toContain('${');
  });
});

/** What is told of lines that are not understood. */
const ruleFamilies =
  /^(?:unknown-|unexpected-|value-missing|line-outside|sign-|point-|name-missing|block-|standard-unknown)/;

describe('the sample of the first steps', () => {
  const text = readFileSync(join(root, 'media/walkthrough/sample.lentil'), 'utf8');

  test('holds just the two faults that it speaks of', () => {
    const errors = findingsOf(text).filter(({ finding: { level } }) => level === 'error');
    expect(errors.map(({ finding: { code } }) => code)).toEqual(['axis-outside', 'sign-missing']);
  });

  test('is accepted once the axis is mended', () => {
    const mended = analyse(text.replace('-0.75 x 030', '-0.75 x 022'));
    expect(mended.blocks.find(({ order }) => order?.name === 'SS-2001')?.evaluation?.verdict).toBe('accept');
  });
});
