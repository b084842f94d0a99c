import { expect, test } from 'vitest';
import { type CheckJson, toJson } from '../../exchange';
import { analysisOf, examplePaths } from '../exchange/support/examples';
import { lentil } from './support/command';

const { files } = JSON.parse(lentil(['check', '--format', 'json', 'examples']).stdout) as CheckJson;

test('the command reads the files that are there', () => {
  // The command goes folder by folder; the list is sorted as a whole.
  expect(files.map(({ path }) => path).sort()).toEqual([...examplePaths].sort());
});

test.each(examplePaths)('library and command say the same about %s', (path) => {
  const file = files.find((one) => one.path === path);
  expect(file).toEqual(JSON.parse(JSON.stringify(toJson(analysisOf(path), path))));
});
