import { useRef } from 'react';
import type { CarDocument } from '../../geometry/index';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { cautionsOf } from './cautions';

/** What is odd about the car and breaks no rule: taken as given, and said. It stands still while something is dragged. */
export const CarCautions = () => {
  const units = useUnits();
  const settled = useBench(({ history }) => (history && !history.mark ? history.present.document : null));
  const last = useRef<CarDocument | null>(null);
  if (settled) last.current = settled;
  const cautions = last.current ? cautionsOf(last.current, units) : [];
  const [first, ...others] = cautions;
  if (!first) return null;
  return (
    <div className="farnotice carcautions" role="status">
      <VerdictShape verdict="close" />
      {others.length === 0 ? (
        <span>{first.words}</span>
      ) : (
        <details>
          <summary>
            {first.words} <b>{others.length} more</b>
          </summary>
          <ul>
            {others.map(({ path, words }) => (
              <li key={`${path} ${words}`}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
};
