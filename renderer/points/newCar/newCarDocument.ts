import type { AxleDocument, AxleName, CarDocument, Triple } from '../../../geometry/index';
import type { LayoutName, NewCarChoice } from '../../state/begunCar';
import { TYPICAL_AXLES, TYPICAL_RADIUS } from './typicalAxles';

export const FIRST_CHOICE: NewCarChoice = {
  name: 'New car',
  unit: 'mm',
  front: 'strut',
  rear: 'trailingArm',
  wheelbase: 2640,
  frontTrack: 1552,
  rearTrack: 1532,
  loadedRadius: TYPICAL_RADIUS,
};

const MM_PER_INCH = 25.4;

/** A typical axle with its wheel where it belongs: widths in the track's proportion, heights moved with the radius. */
const axleOf = (layout: LayoutName, axle: AxleName, choice: NewCarChoice): AxleDocument => {
  const typical = TYPICAL_AXLES[layout];
  const track = axle === 'front' ? choice.frontTrack : choice.rearTrack;
  const wheel = typical.points['wheelCentre'] ?? [0, 1, 0];
  const wider = track / 2 / wheel[1];
  const per = choice.unit === 'in' ? MM_PER_INCH : 1;
  const inUnit = (mm: number): number => Number((mm / per).toFixed(choice.unit === 'in' ? 3 : 1));
  const place = ([x, y, z]: Triple): Triple => [
    inUnit(x - (axle === 'rear' ? choice.wheelbase : 0)),
    inUnit(y * wider),
    inUnit(z + choice.loadedRadius - TYPICAL_RADIUS),
  ];
  const points = Object.fromEntries(Object.entries(typical.points).map(([name, at]) => [name, place(at)]));
  const { rods, trailingArm } = typical;
  const steering = { axis: [0, 1, 0] as const, travel: inUnit(65), perTurn: inUnit(50) };
  return {
    layout: typical.layout,
    points,
    ...(rods ? { rods } : {}),
    ...(trailingArm ? { trailingArm } : {}),
    wheel: { camber: 0, toe: 0, loadedRadius: inUnit(choice.loadedRadius) },
    ...(axle === 'front' ? { steering: { ...steering, ...(rods ? { rod: typical.steered } : {}) } } : {}),
    ...(typical.spring ? { spring: typical.spring } : {}),
    travel: [inUnit(-60), inUnit(60)],
  };
};

/** How many points a layout asks to be measured. */
export const countOfPoints = (layout: LayoutName): number => Object.keys(TYPICAL_AXLES[layout].points).length;

/**
 * A new car of these layouts, standing on typical points that are to be written over.
 * @returns the document; it is judged like any file when it is opened
 */
export const newCarDocument = (choice: NewCarChoice): CarDocument => ({
  format: 'jounce-car',
  version: 1,
  name: choice.name,
  units: { length: choice.unit },
  ...(choice.front ? { front: axleOf(choice.front, 'front', choice) } : {}),
  ...(choice.rear ? { rear: axleOf(choice.rear, 'rear', choice) } : {}),
  setups: { Baseline: {} },
});
