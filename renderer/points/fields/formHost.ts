import { createContext, useContext } from 'react';
import type { AxleDocument, AxleName, CarDocument, Triple } from '../../../geometry/index';
import { setupNames } from '../../../geometry/index';
import { marginKinds } from './noteAt';
import type { FieldPath } from './pathValue';

/** What the fields of a form read and write: the open car, or a part that is being made. */
export interface FormHost {
  readonly read: (path: FieldPath) => unknown;
  /**
   * @param typed - the value as it was typed, with its unit; left out where it was not typed
   * @returns null where the value was taken, else why it was not, in one sentence
   */
  readonly write: (path: FieldPath, value: unknown, what: string, typed?: string) => string | null;
  /**
   * Gives the part at a path another name, and tells it to everything that names it.
   * @returns null where it has the name now, else why not, in one sentence
   */
  readonly rename: (path: FieldPath, to: string) => string | null;
  /** what the last judgement says of this field; null where nothing */
  readonly faultAt: (path: FieldPath) => string | null;
  /** what is written is the car's at once, and an undo of the car's */
  readonly isOfCar: boolean;
  /** mm in one unit of the file */
  readonly mm: number;
  readonly document: CarDocument;
  /** the axle that the fields are of; null for those of the whole car */
  readonly axle: AxleName | null;
  /** brackets a drag in the view, so that it is one undo step; one that was given up leaves nothing */
  readonly drag: (phase: 'begin' | 'end' | 'abandon') => void;
  /** what of a part that is being made is typed and not taken yet, and parts inside of it that are being made too; kept with it */
  readonly inside?: Shelf;
}

/** Keeps what belongs to a place and what it is: "text", "part". Nothing is there before it is written. */
export interface Shelf {
  readonly read: (what: string, path: FieldPath) => unknown;
  readonly write: (what: string, path: FieldPath, next: (now: unknown) => unknown) => void;
}

export const FormContext = createContext<FormHost | null>(null);

export const useForm = (): FormHost => {
  const host = useContext(FormContext);
  if (!host) throw new Error('A field was drawn outside a form.');
  return host;
};

const POINT_KEYS = ['moves', 'pivot', 'bolt', 'upper', 'lower'];
const DIRECTION_KEYS = ['along', 'slot', 'axis', 'twelve'];

const isInAdjuster = (path: FieldPath): boolean => path.includes('adjusters');

/** Whether a field is the name of a point, which can be picked in the view. */
export const isPointField = (path: FieldPath, value: unknown): boolean =>
  POINT_KEYS.includes(String(path.at(-1))) && typeof value !== 'object' && path.length > 2;

/** Whether a field is the name of a rod, which is picked in the view by one of its ends. */
export const isRodField = (path: FieldPath): boolean => path.at(-1) === 'rod' && isInAdjuster(path);

const STRUT_RODS: Readonly<Record<string, readonly [string, string]>> = {
  armFront: ['armFront', 'ballJoint'],
  armRear: ['armRear', 'ballJoint'],
  tieRod: ['rackEnd', 'tieRodEnd'],
};

/** The rods that end at a point. */
export const rodsAt = (axle: AxleDocument | undefined, point: string): readonly string[] =>
  Object.entries((axle?.layout === 'strut' ? STRUT_RODS : axle?.rods) ?? {}).flatMap(([rod, ends]) =>
    ends.includes(point) ? [rod] : [],
  );

/** The point that a direction is aimed from; null where the field is no direction of an adjuster, or its point is not there yet. */
export const aimedFrom = (host: FormHost, path: FieldPath): string | null => {
  if (!isInAdjuster(path) || !DIRECTION_KEYS.includes(String(path.at(-1)))) return null;
  const adjuster = path.slice(0, -1);
  const named = host.read([...adjuster, 'moves']) ?? host.read([...adjuster, 'pivot']);
  const points = host.axle === null ? undefined : host.document[host.axle]?.points;
  return typeof named === 'string' && points?.[named] ? named : null;
};

/** A direction to begin aiming with, where none was typed. */
export const firstDirection = (value: unknown): Triple =>
  Array.isArray(value) && value.length === 3 ? (value as unknown as Triple) : [0, 0, 1];

const fitUpNames = (document: CarDocument, path: FieldPath): readonly string[] => {
  const [holder, last] = [path[0], String(path.at(-1))];
  const axles = [document.front, document.rear];
  if (last === 'rod') return axles.flatMap((axle) => Object.keys((axle?.layout === 'strut' ? STRUT_RODS : axle?.rods) ?? {}));
  const isPoint = holder === 'joints' ? last === 'key' : last === 'from' || last === 'to';
  return isPoint && path.length === 3 ? axles.flatMap((axle) => Object.keys(axle?.points ?? {})) : [];
};

/** Names that a field may hold, to choose from while typing; none where anything can be typed. */
export const namesFor = (host: FormHost, path: FieldPath): readonly string[] => {
  const axle = host.axle === null ? undefined : host.document[host.axle];
  const points = Object.keys(axle?.points ?? {});
  const rods = axle?.layout === 'strut' ? ['armFront', 'armRear', 'tieRod'] : Object.keys(axle?.rods ?? {});
  const adjusters = Object.keys(axle?.adjusters ?? {});
  const [last, before] = [String(path.at(-1)), String(path.at(-2))];
  if (path[0] === 'parts' || path[0] === 'joints' || path[0] === 'spans') return fitUpNames(host.document, path);
  if (before === 'rods') return points;
  if (POINT_KEYS.includes(last)) return points;
  if (last === 'rod') return before === 'steering' ? rods : [...rods, 'barLink'];
  if (last === 'toeAdjuster') return adjusters;
  if (last === 'onCar') return setupNames(host.document);
  if (path[0] === 'margins' && last === 'key') return marginKinds(host);
  return [];
};
