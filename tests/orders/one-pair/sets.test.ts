import { expect, test } from 'vitest';
import { toleranceSets } from '../../../orders';
import { MOUNTED } from '../support/pair-model/trial';

test('every set for glazed pairs is tried', () => {
  const glazed = toleranceSets.filter(({ scope }) => scope.includes('glazed')).map(({ id }) => id);
  expect([...MOUNTED].sort()).toEqual([...glazed].sort());
});
