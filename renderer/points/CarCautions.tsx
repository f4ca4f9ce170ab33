import { useRef } from 'react';
import type { CarDocument } from '../../geometry/index';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { cautionsOf, type Caution } from './cautions';

/** With the axle that it is of; a sentence that stands at its field needs none. */
const ofAxle = ({ path, words }: Caution): string => {
  const axle = /^(front|rear)(?=\.|$)/.exec(path ?? '')?.[1];
  return axle === undefined ? words : `${axle === 'front' ? 'Front' : 'Rear'}: ${words}`;
};

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
        <span>{ofAxle(first)}</span>
      ) : (
        <details>
          <summary>
            {ofAxle(first)} <b>{others.length} more</b>
          </summary>
          <ul>
            {others.map((caution) => (
              <li key={`${caution.path} ${caution.words}`}>{ofAxle(caution)}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
};
