import { expect, test } from 'vitest';
import { designPoints, type CarDocument, type KeepOut, type SideName } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import { askedSetups, keepOutOrder, meshesOfCar } from '../../../renderer/fitup/fitUpQuestion';
import { templateName } from '../../../renderer/fitup/keepOut/keepOutNames';
import {
  axisOf,
  planeNumbers,
  planePoints,
  sideOfPlane,
  TEMPLATE_BEGIN,
  templateOrder,
  type PlaneWay,
} from '../../../renderer/fitup/keepOut/templateAsked';
import { planeRead } from '../../../renderer/fitup/keepOut/templateWords';
import { sample } from '../../geometry/fitup/loadedCars';

const hatch = sample('saltmarsh-hatch');
const { front } = hatch;
if (!front) throw new Error('the sample has no front axle');
/** The right-hand tie rod ends elsewhere. */
const unlike = {
  ...hatch,
  front: { ...front, right: { points: { tieRodEnd: [-120, -693, 254], wheelCentre: [2, -780, 312] } } },
} as unknown as CarDocument;
const DISC = { of: ['disc'], grow: 0, bound: 8 } as const;

const sweptBy = (sides: 'both' | SideName): KeepOut => {
  const order = keepOutOrder(unlike, 'front', sides, askedSetups(unlike, []).slice(0, 1), DISC, meshesOfCar(unlike).meshes);
  const made = answerFitUp(order, searchMesh);
  if (!made.ok || !('mesh' in made.value)) throw new Error('nothing is swept');
  return made.value;
};

test('a template of the right side alone goes through its own points; form, sheet and file name say one plane', () => {
  const made = sweptBy('right');
  const sides = ['right'] as const;
  const places = planePoints(unlike, 'front', sideOfPlane(sides));
  const own = designPoints(unlike, 'front', 'right');
  const centre = places['wheelCentre'] ?? [0, 0, 0];
  const planes: readonly (readonly [PlaneWay, string, string])[] = [
    ['front', 'tieRodEnd', 'seen from the front'],
    ['side', 'wheelCentre', 'seen from the right'],
    ['top', 'tieRodEnd', 'seen from above'],
  ];
  for (const [way, through, read] of planes) {
    const asked = { ...TEMPLATE_BEGIN, way, at: places[through]?.[axisOf(way)] ?? null };
    const numbers = planeNumbers(asked, centre);
    const result = answerFitUp(
      templateOrder(unlike, made, '["Baseline"]', 'front', 'right', JSON.stringify(numbers), 'A4'),
      searchMesh,
    );
    const [one] = result.ok ? result.value : [];
    expect(planeRead(asked, centre, sides)).toBe(read);
    const where = own[through]?.[axisOf(way)];
    expect(templateName('Car', { axles: ['front'], sides, of: ['disc'] }, asked, numbers)).toBe(
      `Car template disc front right ${'xyz'[axisOf(way)]} ${where}`,
    );
    if (!one || !('drawing' in one)) throw new Error('no section');
    expect(one.drawing.seen).toBe(read);
    expect(one.drawing.points.find(({ name }) => name === through)?.off).toBeCloseTo(0, 9);
  }
});

test('with both sides the plane is that of the left', () => {
  expect(sideOfPlane(['left', 'right'])).toBe('left');
  expect(sideOfPlane(['left'])).toBe('left');
  expect(planePoints(unlike, 'front', 'left')).toEqual(designPoints(unlike, 'front', 'left'));
  const asked = { ...TEMPLATE_BEGIN, way: 'side' } as const;
  expect(planeRead(asked, [0, 776, 310], ['left', 'right'])).toBe(
    'seen from the left, given for the left, mirrored to the right',
  );
  expect(planeRead(asked, [0, 776, 310], ['left'])).toBe('seen from the left');
  expect(planeRead({ ...TEMPLATE_BEGIN, way: 'own' }, [0, 776, 310], ['right'])).toBe('seen from the front, y counted outboard');
});
