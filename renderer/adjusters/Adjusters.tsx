import { useMemo } from 'react';
import { useBench } from '../shell/benchContext';
import { settingOf, setupNamed } from '../state/settings';
import { AdjusterCard } from './AdjusterCard';
import { AxleFields } from './AxleFields';
import { useDenseCards } from './useDenseCards';

/** The adjusters of the axle, each as the part that the fitter holds, with its exact numbers. */
export const Adjusters = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  const document = bench?.document;
  const adjusters = useMemo(() => Object.entries(document?.[axle]?.adjusters ?? {}), [document, axle]);
  const moved = useMemo(() => {
    if (!bench) return 0;
    const [now, then] = [setupNamed(bench.document, bench.setup), setupNamed(bench.document, bench.against)];
    const differs = (name: string, side: 'left' | 'right') =>
      settingOf(now, axle, name, side) !== settingOf(then, axle, name, side);
    return adjusters.filter(([name]) => differs(name, 'left') || differs(name, 'right')).length;
  }, [bench, adjusters, axle]);
  const dense = useDenseCards(adjusters.length);
  return (
    <section className="column adjusters" aria-label="Adjusters">
      <div className="columnhead">
        <h2>Adjusters, {axle}</h2>
        <span className="quiet">{adjusters.length}</span>
        <span className="spread" />
        {bench && bench.setup !== bench.against && (
          <span className="quiet ellipsis">
            {moved} moved from {bench.against}
          </span>
        )}
      </div>
      <div className={`scroll cards${dense ? ' dense' : ''}`}>
        {bench &&
          adjusters.map(([name, adjuster]) => (
            <AdjusterCard key={`${axle}.${name}`} name={name} adjuster={adjuster} dense={dense} />
          ))}
        {bench && adjusters.length === 0 && <p className="none">No adjusters on this axle in the car file.</p>}
        {bench && <AxleFields />}
      </div>
    </section>
  );
};
