import { useRef, type FocusEvent, type ReactNode } from 'react';
import { HELD_AXLE_VALUES, steppedAxleValue, withinScale, type AxleScale, type AxleValueName } from '../compute/axleValues';
import { NumberField } from '../look/controls/NumberField';
import { useFieldUnit } from '../look/controls/useFieldUnit';
import { useBench, useWindow } from '../shell/benchContext';
import { holdAdjuster } from '../state/actions/lookAt';
import { HeldFrame } from './HeldFrame';
import { LockShape } from './LockShape';
import { StepButtons } from './StepButtons';
import { useHand } from './useHand';

/** Drawing units of pointer travel for one step. */
const UNITS_PER_STEP = 4;
const FINE = 0.1;

export interface AxleCardProps {
  readonly of: AxleValueName;
  readonly name: string;
  /** what the number does; where it is not set, what holds instead */
  readonly words: string;
  /** its range or its sense, small in the head of the card in hand */
  readonly note: string;
  readonly group: string;
  readonly scale: AxleScale;
  readonly value: number | null;
  /** where steps and drags begin: the value, or what holds while it is not set */
  readonly from: number;
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

const AxleField = (props: AxleCardProps) => {
  const { scale, lockedBy, onSet } = props;
  return (
    <NumberField
      label={props.label}
      value={props.value}
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
      onStep={(steps) => onSet(steppedAxleValue(props.from, steps, scale))}
      onHome={() => onSet(0)}
    />
  );
};

interface DrawingProps {
  readonly size: number;
  readonly className: string;
  readonly children: ReactNode;
}

const Drawing = ({ size, className, children }: DrawingProps) => (
  <svg className={`part ${className}`} width={size} height={size} viewBox="-3 -3 126 126" aria-hidden="true">
    {children}
  </svg>
);

const HeldAxleCard = (props: AxleCardProps & { readonly takesFocus: boolean }) => {
  const { value, scale, lockedBy, dense, takesFocus, onSet } = props;
  const locked = lockedBy !== undefined;
  const shown = useFieldUnit(props.measures, props.unit, props.decimals);
  const stepped = (steps: number): number => steppedAxleValue(props.from, steps, scale);
  const hand = useHand<HTMLDivElement>({
    value: value ?? props.from,
    locked,
    drag: (start, from, to, fine) => {
      const grain = scale.step * (fine ? FINE : 1);
      const steps = Math.round((to.x - from.x - (to.y - from.y)) / UNITS_PER_STEP);
      return withinScale(start + steps * grain, scale);
    },
    stepped,
    onSet,
  });
  const stepWords = `${shown.format(scale.step)}${shown.unit === '°' || shown.unit === '' ? '' : ' '}${shown.unit}`;
  return (
    <HeldFrame
      label={props.group}
      name={props.name}
      note={props.note}
      locked={locked}
      dense={dense}
      focusField={takesFocus ? 0 : null}
      hand={hand}
      drawing={
        <Drawing size={dense ? 104 : 154} className="">
          {props.children}
        </Drawing>
      }
    >
      <span className="fields">
        <AxleField {...props} />
      </span>
      {!locked && <StepButtons of={props.name} words={stepWords} onStep={(steps) => onSet(stepped(steps))} />}
      <span className="sub">{props.words}</span>
    </HeldFrame>
  );
};

/** One number of the axle as a whole: at rest a line with its drawing, in hand a blued card with its dial. */
export const AxleCard = (props: AxleCardProps) => {
  const { store } = useWindow();
  const { lockedBy, dense } = props;
  const held = useBench((state) => state.held === HELD_AXLE_VALUES[props.of]);
  // The card in hand is another tree: the focus is handed over to its field.
  const takesFocus = useRef(false);
  const hold = (event: FocusEvent<HTMLElement> | null) => {
    takesFocus.current = event === null || event.target instanceof HTMLInputElement;
    holdAdjuster(store, HELD_AXLE_VALUES[props.of]);
  };
  if (held) return <HeldAxleCard {...props} takesFocus={takesFocus.current} />;
  return (
    <div
      className={`card${lockedBy === undefined ? '' : ' lockedcard'}`}
      role="group"
      aria-label={props.group}
      onClick={() => hold(null)}
      onFocus={hold}
    >
      <Drawing size={dense ? 40 : 64} className="mini">
        {props.children}
      </Drawing>
      <span className="cardtext">
        <span className="cardname">
          {lockedBy !== undefined && <LockShape />}
          {props.name}
        </span>
        <span className="cardwords" title={props.words}>
          {props.words}
        </span>
      </span>
      <AxleField {...props} />
    </div>
  );
};
