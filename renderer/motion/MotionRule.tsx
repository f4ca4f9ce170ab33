import { useLayoutEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { MotionRange } from '../compute/motionRanges';
import { NumberField } from '../look/controls/NumberField';
import { keySteps } from '../look/controls/keySteps';
import { labelIn, useFieldUnit } from '../look/controls/useFieldUnit';
import { ruleMarks } from './ruleMarks';
import type { LockWords } from './steerSense';
import { useSliderDrag } from './useSliderDrag';

export interface MotionRuleProps {
  readonly name: string;
  /** a choice of what it is read in, under its name */
  readonly as?: ReactNode;
  readonly spoken: string;
  readonly unit: string;
  readonly measures?: 'length' | 'angle';
  readonly range: MotionRange;
  readonly value: number;
  /** movement of one press of an arrow key */
  readonly step: number;
  readonly decimals: number;
  /** what the two ends of the rule mean, where that is not plain from the sign */
  readonly ends?: LockWords | null;
  readonly onMove: (value: number) => void;
}

/** A rule at least so long has room for the full words of both its ends [px]. */
const BOTH_ENDS = 80;

/** Length of a rule as it is drawn [px]. */
const useRuleLength = () => {
  const rule = useRef<SVGSVGElement>(null);
  const [length, setLength] = useState(Infinity);
  useLayoutEffect(() => {
    if (!rule.current) return;
    const observer = new ResizeObserver(([entry]) => entry && setLength(entry.contentRect.width));
    observer.observe(rule.current);
    return () => observer.disconnect();
  }, []);
  return { rule, length };
};

/** A graduated rule with its index, and the exact number beside it. */
export const MotionRule = (props: MotionRuleProps) => {
  const { name, range, value, step, unit, ends, onMove } = props;
  const { min, max, stops } = range;
  const { rule, length } = useRuleLength();
  const shown = useFieldUnit(props.measures, unit, props.decimals);
  const marks = useMemo(
    () =>
      ruleMarks(shown.toShown(min), shown.toShown(max), length).map((mark) => ({ ...mark, value: shown.fromShown(mark.value) })),
    [min, max, length, shown],
  );
  const { onPointerDown, dragTo } = useSliderDrag(value, onMove);
  // "left lock", or "left" where two of them would touch
  const endWord = (words: string): string => (length < BOTH_ENDS ? (words.split(' ')[0] ?? words) : words);
  const way = ends && value !== 0 ? `, towards ${value < 0 ? ends.min : ends.max}` : '';
  // A stop at the very end may lie a rounding beyond it.
  const at = (position: number): string => `${Math.max(0, ((position - min) / (max - min)) * 100)}%`;
  const clamp = (next: number) => Math.min(max, Math.max(min, Number(next.toFixed(6))));
  const [from, to] = [Math.min(0, value), Math.max(0, value)];
  return (
    <div className="motionrule" role="group" aria-label={name}>
      <span className="motionname">
        {name}
        {props.as}
      </span>
      <div className="rule">
        <svg ref={rule} className="rulesvg" aria-hidden="true">
          {stops && <rect className="stop" x="0" y="26" width={at(stops[0])} height="6" />}
          {stops && <rect className="stop" x={at(stops[1])} y="26" width={at(min + max - stops[1])} height="6" />}
          <line className="base" x1="0" x2="100%" y1="32" y2="32" />
          {marks.map((mark) => (
            <line
              key={mark.value}
              className={mark.size === 'zero' ? 'grad zero' : 'grad'}
              x1={at(mark.value)}
              x2={at(mark.value)}
              y1={mark.size === 'fine' ? 27 : mark.size === 'plain' ? 23 : 20}
              y2="32"
            />
          ))}
          <line className="run" x1={at(clamp(from))} x2={at(clamp(to))} y1="32" y2="32" />
          {marks.map(
            (mark) =>
              mark.label !== null && (
                <text key={mark.value} x={at(mark.value)} y="46" textAnchor="middle">
                  {mark.label}
                </text>
              ),
          )}
          {ends && (
            <>
              <text x="-12" y="10">
                {endWord(ends.min)}
              </text>
              <text x="100%" dx="12" y="10" textAnchor="end">
                {endWord(ends.max)}
              </text>
            </>
          )}
        </svg>
        <input
          type="range"
          className="ruleinput"
          min={min}
          max={max}
          step="any"
          value={clamp(value)}
          aria-label={`${labelIn(props.spoken, unit, shown.typedIn)}, slider`}
          aria-valuetext={`${value > 0 ? '+' : ''}${shown.format(value)} ${shown.unit}${way}`}
          onPointerDown={onPointerDown}
          onChange={(event) => dragTo(roundTo(Number(event.target.value), step / 2))}
          onKeyDown={(event) => {
            const steps = keySteps(event.key, event.shiftKey);
            if (steps === null) return;
            event.preventDefault();
            event.stopPropagation();
            onMove(steps === 0 ? 0 : clamp(value + steps * step));
          }}
        />
      </div>
      <NumberField
        label={props.spoken}
        value={value}
        unit={unit}
        measures={props.measures}
        min={min}
        max={max}
        decimals={3}
        onSet={onMove}
        onStep={(steps) => onMove(clamp(value + steps * step))}
        onHome={() => onMove(0)}
      />
    </div>
  );
};

const roundTo = (value: number, grain: number): number => {
  const rounded = Number((Math.round(value / grain) * grain).toFixed(6));
  return rounded === 0 ? 0 : rounded;
};
