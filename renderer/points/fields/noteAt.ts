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

/** What is odd about the value of a field that was taken; null where nothing. */
export const noteAt = (host: FormHost, path: FieldPath, units: ShownUnits): string | null => {
  if (!host.isOfCar) return null;
  const [holder, name] = path;
  if (holder === 'margins' && path.length === 2 && !marginKinds(host).includes(String(name)))
    return 'No part is of this kind: nothing is held to it.';
  const own = formatPath(path);
  return cautionsOf(host.document, units).find((caution) => caution.path !== null && caution.path === own)?.words ?? null;
};
