import { describe, expect, test } from 'vitest';
import { PANELS } from '../../../renderer/points/CarPanels';
import { buildFieldTree } from '../../../renderer/points/fields/fieldTree';

const tree = buildFieldTree();
const keysOf = (owner: 'axle' | 'car', names: readonly (keyof typeof PANELS)[]) =>
  tree[owner].map(({ key }) => [key, names.filter((name) => PANELS[name][owner](key)).length] as const);

describe('every field has a panel', () => {
  test.each(['axle', 'car'] as const)('of the %s, in just one step on the way to a new car', (owner) => {
    expect(keysOf(owner, ['wheel', 'spring', 'adjusters', 'limits']).filter(([, count]) => count !== 1)).toEqual([]);
  });
  test.each(['axle', 'car'] as const)('of the %s, among the tabs of an open car', (owner) => {
    expect(keysOf(owner, ['axle', 'adjusters', 'car']).filter(([, count]) => count === 0)).toEqual([]);
  });
});
