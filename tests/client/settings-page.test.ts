/** The page of the settings is made from the manifest. A stale page fails here; `UPDATE_PAGES=1` in the environment writes it anew. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import manifest from '../../package.json';
import english from '../../package.nls.json';

const PAGE = new URL('../../docs/settings.md', import.meta.url);
const words: Readonly<Record<string, string>> = english;

interface Setting {
  readonly default: unknown;
  readonly enum?: readonly unknown[];
  readonly enumDescriptions?: readonly string[];
  readonly items?: Setting;
  readonly markdownDescription?: string;
}

const said = (key: string | undefined): string => words[key?.replaceAll('%', '') ?? ''] ?? '';

function page(): string {
  const settings = Object.entries(manifest.contributes.configuration.properties) as unknown as [string, Setting][];
  return [
    '# Settings of the editor',
    `Set them for a window, or for one workspace or folder. Where a \`lentil.config.json\` lies beside a file or above it, that file decides the tolerance set, the guard and the share of the limit, as it does for the command, and those three settings are not looked at.`,
    ...settings.map(section),
  ]
    .join('\n\n')
    .concat('\n');
}

function section([name, setting]: [string, Setting]): string {
  const { enum: choices, enumDescriptions } = setting.items ?? setting;
  const listed = choices?.map((choice, at) => `- \`${JSON.stringify(choice)}\`: ${said(enumDescriptions?.[at])}`) ?? [];
  const parts = [
    `## \`${name}\``,
    said(setting.markdownDescription),
    `Default: \`${JSON.stringify(setting.default)}\``,
    listed.join('\n'),
  ];
  return parts.filter(Boolean).join('\n\n');
}

if (process.env.UPDATE_PAGES) writeFileSync(PAGE, page());

test('the page of the settings is that of the manifest', () => {
  expect(readFileSync(PAGE, 'utf8')).toBe(page());
});

test('every setting is described, and so is every choice', () => {
  expect(page()).not.toMatch(/: $/m);
  expect(page()).not.toContain('%');
});
