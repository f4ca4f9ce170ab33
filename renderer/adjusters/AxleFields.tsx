import type { ReactNode } from 'react';
import { NumberField } from '../look/controls/NumberField';
import { useBench, useWindow } from '../shell/benchContext';
import { setRideHeight, setToe } from '../state/actions/editSetup';
import { setupNamed } from '../state/settings';
import { mmPerFileUnit, toFileLength } from '../units/fileLength';
import { HeightPart, ToePart } from './parts/AxleParts';
import { useHand } from './useHand';

interface AxleScale {
  /** what a mechanic sets it to */
  readonly step: number;
  readonly range: number;
}

/** Toe in degrees, heights in millimetres. */
const TOE: AxleScale = { step: 0.01, range: 5 };
const HEIGHT: AxleScale = { step: 1, range: 200 };
/** Drawing units of pointer travel for one step. */
const UNITS_PER_STEP = 4;
const FINE = 0.1;

const clean = (value: number, { range }: AxleScale): number => {
  const within = Math.min(range, Math.max(-range, Number(value.toFixed(6))));
  return within === 0 ? 0 : within;
};

const stepped = (value: number | null, steps: number, scale: AxleScale): number =>
  clean((value ?? 0) + steps * scale.step, scale);

interface AxleCardProps {
  readonly name: string;
  readonly words: string;
  readonly group: string;
  readonly scale: AxleScale;
  readonly value: number | null;
  readonly lockedBy?: string;
  readonly dense: boolean;
  readonly label: string;
  readonly unit: string;
  readonly measures: 'length' | 'toe';
  readonly decimals: number;
  readonly onSet: (value: number) => void;
  readonly onClear: () => void;
  /** the drawing, 120 units square */
  readonly children: ReactNode;
}

/** One number of the axle as a whole: its drawing under the hand, and the exact field. */
const AxleCard = (props: AxleCardProps) => {
  const { value, scale, lockedBy, dense, onSet } = props;
  const step = (steps: number) => stepped(value, steps, scale);
  const { ref, handlers } = useHand<SVGSVGElement>({
    value,
    locked: lockedBy !== undefined,
    drag: (start, from, to, fine) => {
      const grain = scale.step * (fine ? FINE : 1);
      const steps = Math.round((to.x - from.x - (to.y - from.y)) / UNITS_PER_STEP);
      return clean(start + steps * grain, scale);
    },
    stepped: step,
    onSet,
  });
  const size = dense ? 40 : 64;
  return (
    <div className={`card${lockedBy === undefined ? '' : ' lockedcard'}`} role="group" aria-label={props.group}>
      <svg
        ref={ref}
        className={`part mini${lockedBy === undefined ? ' turns' : ''}`}
        width={size}
        height={size}
        viewBox="-3 -3 126 126"
        aria-hidden="true"
        {...handlers}
      >
        {props.children}
      </svg>
      <span className="cardtext">
        <span className="cardname">{props.name}</span>
        <span className="cardwords" title={props.words}>
          {props.words}
        </span>
      </span>
      <NumberField
        label={props.label}
        value={value}
        absent="none"
        unit={props.unit}
        measures={props.measures}
        min={-scale.range}
        max={scale.range}
        decimals={props.decimals}
        lockedBy={lockedBy}
        className={lockedBy === undefined ? '' : 'locked'}
        onSet={onSet}
        onClear={props.onClear}
        onStep={(steps) => onSet(step(steps))}
        onHome={() => onSet(0)}
      />
    </div>
  );
};

const numberOr = (value: unknown): number | null => (typeof value === 'number' ? value : null);

/** What a setup asks of the axle as a whole: the toe that its adjuster is turned to, and the body's height. */
export const AxleFields = ({ dense }: { readonly dense: boolean }) => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  const left = useBench((state) => numberOr(state.shown?.row.left['toe']));
  const right = useBench((state) => numberOr(state.shown?.row.right['toe']));
  if (!bench) return null;
  const entries = setupNamed(bench.document, bench.setup)[axle];
  const toeAdjuster = bench.document[axle]?.toeAdjuster;
  const toe = entries?.setToe ?? null;
  const height = entries?.rideHeight === undefined ? null : entries.rideHeight * mmPerFileUnit(bench.document);
  const toeWords = toe === null ? 'not set: the adjuster’s own number holds' : 'the toe adjuster is turned to it; toe-in +';
  return (
    <>
      <AxleCard
        name="Set toe, each wheel"
        words={toeAdjuster === undefined ? 'no toe adjuster in the car file' : toeWords}
        group="Toe of the axle"
        scale={TOE}
        value={toe}
        lockedBy={toeAdjuster === undefined ? 'The car file names no toe adjuster for this axle.' : undefined}
        dense={dense}
        label="Set toe, each wheel, degrees, toe-in plus"
        unit="°"
        measures="toe"
        decimals={4}
        onSet={(value) => setToe(store, value)}
        onClear={() => setToe(store, null)}
      >
        <ToePart left={left} right={right} />
      </AxleCard>
      <AxleCard
        name={`Ride height, ${axle}`}
        words={height === null ? 'not set: contacts where they fall' : 'body against design, up +'}
        group="Ride height of the axle"
        scale={HEIGHT}
        value={height}
        dense={dense}
        label={`Ride height, ${axle}, mm over design`}
        unit="mm"
        measures="length"
        decimals={3}
        onSet={(value) => setRideHeight(store, toFileLength(bench.document, value))}
        onClear={() => setRideHeight(store, null)}
      >
        <HeightPart mm={height} />
      </AxleCard>
    </>
  );
};
