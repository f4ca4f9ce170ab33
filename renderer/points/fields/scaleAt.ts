import { findReading, type AdjusterDocument, type AxleName, type CarDocument } from '../../../geometry/index';
import { scaleOf } from '../../compute/adjusterSteps';
import type { ShownUnits } from '../../units/unitChoice';
import { fieldScale, readingScale, type FieldScale } from './fieldScale';
import type { FieldUnit } from './fieldWords';
import type { FormHost } from './formHost';
import type { FieldPath } from './pathValue';

const AXLES: readonly AxleName[] = ['front', 'rear'];
const UNIT_OF_SETTING = { length: 'length', clock: '°', turns: 'turns' } as const;

const adjusterNamed = (document: CarDocument, axle: AxleName | undefined, name: unknown): AdjusterDocument | undefined =>
  typeof name !== 'string'
    ? undefined
    : AXLES.filter((one) => axle === undefined || one === axle)
        .map((one) => document[one]?.adjusters?.[name])
        .find((adjuster) => adjuster !== undefined);

/** Toe of one axle is read at that axle's wheels; of both, or of an axle whose file gives no diameter, it is an angle. */
const unitsOfAxle = (host: FormHost, axle: AxleName | undefined, units: ShownUnits): ShownUnits => {
  const diameter = axle === undefined ? undefined : host.document[axle]?.wheel.toeDiameter;
  return { ...units, toeDiameter: diameter === undefined ? null : diameter * host.mm };
};

/**
 * How the numbers of the field at a path stand in it: those of a limit or a tolerance are in the unit of the reading or the setting
 * that they are of, which stands beside them.
 * @param unit - what numbers of the field are measured in, where the field alone says it
 */
export const scaleAt = (host: FormHost, path: FieldPath, unit: FieldUnit, units: ShownUnits): FieldScale => {
  const [holder, of, key] = [path[0], path[1], path.at(-1)];
  if (holder === 'tolerances' && path.length === 3) {
    const entry = findReading(String(of));
    if (entry) return readingScale(entry, host.mm, unitsOfAxle(host, undefined, units));
  }
  if (holder === 'limits' && (key === 'min' || key === 'max')) {
    const limit = path.slice(0, -1);
    const axle = host.read([...limit, 'axle']) as AxleName | undefined;
    const only = AXLES.filter((one) => host.document[one]);
    const ofAxle = axle ?? (only.length === 1 ? only[0] : undefined);
    const entry = findReading(String(host.read([...limit, 'reading'])));
    if (entry) return readingScale(entry, host.mm, unitsOfAxle(host, ofAxle, units));
    const adjuster = adjusterNamed(host.document, axle, host.read([...limit, 'setting']));
    if (adjuster) return fieldScale(UNIT_OF_SETTING[scaleOf(adjuster).measure], host.mm, units);
  }
  return fieldScale(unit, host.mm, units);
};
