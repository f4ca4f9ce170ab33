import type { FormHost } from '../fields/formHost';
import { touching, withoutPart } from './partEdits';

/** A part that goes away goes from the lists of what others may touch as well, in the same undo step, whose name says so. */
export const partsHost = (host: FormHost): FormHost => ({
  ...host,
  write: (path, value, what) => {
    const { parts } = host.document;
    const name = String(path[1]);
    if (path[0] !== 'parts' || path.length !== 2 || value !== undefined || !parts) return host.write(path, value, what);
    const others = touching(parts, name);
    const also = others.length === 0 ? '' : `, also where ${others.join(', ')} may touch it`;
    return host.write(['parts'], withoutPart(parts, name), `${what}${also}`);
  },
});
