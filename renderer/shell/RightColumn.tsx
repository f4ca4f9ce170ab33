import { lazy, Suspense, useEffect, useState } from 'react';
import { Segments } from '../look/controls/Segments';
import { Readings } from '../readings/Readings';
import { useBench } from './benchContext';

const Lengths = lazy(async () => ({ default: (await import('../lengths/Lengths')).Lengths }));

const TABS = [
  { name: 'readings', label: 'Readings' },
  { name: 'lengths', label: 'Lengths' },
] as const;

/** The right-hand column of the bench: what the car does, or how long its parts are. */
export const RightColumn = () => {
  const [tab, setTab] = useState<(typeof TABS)[number]['name']>('readings');
  const isTaped = useBench((state) => state.viewing.tape !== null);
  // a tape that is laid in the view is read here
  useEffect(() => {
    if (isTaped) setTab('lengths');
  }, [isTaped]);
  return (
    <div className="column readings rightcolumn">
      <div className="columntabs">
        <Segments label="Right-hand column" options={TABS} chosen={tab} onChoose={setTab} />
      </div>
      {tab === 'readings' ? (
        <Readings />
      ) : (
        <Suspense>
          <Lengths />
        </Suspense>
      )}
    </div>
  );
};
