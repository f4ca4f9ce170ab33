import { withRightPoints } from '../../geometry/index';
import type { FormHost } from './fields/formHost';
import { NameLeaf } from './fields/NameLeaf';
import type { PointLine } from './pointRows';
import { whyNameStays } from './renaming/renamePart';

interface ChosenPointProps {
  readonly host: FormHost;
  readonly line: PointLine;
  readonly axle: 'front' | 'rear';
  readonly onRefused: (fault: string | null) => void;
}

/** The point that is chosen: its name, which is changed wherever the file names it, and whether it can go. */
export const ChosenPoint = ({ host, line, axle, onRefused }: ChosenPointProps) => {
  const { name, role } = line;
  const stays = whyNameStays(host.document, { part: 'point', axle, name });
  const path = [axle, 'points', name];
  const named: FormHost = {
    ...host,
    read: () => name,
    faultAt: () => null,
    write: (_path, value) => host.rename(path, String(value ?? '').trim()),
  };
  const remove = () => {
    const { [name]: _left, ...points } = host.document[axle]?.points ?? {};
    const { [name]: _right, ...right } = host.document[axle]?.right?.points ?? {};
    const of = host.document[axle];
    if (of) onRefused(host.write([axle], withRightPoints({ ...of, points }, right), `Remove ${name}`));
  };
  return (
    <div className="chosenpoint" role="group" aria-label={`Point ${name}`}>
      {stays === null ? <NameLeaf host={named} path={path} /> : <p className="quiet">{stays}</p>}
      {role === 'not used' && (
        <button type="button" className="button" onClick={remove}>
          Remove {name}
        </button>
      )}
    </div>
  );
};
