import type { AxleName, CarDocument } from '../../../geometry/index';
import { faultOf, judgeEdit } from '../fields/judgeEdit';
import type { FieldPath } from '../fields/pathValue';
import { adjusterRenamed } from './adjusterRenamed';
import { holeRenamed } from './holeRenamed';
import { pointRenamed } from './pointRenamed';
import { rodRenamed } from './rodRenamed';

/** Parts of an axle that other places of the file call by their name. */
export type NamedPart = 'point' | 'rod' | 'adjuster' | 'hole';

export interface PartName {
  readonly part: NamedPart;
  readonly axle: AxleName;
  readonly name: string;
}

const isAxle = (step: unknown): step is AxleName => step === 'front' || step === 'rear';
const HOLDERS: Readonly<Record<string, NamedPart>> = { points: 'point', rods: 'rod', adjusters: 'adjuster' };

/** The part whose key stands at the end of a path: `front.rods.toe` is a rod; null for keys that nothing else names. */
export const partAt = (path: FieldPath): PartName | null => {
  const [axle, holder, name, ...rest] = path;
  const part = HOLDERS[String(holder)];
  return isAxle(axle) && part && typeof name === 'string' && rest.length === 0 ? { part, axle, name } : null;
};

/** The hole of a bar whose name is the value at a path; null for any other value. */
export const holeAt = (path: FieldPath, value: unknown): PartName | null => {
  const [axle, bar, holes, index, key] = path;
  const isName = bar === 'antiRollBar' && holes === 'holes' && typeof index === 'number' && key === 'name';
  return isAxle(axle) && isName && typeof value === 'string' ? { part: 'hole', axle, name: value } : null;
};

const namesOf = (document: CarDocument, { part, axle: name }: PartName): readonly string[] => {
  const axle = document[name];
  switch (part) {
    case 'point':
      return Object.keys(axle?.points ?? {});
    case 'rod':
      return Object.keys(axle?.rods ?? {});
    case 'adjuster':
      return Object.keys(axle?.adjusters ?? {});
    case 'hole':
      return (axle?.antiRollBar?.holes ?? []).map((hole) => hole.name);
  }
};

const changed = (document: CarDocument, { part, axle, name }: PartName, to: string): CarDocument => {
  switch (part) {
    case 'point':
      return pointRenamed(document, axle, name, to);
    case 'rod':
      return rodRenamed(document, axle, name, to);
    case 'adjuster':
      return adjusterRenamed(document, axle, name, to);
    case 'hole':
      return holeRenamed(document, axle, name, to);
  }
};

const NAME = /^[A-Za-z][A-Za-z0-9_-]{0,59}$/;

/** What a name in the file has to be; null where this one is. */
export const faultOfSpelling = (name: string): string | null =>
  NAME.test(name)
    ? null
    : `“${name}” cannot be a name in the file: begin with a letter A to Z; then letters, digits, “_” and “-”, at most 60.`;

/** The nearest name that can be had: "tie rod, left" becomes "tieRodLeft"; null where no letter is left to begin with. */
export const mendedName = (name: string): string | null => {
  const [first = '', ...rest] = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .split(/[^A-Za-z0-9_-]+/)
    .filter((word) => word !== '');
  const joined = first + rest.map((word) => word.charAt(0).toUpperCase() + word.slice(1)).join('');
  const mended = joined.replace(/^[^A-Za-z]+/, '').slice(0, 60);
  return NAME.test(mended) ? mended : null;
};
/** Words of the file for what carries a spring, a link or a part: a rod of that name could not be told from them. */
const CARRIERS = [
  ...['body', 'ground', 'wheel', 'hub', 'knuckle', 'strut', 'strutRod', 'arm', 'trailingArm', 'rack', 'spring'],
  ...['damperUpper', 'damperLower', 'bar', 'barLink', 'driveShaft'],
];
const STRUT_POINTS = [
  ...['armFront', 'armRear', 'ballJoint', 'strutTop', 'strutFoot', 'clampUpper', 'clampLower', 'rackEnd', 'tieRodEnd'],
  'wheelCentre',
];

/** Why a point keeps its name whatever is typed; null where it can have another. */
export const whyNameStays = (document: CarDocument, { part, axle, name }: PartName): string | null => {
  if (part !== 'point') return null;
  if (name === 'wheelCentre') return 'wheelCentre keeps its name: every layout knows the wheel by it.';
  const isStrut = document[axle]?.layout === 'strut' && STRUT_POINTS.includes(name);
  return isStrut ? `${name} keeps its name: a strut knows its points by their names.` : null;
};

const faultOfName = (document: CarDocument, from: PartName, to: string): string | null => {
  const { part, axle, name } = from;
  if (to === '') return `${name} needs a name; type one, or press Escape to keep it.`;
  const spelling = part === 'hole' ? null : faultOfSpelling(to);
  if (spelling !== null) return spelling;
  const stays = whyNameStays(document, from);
  if (stays !== null) return stays;
  if (namesOf(document, from).includes(to)) return `The ${axle} axle has a ${part} ${to} already: choose another name.`;
  if (part === 'rod' && CARRIERS.includes(to)) return `${to} is the file’s own word for a part of the car: choose another name.`;
  return part === 'point' ? surveyFault(document, axle, to) : null;
};

/** Reference points of a survey have names of their own, which no point of the car may run into. */
const surveyFault = (document: CarDocument, axle: AxleName, to: string): string | null => {
  const using = Object.entries(document.survey ?? {}).find(
    ([, survey]) =>
      survey.axle === axle &&
      [
        ...Object.keys(survey.known ?? {}),
        ...survey.observations.flatMap((one) => ('point' in one ? [one.point] : [one.from, one.to])),
      ].includes(to),
  );
  return using ? `The survey “${using[0]}” calls another point ${to}: choose another name.` : null;
};

export type Renaming = { readonly ok: true; readonly document: CarDocument } | { readonly ok: false; readonly fault: string };

/**
 * Gives a part another name, in its own place and wherever the file names it; no reading changes, and renaming back gives the
 * document as it was, key for key.
 * @returns the car; or why the name cannot be had: what is wrong, where, and what to do
 */
export const renamePart = (document: CarDocument, from: PartName, to: string): Renaming => {
  if (to === from.name) return { ok: true, document };
  const fault = faultOfName(document, from, to);
  if (fault !== null) return { ok: false, fault };
  // a joint goes by the name of its point, on whichever axle
  if (from.part === 'point' && document.joints?.[from.name] && document.joints[to])
    return { ok: false, fault: `The file has a joint ${to} already: choose another name.` };
  const renamed = changed(document, from, to);
  const left = faultOf(judgeEdit(renamed), []);
  return left === null ? { ok: true, document: renamed } : { ok: false, fault: `${to} cannot be its name here. ${left}` };
};
