import { useMemo } from 'react';
import type { MotionRange } from '../compute/motionRanges';
import { steerScale, steerWays, type SteerAs } from '../compute/steerScale';
import { useBench, useWindow } from '../shell/benchContext';
import { moveTo } from '../state/actions/lookAt';
import { prefer } from '../state/actions/prefer';
import { preferredOf } from '../state/preferences';
import { MotionRule } from './MotionRule';
import { STEER_AS, STEER_WAYS } from './steerChoices';
import { steerSense } from './steerSense';

const clean = (value: number): number => Number(value.toFixed(9));

/** Steer as rack travel, as the turn of the hand wheel or as the mean angle of both wheels. @param range - of the rack [mm] */
export const SteerRule = ({ range }: { readonly range: MotionRange }) => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  const { travel, rollDeg, rack } = useBench((state) => state.position);
  const wanted = useBench((state) => preferredOf<SteerAs>(state.preferences, STEER_AS, ['rack', 'handWheel', 'meanAngle']));
  const locks = useMemo(() => (bench ? steerSense(bench, axle) : null), [bench, axle]);
  if (!bench) return null;
  const ways = steerWays(bench.document, axle);
  const as = ways.includes(wanted) ? wanted : 'rack';
  const scale = steerScale(bench.document, bench.setup, axle, travel, rollDeg, range, as);
  const { label, spoken, unit, step, decimals } = STEER_WAYS[as];
  const value = clean(scale.fromRack(rack));
  return (
    <MotionRule
      name="Steer"
      as={
        <select aria-label="Steer as" title={label} value={as} onChange={(event) => prefer(store, STEER_AS, event.target.value)}>
          {ways.map((way) => (
            <option key={way} value={way}>
              {STEER_WAYS[way].label}
            </option>
          ))}
        </select>
      }
      spoken={spoken}
      unit={unit}
      measures={as === 'rack' ? 'length' : 'angle'}
      range={scale.range}
      value={Number.isFinite(value) ? value : 0}
      step={step}
      decimals={decimals}
      ends={locks && scale.isReversed ? { min: locks.max, max: locks.min } : locks}
      onMove={(shown) => moveTo(store, { rack: clean(scale.toRack(shown)) })}
    />
  );
};
