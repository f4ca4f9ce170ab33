import { useMemo } from 'react';
import { useBench } from '../shell/benchContext';
import { comparedWith } from '../state/benchStore';
import { copiedFrom } from '../state/copiedFrom';
import { settingOf, setupNamed } from '../state/settings';
import { AdjusterCard } from './AdjusterCard';
import { AxleFields } from './AxleFields';
import { useDenseCards } from './useDenseCards';

/** Whose copy the setup on the bench is, and how many adjusters stand elsewhere than in the compared one. */
const wordsOf = (source: string | null, other: string | null, moved: number): string => {
  const copy = source === null ? null : `copy of ${source}`;
  const count = other === null ? null : source === other ? `${moved} moved` : `${moved} moved from ${other}`;
  return [copy, count].filter((part) => part !== null).join(', ');
};

/** The adjusters of the axle, each as the part that the fitter holds, with its exact numbers. */
export const Adjusters = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const other = useBench(comparedWith);
  const axle = useBench((state) => state.axle);
  const document = bench?.document;
  const adjusters = useMemo(() => Object.entries(document?.[axle]?.adjusters ?? {}), [document, axle]);
  const moved = useMemo(() => {
    if (!bench || !other) return 0;
    const [now, then] = [setupNamed(bench.document, bench.setup), setupNamed(other.document, other.setup)];
    const differs = (name: string, side: 'left' | 'right') =>
      settingOf(now, axle, name, side) !== settingOf(then, axle, name, side);
    return adjusters.filter(([name]) => differs(name, 'left') || differs(name, 'right')).length;
  }, [bench, other, adjusters, axle]);
  const source = useBench(({ history }) => history && copiedFrom(history.present));
  const words = wordsOf(source, other?.name ?? null, moved);
  const dense = useDenseCards(adjusters.length);
  return (
    <section className="column adjusters" aria-label="Adjusters">
      <div className="columnhead">
        <h2>Adjusters, {axle}</h2>
        <span className="quiet">{adjusters.length}</span>
        <span className="spread" />
        <span className="quiet ellipsis" role="status" title={words}>
          {words}
        </span>
      </div>
      <div className={`scroll cards${dense ? ' dense' : ''}`}>
        {bench &&
          adjusters.map(([name, adjuster]) => (
            <AdjusterCard key={`${axle}.${name}`} name={name} adjuster={adjuster} dense={dense} />
          ))}
        {bench && adjusters.length === 0 && <p className="none">No adjusters on this axle in the car file.</p>}
        {bench && <AxleFields dense={dense} />}
      </div>
    </section>
  );
};
