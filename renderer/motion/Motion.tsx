import { useEffect, useMemo, useRef, useState } from 'react';
import { motionRanges } from '../compute/motionRanges';
import { standingRow } from '../compute/standing';
import { Segments } from '../look/controls/Segments';
import { useBench, useWindow } from '../shell/benchContext';
import { useNarrow } from '../shell/useNarrow';
import { moveTo, standStill } from '../state/actions/lookAt';
import { preferredOf } from '../state/preferences';
import { MotionRule } from './MotionRule';
import { SteerRule } from './SteerRule';
import { PLAY_KIND } from './playChoices';
import { PlayControl } from './PlayControl';
import { RIDE_KINDS, rideSpan, type RideKind } from './ride';
import { isReload, isTouched } from './touched';
import { asksForLess, usePlay } from './usePlay';

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
  const standing = useMemo(() => bench && standingRow(bench, axle), [bench, axle]);
  const ranges = useMemo(() => bench && motionRanges(bench.document, axle, standing), [bench, axle, standing]);
  const wanted = useBench((state) => preferredOf<RideKind>(state.preferences, PLAY_KIND, RIDE_KINDS));
  const kind = wanted === 'steer' && ranges?.rack === null ? 'bump' : wanted;
  const span = useMemo(() => {
    const track = standing?.both['track'];
    return ranges && rideSpan(ranges, typeof track === 'number' ? track : null);
  }, [ranges, standing]);
  const { playing, toggle, greet } = usePlay(kind, span);
  const narrow = useNarrow();
  const [chosen, setChosen] = useState<(typeof MOTIONS)[number]['name']>('bump');
  const shows = (name: typeof chosen): boolean => !narrow || name === chosen;
  const greeted = useRef(false);
  const isSample = useBench((state) => (state.file?.sample ?? null) !== null);
  // First start: a sample moves for a moment or to the first touch, unless the system asks for less movement, and then stands.
  // After that nothing plays by itself, and nothing does after a reload.
  useEffect(() => {
    if (!ranges || greeted.current) return;
    greeted.current = true;
    if (isSample && !isTouched() && !asksForLess() && !isReload()) greet();
  }, [ranges, isSample, greet]);
  if (!ranges) return <footer className="motion" aria-label="Motion" role="group" />;
  return (
    <footer className={narrow ? 'motion one' : 'motion'} aria-label="Motion" role="group">
      <PlayControl kind={kind} isSteered={ranges.rack !== null} playing={playing} onToggle={toggle} />
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
      <button
        type="button"
        className="button"
        title="Bump, roll and steer. In a field or on a rule Home zeroes that one alone."
        onClick={() => standStill(store)}
      >
        Zero <span className="key">Home</span>
      </button>
    </footer>
  );
};
