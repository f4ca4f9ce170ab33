import { expect, test } from 'vitest';
import { assembleCar, readingsOfCar, toMechanism, withSetting, type AxleName, type SetupDocument } from '../../../geometry/index';
import { SAMPLES } from '../../samples/samples';

const WANTED: readonly number[] = [0.05, -0.2];

const cases = SAMPLES.flatMap(({ name, document }) =>
  (['front', 'rear'] as const).flatMap((axle) => {
    const toe = document[axle]?.toeAdjuster;
    const isTurned = toe !== undefined && document[axle]?.adjusters?.[toe]?.kind === 'turnbuckle';
    return isTurned
      ? Object.keys(document.setups ?? {}).flatMap((setup) =>
          WANTED.map((wanted) => ({ title: `${name}, ${axle}, ${setup}, toe ${wanted}`, document, axle, toe, setup, wanted })),
        )
      : [];
  }),
);

test('there are struts and rods among them', () => {
  const layouts = new Set(cases.map(({ document, axle }) => document[axle]?.layout));
  expect([...layouts].sort()).toEqual(['multi-link', 'strut']);
});

test.each(cases)('a rod that was turned until the toe is there is as one that was set so: $title', (given) => {
  const { document, axle, toe, setup, wanted } = given;
  const mechanism = toMechanism(document);
  const kept: SetupDocument = document.setups?.[setup] ?? {};
  const { setToe: _, ...others } = kept[axle] ?? {};
  const reset = assembleCar(mechanism, { ...kept, [axle]: { ...others, setToe: wanted } });
  if (!reset.ok) throw new Error(reset.failure.message);
  const found = reset.value[axle as AxleName]?.toeReset;
  if (!found) throw new Error('the toe was reset');
  const typed = withSetting(
    withSetting({ ...kept, [axle]: others }, axle, toe, 'left', found.left),
    axle,
    toe,
    'right',
    found.right,
  );
  const set = assembleCar(mechanism, typed);
  if (!set.ok) throw new Error(set.failure.message);
  // the rods themselves too: lengths are read from them, not from the pose
  for (const side of ['left', 'right'] as const)
    expect(reset.value[axle as AxleName]?.[side].corner.linkage).toEqual(set.value[axle as AxleName]?.[side].corner.linkage);
  for (const position of [{ travel: 0 }, { travel: 25, roll: 0.01 }]) {
    const withoutReset = (rows: ReturnType<typeof readingsOfCar>): unknown =>
      JSON.parse(JSON.stringify(rows), (key, value: unknown) => (key === 'toeReset' || key === 'limits' ? null : value));
    expect(withoutReset(readingsOfCar(reset.value, position))).toEqual(withoutReset(readingsOfCar(set.value, position)));
  }
});
