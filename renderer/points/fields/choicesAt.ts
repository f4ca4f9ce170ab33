import { CATALOGUE, linkCarriersOf, partCarriersOf, SPINNING, type AxleName } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import { isOnKnuckle } from '../../viewport/joints';
import type { FormHost } from './formHost';
import type { FieldPath } from './pathValue';

/** What can be chosen under one heading: as the file has it, and as it is read. */
export interface ChoiceGroup {
  readonly heading: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

/** Readings that are one number, by the headings that they stand under on the bench. */
const READINGS: readonly ChoiceGroup[] = [...new Set(CATALOGUE.map(({ group }) => group))]
  .map((heading) => ({
    heading,
    options: CATALOGUE.filter(({ group, components }) => group === heading && components === undefined).map(({ key, name }) => ({
      value: key,
      label: name,
    })),
  }))
  .filter(({ options }) => options.length > 0);

/** What a tolerance can be of besides one reading. */
const FAMILIES: ChoiceGroup = {
  heading: 'All of a kind',
  options: [
    { value: 'wheelbase', label: 'Wheelbase' },
    { value: 'anti-geometry', label: 'Anti-geometry' },
  ],
};

const adjustersOf = (host: FormHost, axle: AxleName): ChoiceGroup => ({
  heading: axle === 'front' ? 'Front axle' : 'Rear axle',
  options: Object.entries(host.document[axle]?.adjusters ?? {}).map(([name, { label }]) => ({
    value: name,
    label: label === undefined || label === name ? name : `${label} (${name})`,
  })),
});

/** Carriers under one heading each; what the axle has no longer and the file still names stays to be seen. */
const carrierGroups = (names: readonly string[], now: unknown): readonly ChoiceGroup[] => {
  const all = typeof now === 'string' && now !== '' && !names.includes(now) ? [...names, now] : names;
  const isStill = (name: string): boolean => name === 'body' || name === 'ground';
  const isSpun = (name: string): boolean => SPINNING.includes(name);
  const groups = [
    { heading: 'Stands still', of: all.filter(isStill) },
    { heading: 'Moves', of: all.filter((name) => !isStill(name) && !isSpun(name)) },
    { heading: 'Spins', of: all.filter(isSpun) },
  ];
  return groups
    .filter(({ of }) => of.length > 0)
    .map(({ heading, of }) => ({ heading, options: of.map((value) => ({ value, label: nameOfKey(value) })) }));
};

const AXLES: readonly AxleName[] = ['front', 'rear'];

/** What carries a solid, a bolt, a bore, the end of a hose, a spring, a damper or a link; null where the field is another. */
const carriersAt = (host: FormHost, path: FieldPath): readonly ChoiceGroup[] | null => {
  const [holder, last] = [path[0], String(path.at(-1))];
  const now = host.read(path);
  if (last === 'lowerOn' || last === 'linkOn')
    return host.axle === null ? null : carrierGroups(linkCarriersOf(host.document, host.axle), now);
  const isPart = holder === 'parts' && last === 'on';
  const isSteady = (holder === 'joints' || holder === 'spans') && last.endsWith('On');
  if (path.length !== 3 || (!isPart && !isSteady)) return null;
  const own = host.read([...path.slice(0, -1), 'axle']);
  const axles = AXLES.filter((axle) => host.document[axle] && (own === undefined || own === axle));
  const names = [...new Set(axles.flatMap((axle) => partCarriersOf(host.document, axle)))];
  return carrierGroups(isPart ? names : names.filter((name) => name !== 'ground' && !SPINNING.includes(name)), now);
};

/** What a field is chosen from by words that are not those of the file; null where it is typed. */
export const choicesAt = (host: FormHost, path: FieldPath): readonly ChoiceGroup[] | null => {
  const [holder, last] = [path[0], path.at(-1)];
  if (holder === 'limits' && path.length === 3 && last === 'reading') return READINGS;
  if (holder === 'limits' && path.length === 3 && last === 'setting')
    return (['front', 'rear'] as const).map((axle) => adjustersOf(host, axle)).filter(({ options }) => options.length > 0);
  if (holder === 'tolerances' && path.length === 3 && last === 'key') return [...READINGS, FAMILIES];
  return carriersAt(host, path);
};

/** What a choice that is left out means. */
export const emptyWords = (host: FormHost, path: FieldPath): string => {
  if (!path.includes('adjusters') || path.at(-1) !== 'seat') return '–';
  const axle = host.axle === null ? undefined : host.document[host.axle];
  const point = host.read([...path.slice(0, -1), 'moves']);
  if (!axle || typeof point !== 'string' || !axle.points[point]) return '–';
  return isOnKnuckle(axle, point) ? '– (knuckle)' : '– (body)';
};
