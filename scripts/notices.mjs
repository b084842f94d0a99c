import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './project.mjs';

/**
 * Writes the licences of every package whose code went into a bundle, since the bundles leave their comments out.
 * @param {readonly { inputs: Record<string, unknown> }[]} metafiles what the bundler says it has read
 */
export function writeNotices(metafiles) {
  const folders = new Set(metafiles.flatMap(({ inputs }) => Object.keys(inputs).map(packageFolder).filter(Boolean)));
  const notices = [...folders].sort().map(notice);
  const head = 'Lentil contains code of the packages below. Their licences follow.\n';
  writeFileSync(join(root, 'dist', 'THIRD-PARTY-NOTICES.txt'), [head, ...notices].join(`\n${'-'.repeat(78)}\n\n`));
  return folders.size;
}

/** `node_modules/@scope/name/lib/x.js` lies in `node_modules/@scope/name`, nested packages in the last such folder. */
function packageFolder(path) {
  return path.match(/^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//)?.[1];
}

function notice(folder) {
  const { name, version, license, author } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
  if (typeof license !== 'string') throw new Error(`${folder} does not name its licence`);
  const by = typeof author === 'string' ? author : author?.name;
  const files = readdirSync(join(root, folder)).filter((file) =>
    /^(licen[cs]e|notice|copying|thirdpartynotices)/i.test(file),
  );
  const texts = files.map((file) => readFileSync(join(root, folder, file), 'utf8').trim());
  return `${name} ${version}\nLicence: ${license}${by ? `\nAuthor: ${by.replace(/\s*[<(].*$/, '')}` : ''}\n\n${texts.join('\n\n')}\n`;
}
