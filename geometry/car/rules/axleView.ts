import type { AxleName, SideName } from '../document';
import { mirror, type Vector } from '../../core/vector';
import { at, entriesOf, namesOf, textOf, vectorOf, type Place } from '../place';
import { MM_PER_INCH, STRUT_RODS } from '../toMechanism';

export const AXLES = ['front', 'rear'] as const;
export const SIDES = ['left', 'right'] as const;

/** Point names of a strut, by what carries them. */
export const STRUT_BODY_POINTS = ['armFront', 'armRear', 'strutTop', 'rackEnd'] as const;
export const STRUT_KNUCKLE_POINTS = ['ballJoint', 'tieRodEnd', 'wheelCentre'] as const;
export const STRUT_FOOT = 'strutFoot';
export const STRUT_CLAMP_POINTS = ['clampUpper', 'clampLower'] as const;
export const STRUT_REQUIRED_POINTS = [
  'armFront',
  'armRear',
  'ballJoint',
  'strutTop',
  STRUT_FOOT,
  'rackEnd',
  'tieRodEnd',
  'wheelCentre',
] as const;

/** Both ends of a rod by name, as far as the file gives them. */
export interface RodView {
  readonly name: string;
  readonly place: Place;
  readonly inner: string | undefined;
  readonly outer: string | undefined;
}

/** One axle as rules look at it: everything may be missing or broken. */
export interface AxleView {
  readonly axle: AxleName;
  readonly place: Place;
  readonly layout: 'strut' | 'multi-link' | undefined;
  readonly mmPerUnit: number;
  /** Points that are there. */
  readonly pointNames: readonly string[];
  /** Points that may be named: those that are there and, on a strut, those that have to be. */
  readonly knownPoints: readonly string[];
  readonly rods: readonly RodView[];
  readonly rodNames: readonly string[];
  readonly adjusterNames: readonly string[];
  readonly pivot: string | undefined;
  /** The point of one side in the car frame: its own, or the mirror image of the left one. */
  readonly pointOf: (name: string, side: SideName) => Vector | undefined;
  readonly placeOf: (name: string, side: SideName) => Place;
}

export function viewAxle(car: Place, axle: AxleName): AxleView {
  const place = at(car, axle);
  const layoutText = textOf(at(place, 'layout'));
  const layout = layoutText === 'strut' || layoutText === 'multi-link' ? layoutText : undefined;
  const points = at(place, 'points');
  const pointNames = namesOf(points);
  const rightPoints = at(place, 'right', 'points');
  const rods = layout === 'strut' ? strutRods(place) : ownRods(place);
  const rightOf = (name: string): Vector | undefined => {
    const own = at(rightPoints, name);
    if (own.value !== undefined) return vectorOf(own);
    const left = vectorOf(at(points, name));
    return left === undefined ? undefined : mirror(left);
  };
  return {
    axle,
    place,
    layout,
    mmPerUnit: textOf(at(car, 'units', 'length')) === 'in' ? MM_PER_INCH : 1,
    pointNames,
    knownPoints: layout === 'strut' ? [...new Set<string>([...STRUT_REQUIRED_POINTS, ...pointNames])] : pointNames,
    rods,
    rodNames: rods.map((rod) => rod.name),
    adjusterNames: namesOf(at(place, 'adjusters')),
    pivot: textOf(at(place, 'trailingArm', 'pivot')),
    pointOf: (name, side) => (side === 'left' ? vectorOf(at(points, name)) : rightOf(name)),
    placeOf: (name, side) =>
      side === 'right' && at(rightPoints, name).value !== undefined ? at(rightPoints, name) : at(points, name),
  };
}

const strutRods = (place: Place): RodView[] =>
  STRUT_RODS.map(({ name, inner, outer }) => ({ name, inner, outer, place: at(place, 'points', outer) }));

function ownRods(axle: Place): RodView[] {
  return entriesOf(at(axle, 'rods')).map(([name, place]) => {
    const ends: readonly unknown[] = Array.isArray(place.value) ? place.value : [];
    const [inner, outer] = ends;
    return {
      name,
      place,
      inner: typeof inner === 'string' ? inner : undefined,
      outer: typeof outer === 'string' ? outer : undefined,
    };
  });
}

/** The body that carries a point of the linkage; undefined for one that is no part of it. */
export function carrierOfPoint(view: AxleView, point: string): 'body' | 'knuckle' | undefined {
  if (view.layout === 'strut') {
    if ((STRUT_BODY_POINTS as readonly string[]).includes(point)) return 'body';
    return (STRUT_KNUCKLE_POINTS as readonly string[]).includes(point) ? 'knuckle' : undefined;
  }
  if (point === 'wheelCentre' || view.rods.some((rod) => rod.outer === point)) return 'knuckle';
  return point === view.pivot || view.rods.some((rod) => rod.inner === point) ? 'body' : undefined;
}

/** Whether the point is the end of a rod, an arm or a trailing arm: a place whose centre can move inside it. */
export function isLinkEnd(view: AxleView, point: string): boolean {
  return point === view.pivot || view.rods.some((rod) => rod.inner === point || rod.outer === point);
}

/** What can carry the lower end of a spring or damper, or the bar's link. */
export function carriersOf(view: AxleView): readonly string[] {
  if (view.layout === 'strut') return ['strut', 'knuckle', 'arm', ...view.rodNames];
  return ['knuckle', ...(view.pivot === undefined ? [] : ['trailingArm']), ...view.rodNames];
}
