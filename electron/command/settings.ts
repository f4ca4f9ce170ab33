import { suggest, type AxleDocument, type AxleName, type CarDocument, type SetupDocument } from '../../geometry/index';
import { clockFromHours, parseHours } from './clock';
import { usageError } from './commandError';
import { parseNumber, type Setting } from './options';

/** A setup that is being changed. */
interface AxleDraft {
  both?: Record<string, number | null>;
  left?: Record<string, number | null>;
  right?: Record<string, number | null>;
  wheel?: Record<string, unknown>;
  barHole?: string | { left?: string; right?: string };
  [key: string]: unknown;
}

const AXLES: readonly string[] = ['front', 'rear'];
const SIDES = ['both', 'left', 'right'] as const;
type Side = (typeof SIDES)[number];
const HAS_CLOCK: readonly string[] = ['offset-bushing', 'clamp-eccentric', 'eccentric-bolt'];
/** What a setup holds of an axle besides adjusters, as a single number in the file's unit. */
const NUMBERS_OF_AXLE: readonly string[] = ['setToe', 'rideHeight', 'springRate', 'barRate'];

/**
 * A setup changed by `--set`: `both` removes that adjuster's left and right entries first, `none` fits a concentric bushing or
 * zero, and takes out what is not an adjuster. Values are in the file's unit.
 *
 * @throws CommandError of kind usage for a name that the car has not, with the nearest that it has
 */
export function applySettings(car: CarDocument, setup: SetupDocument, settings: readonly Setting[]): SetupDocument {
  const draft = structuredClone(setup) as SetupDocument & Record<AxleName, AxleDraft | undefined>;
  for (const setting of settings) applySetting(car, draft, setting);
  for (const axle of AXLES as readonly AxleName[]) checkHoles(draft[axle], axle);
  return draft;
}

function applySetting(car: CarDocument, draft: Record<AxleName, AxleDraft | undefined>, setting: Setting): void {
  const wrong = (reason: string): never => {
    throw usageError(`set ${setting.name}: ${reason}`);
  };
  const [axleName = '', ...path] = setting.name.split('.');
  if (!AXLES.includes(axleName)) wrong(nearest(axleName, AXLES, 'an axle'));
  const axle = axleName as AxleName;
  const document = car[axle];
  if (!document) return wrong(`this car has no ${axle} axle`);
  const target = (draft[axle] ??= {});
  const value = typeof setting.value === 'string' && setting.value === 'none' ? null : setting.value;
  const [first = '', second, ...more] = path;

  if (more.length === 0 && second !== undefined && isSide(first)) {
    if (second === 'barHole') setHole(target, first, value, wrong);
    else setAdjuster(target, first, second, settingOf(document, second, value, wrong));
    return;
  }
  if (more.length === 0 && second !== undefined && first === 'wheel') {
    target.wheel = withKey(target.wheel, second, value === null ? undefined : numberOf(value, wrong));
    return;
  }
  if (second !== undefined) return wrong(nearest(first, [...SIDES, 'wheel'], 'a side'));
  if (first === 'barHole') return setHole(target, 'both', value, wrong);
  if (NUMBERS_OF_AXLE.includes(first)) {
    if (value === null) delete target[first];
    else target[first] = numberOf(value, wrong);
    return;
  }
  if (document.adjusters && Object.hasOwn(document.adjusters, first))
    wrong(`say which side: ${axle}.both.${first}, left or right`);
  wrong(`${nearest(first, [...NUMBERS_OF_AXLE, 'barHole', ...SIDES], 'a name')}; an adjuster is named ${axle}.both.NAME`);
}

const isSide = (name: string): name is Side => (SIDES as readonly string[]).includes(name);

function nearest(given: string, known: readonly string[], what: string): string {
  const hint = suggest(given, known);
  return `"${given}" is not ${what}${hint ? `; ${hint}` : ` (${known.join(', ')})`}`;
}

/** What the number of an adjuster becomes; null for a concentric bushing or zero. */
function settingOf(
  axle: AxleDocument,
  name: string,
  value: number | string | null,
  wrong: (reason: string) => never,
): { readonly adjuster: string; readonly value: number | null } {
  const adjusters = axle.adjusters ?? {};
  const adjuster = Object.hasOwn(adjusters, name) ? adjusters[name] : undefined;
  if (!adjuster) {
    const known = Object.keys(adjusters);
    return wrong(known.length === 0 ? 'this axle has no adjusters' : nearest(name, known, 'an adjuster of this axle'));
  }
  const hours = typeof value === 'string' ? parseHours(value) : null;
  if (hours === null)
    return { adjuster: name, value: value === null ? null : numberOf(value, wrong, HAS_CLOCK.includes(adjuster.kind)) };
  const clock = clockFromHours(adjuster, hours);
  return clock.ok ? { adjuster: name, value: clock.degrees } : wrong(clock.reason);
}

function numberOf(value: number | string, wrong: (reason: string) => never, hasClock = false): number {
  const number = typeof value === 'number' ? value : parseNumber(value);
  return number !== null && Number.isFinite(number)
    ? number
    : wrong(`"${value}" is not a number${hasClock ? ', a clock time like 3h' : ''} or none`);
}

function setAdjuster(target: AxleDraft, side: Side, name: string, setting: { readonly value: number | null }): void {
  if (side === 'both') {
    if (target.left) target.left = withKey(target.left, name, undefined);
    if (target.right) target.right = withKey(target.right, name, undefined);
  }
  target[side] = withKey(target[side], name, setting.value);
}

/** The object with one key set, or taken out when the value is undefined. Own keys only, whatever their name. */
function withKey<Value>(object: Record<string, Value> | undefined, key: string, value: Value | undefined): Record<string, Value> {
  const entries = Object.entries(object ?? {}).filter(([name]) => name !== key);
  if (value !== undefined) entries.push([key, value]);
  return Object.fromEntries(entries);
}

function setHole(target: AxleDraft, side: Side, value: number | string | null, wrong: (reason: string) => never): void {
  if (value !== null && typeof value !== 'string') return wrong(`${value} is not the name of a hole`);
  if (side === 'both') {
    if (value === null) delete target.barHole;
    else target.barHole = value;
    return;
  }
  if (value === null) return wrong('a bar without a hole on one side only cannot be said; name the hole');
  const before = target.barHole;
  target.barHole = { ...(typeof before === 'string' ? { left: before, right: before } : before), [side]: value };
}

function checkHoles(target: AxleDraft | undefined, axle: AxleName): void {
  const hole = target?.barHole;
  if (typeof hole !== 'object') return;
  for (const side of ['left', 'right'] as const)
    if (hole[side] === undefined)
      throw usageError(`set ${axle}.barHole: the ${side} side needs a hole too: set ${axle}.${side}.barHole`);
}
