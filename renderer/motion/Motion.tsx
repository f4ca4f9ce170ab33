import { useEffect, useMemo, useRef, useState } from 'react';
import { motionRanges } from '../compute/motionRanges';
import { standingRow } from '../compute/standing';
import { Segments } from '../look/controls/Segments';
import { useBench, useWindow } from '../shell/benchContext';
import { useNarrow } from '../shell/useNarrow';
import { moveTo, standStill } from '../state/actions/lookAt';
import { MotionRule } from './MotionRule';
import { SteerRule } from './SteerRule';
import { usePlay } from './usePlay';

/** One press of an arrow key: what a person would try next. */
const TRAVEL_STEP = 1;
const ROLL_STEP = 0.1;

const MOTIONS = [
  { name: 'bump', label: 'Bump' },
  { name: 'roll', label: 'Roll' },
  { name: 'steer', label: 'Steer' },
] as const;

/** Bump, roll and steer of the car, along the foot of the bench; one at a time in a narrow window. */
export const Motion = () => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  const position = useBench((state) => state.position);
  const ranges = useMemo(() => bench && motionRanges(bench.document, axle, standingRow(bench, axle)), [bench, axle]);
  const { playing, toggle, play } = usePlay(ranges?.travel ?? null);
  const narrow = useNarrow();
  const [chosen, setChosen] = useState<(typeof MOTIONS)[number]['name']>('bump');
  const shows = (name: typeof chosen): boolean => !narrow || name === chosen;
  const greeted = useRef(false);
  // First start: the car moves until the first touch, unless the system asks for less movement.
  useEffect(() => {
    if (!ranges || greeted.current) return;
    greeted.current = true;
    if (!matchMedia('(prefers-reduced-motion: reduce)').matches) play();
  }, [ranges, play]);
  if (!ranges) return <footer className="motion" aria-label="Motion" role="group" />;
  return (
    <footer className={narrow ? 'motion one' : 'motion'} aria-label="Motion" role="group">
      <button type="button" className="play" aria-label={playing ? 'Stop' : 'Play bump'} aria-pressed={playing} onClick={toggle}>
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d={playing ? 'M4 2h3.5v14H4zM10.5 2H14v14h-3.5z' : 'M4 2l11 7-11 7z'} fill="currentColor" />
        </svg>
      </button>
      {narrow && <Segments label="Motion shown" options={MOTIONS} chosen={chosen} onChoose={setChosen} />}
      {shows('bump') && (
        <MotionRule
          name="Bump"
          spoken="Bump: wheel travel from standing, mm"
          unit="mm"
          measures="length"
          range={ranges.travel}
          value={position.travel}
          step={TRAVEL_STEP}
          decimals={1}
          onMove={(travel) => moveTo(store, { travel })}
        />
      )}
      {shows('roll') && (
        <MotionRule
          name="Roll"
          spoken="Roll, degrees, left side up plus"
          unit="°"
          measures="angle"
          range={ranges.roll}
          value={position.rollDeg}
          step={ROLL_STEP}
          decimals={2}
          onMove={(rollDeg) => moveTo(store, { rollDeg })}
        />
      )}
      {shows('steer') &&
        (ranges.rack ? (
          <SteerRule range={ranges.rack} />
        ) : (
          <p className="notsteered">
            <b>Steer</b> <span className="quiet">this axle is not steered</span>
          </p>
        ))}
      <button type="button" className="button" onClick={() => standStill(store)}>
        Zero <span className="key">Home</span>
      </button>
    </footer>
  );
};
