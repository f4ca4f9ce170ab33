import { formatPath } from '../../../geometry/index';
import type { ShownUnits } from '../../units/unitChoice';
import { cautionsOf } from '../cautions';
import type { FormHost } from './formHost';
import type { FieldPath } from './pathValue';

/** Kinds that margins are asked for by without a part that names them. */
const KNOWN_KINDS = ['default', 'tyreSide', 'tyreTread', 'caliperRim', 'ground'];

/** Kinds of parts, to choose the name of a margin from. */
export const marginKinds = ({ document }: FormHost): readonly string[] => [
  ...new Set([...KNOWN_KINDS, ...Object.values(document.parts ?? {}).flatMap(({ kind }) => kind ?? [])]),
];

/** A range that has no step but zero, or that begins with its greatest: said while it is typed, in the part that is being made too. */
const rangeNote = (host: FormHost, path: FieldPath): string | null => {
  const part = path.slice(0, -1);
  const [range, step] = [host.read([...part, 'range']), host.read([...part, 'step'])];
  if (!Array.isArray(range) || range.length !== 2) return null;
  const [least, most] = range as readonly number[];
  if (least === undefined || most === undefined) return null;
  if (path.at(-1) === 'range' && least >= most) return 'The least comes first.';
  if (path.at(-1) !== 'step' || typeof step !== 'number' || !(step > 0)) return null;
  const isOut = step > most * (1 + 1e-9) && -step < least * (1 + 1e-9);
  return isOut ? 'No step of it fits in the range: the part has no position but zero.' : null;
};

/** What is odd about the value of a field that was taken; null where nothing. */
export const noteAt = (host: FormHost, path: FieldPath, units: ShownUnits): string | null => {
  const ofAdjuster = path.includes('adjusters') ? rangeNote(host, path) : null;
  if (ofAdjuster !== null || !host.isOfCar) return ofAdjuster;
  const [holder, name] = path;
  if (holder === 'margins' && path.length === 2 && !marginKinds(host).includes(String(name)))
    return 'No part is of this kind: nothing is held to it.';
  const own = formatPath(path);
  return cautionsOf(host.document, units).find((caution) => caution.path !== null && caution.path === own)?.words ?? null;
};
