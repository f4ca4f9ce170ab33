import { expect, inject, test } from 'vitest';
import './buildWindow';
import { total, weighFirstLoad, weightTable } from './firstLoad';

/** kB of script and style after gzip, fonts left out: what a person waits for on a slow machine. */
const BENCH_AT_MOST = 620;
const PAINTS_AT_MOST = 260;

test('the first load of the bench stays light, and the picture is a chunk of its own', async () => {
  const { paints, picture, later } = await weighFirstLoad(inject('windowFolder'));
  console.log(
    [weightTable('before the picture', paints), weightTable('with the picture', picture), weightTable('on use', later)].join(
      '\n',
    ),
  );
  expect(total(picture)).toBeGreaterThan(100);
  expect(total(paints)).toBeLessThanOrEqual(PAINTS_AT_MOST);
  expect(total(paints) + total(picture)).toBeLessThanOrEqual(BENCH_AT_MOST);
});
