import type {
  AxleDocument,
  AxleRow,
  CarDocument,
  Position,
  SetupAxleDocument,
  Triple,
  WheelDocument,
} from '../../geometry/index';
import { setupNames } from '../../geometry/index';

const mirror = ([x, y, z]: Triple): Triple => [x, -y, z];

/**
 * The mirror image of a car in its middle plane: what was its right is its left now.
 *
 * Directions of adjusters and bar are given for the left and mirrored on the right, so they stay. The rack's axis belongs to
 * the car: it is turned so that + rack still moves the rods to the left, and the rack then counts the other way.
 */
export function mirroredCar(car: CarDocument): CarDocument {
  const setups = setupNames(car).map((name) => {
    const setup = car.setups![name];
    const axles = (['front', 'rear'] as const).flatMap((axle) =>
      setup[axle] ? [[axle, mirroredSetup(setup[axle])] as const] : [],
    );
    return [name, { ...setup, ...Object.fromEntries(axles) }] as const;
  });
  const { leftShare } = car.body ?? {};
  return {
    ...car,
    ...(car.body && { body: { ...car.body, ...(leftShare !== undefined && { leftShare: 1 - leftShare }) } }),
    ...(car.masses && { masses: car.masses.map((mass) => ({ ...mass, at: mirror(mass.at) })) }),
    ...(car.front && { front: mirroredAxle(car.front) }),
    ...(car.rear && { rear: mirroredAxle(car.rear) }),
    setups: Object.fromEntries(setups),
  };
}

function mirroredAxle(axle: AxleDocument): AxleDocument {
  const { right, steering } = axle;
  const own = right?.points ?? {};
  const ownWheel: Partial<WheelDocument> = right?.wheel ?? {};
  const points = Object.fromEntries(Object.entries(axle.points).map(([name, at]) => [name, own[name] ? mirror(own[name]) : at]));
  const wasLeft = Object.fromEntries(Object.keys(own).map((name) => [name, mirror(axle.points[name])]));
  const wheelWasLeft = Object.fromEntries(Object.entries(axle.wheel).filter(([key]) => key in ownWheel));
  return {
    ...axle,
    points,
    wheel: { ...axle.wheel, ...ownWheel },
    ...(right && { right: { points: wasLeft, wheel: wheelWasLeft } }),
    ...(steering && { steering: { ...steering, axis: [-steering.axis[0], steering.axis[1], -steering.axis[2]] as const } }),
  };
}

function mirroredSetup(setup: SetupAxleDocument): SetupAxleDocument {
  const { left, right, barHole, ...rest } = setup;
  return {
    ...rest,
    ...(right && { left: right }),
    ...(left && { right: left }),
    ...(barHole !== undefined && {
      barHole: typeof barHole === 'string' ? barHole : { left: barHole.right, right: barHole.left },
    }),
  };
}

export function mirroredPosition({ travel, rack, roll }: Position): Position {
  return {
    ...(travel !== undefined && { travel: typeof travel === 'number' ? travel : { left: travel.right, right: travel.left } }),
    ...(rack !== undefined && { rack: negative(rack) }),
    ...(roll !== undefined && { roll: negative(roll) }),
  };
}

/** Adding 0 makes 0 of −0. */
const negative = (value: number): number => -value + 0;

/** The readings that a mirror image would show, made from those of the car itself. */
export function mirroredReadings(
  row: AxleRow,
): Pick<AxleRow, 'travel' | 'travelFromStanding' | 'rack' | 'roll' | 'left' | 'right' | 'both'> {
  const { travel, travelFromStanding: standing, both } = row;
  return {
    travel: { left: travel.right, right: travel.left },
    travelFromStanding: { left: standing.right, right: standing.left },
    rack: negative(row.rack),
    roll: negative(row.roll),
    left: mirroredCorner(row.right),
    right: mirroredCorner(row.left),
    both: { ...both, rollCentreOffset: both.rollCentreOffset === null ? null : negative(both.rollCentreOffset) },
  };
}

function mirroredCorner(corner: AxleRow['left']): AxleRow['left'] {
  const acrossPoint = ([x, y, z]: readonly [number, number, number]): readonly [number, number, number] => [x, negative(y), z];
  const centre = corner.frontViewInstantCentre;
  return {
    ...corner,
    steerAngle: negative(corner.steerAngle),
    wheelCentre: acrossPoint(corner.wheelCentre),
    contactCentre: acrossPoint(corner.contactCentre),
    frontViewInstantCentre: centre === null ? null : [negative(centre[0]), centre[1]],
  };
}
