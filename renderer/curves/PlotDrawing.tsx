import { memo } from 'react';
import type { PlotContent, SweptLines } from './plotContent';
import { gapsOf, isSameLine, lastInside, linePath, markerIndexes, xOf, yOf, type PlotFrame } from './plotLines';
import { decimalsOfStep, minuteStep, minuteTick, motionStep, ticksOf, valueStep } from './plotScale';
import { formatNumber, formatSigned } from '../units/format';

/** Room for a numeral along each axis [px]. */
const WIDTH_OF_NUMERAL = 32;
const HEIGHT_OF_NUMERAL = 22;
/** Letters of a numeral of values that stand beside the axis in plain width. */
const MOST_PLAIN = 6;
/** Left and right within this of each other are one line [px]. */
const LINE_WIDTH = 2;

/** Parts of an axis between two numerals at a given length. */
export const valueParts = (frame: Pick<PlotFrame, 'top' | 'bottom'>): number =>
  Math.max(1, Math.floor((frame.bottom - frame.top) / HEIGHT_OF_NUMERAL));
export const motionParts = (frame: Pick<PlotFrame, 'left' | 'right'>): number =>
  Math.max(1, Math.floor((frame.right - frame.left) / WIDTH_OF_NUMERAL));

/** Markers stand at least every this much of the motion, in graduations of it. */
const MARKER_STEPS = 1;

interface AxesProps {
  readonly frame: PlotFrame;
  readonly isInMinutes: boolean;
  /** along it stand rows of a list: whole numbers without a sign */
  readonly isCounted: boolean;
}

const Axes = ({ frame, isInMinutes, isCounted }: AxesProps) => {
  const { left, right, top, bottom, x, y } = frame;
  const ownStep = motionStep(x[1] - x[0], motionParts(frame));
  const xStep = isCounted ? Math.max(1, ownStep) : ownStep;
  const yStep = (isInMinutes ? minuteStep : valueStep)(y[1] - y[0], valueParts(frame));
  const [xDecimals, yDecimals] = [decimalsOfStep(xStep), decimalsOfStep(yStep)];
  return (
    <>
      <rect className="frame" x={left} y={top} width={right - left} height={bottom - top} />
      {ticksOf(x, xStep / 2).map((tick) => {
        const isNumbered = Math.abs(tick / xStep - Math.round(tick / xStep)) < 1e-6;
        const at = xOf(frame, tick);
        return (
          <g key={tick}>
            <path className="tick" d={`M${at},${bottom}v${isNumbered ? -7 : -4}`} />
            {isNumbered && (
              <text x={at} y={bottom + 15} textAnchor="middle">
                {isCounted ? formatNumber(tick, 0) : formatSigned(tick, xDecimals)}
              </text>
            )}
          </g>
        );
      })}
      {ticksOf(y, yStep).map((tick) => {
        const at = yOf(frame, tick);
        const numeral = isInMinutes ? minuteTick(tick, yStep) : formatNumber(tick, yDecimals);
        const isLong = numeral.length > MOST_PLAIN;
        return (
          <g key={tick}>
            <path className={tick === 0 ? 'zero' : 'grid'} d={`M${left},${at}H${right}`} />
            <text className={isLong ? 'longnumeral' : undefined} x={left - (isLong ? 2 : 5)} y={at + 4} textAnchor="end">
              {numeral}
            </text>
          </g>
        );
      })}
    </>
  );
};

const Markers = ({ frame, lines, of }: { frame: PlotFrame; lines: SweptLines; of: 'left' | 'right' | 'both' | 'compared' }) => {
  const line = of === 'right' ? lines.right : lines.left;
  if (!line) return null;
  const spacing = motionStep(frame.x[1] - frame.x[0], motionParts(frame)) * MARKER_STEPS;
  return markerIndexes(lines.inputs, line.values, spacing, of === 'both' ? 'left' : of).map((index) => {
    const [x, y] = [xOf(frame, lines.inputs[index] ?? 0), yOf(frame, line.values[index] ?? 0)];
    switch (of) {
      case 'left':
        return <circle key={index} className="mark left" cx={x} cy={y} r="3.4" />;
      case 'right':
        return <rect key={index} className="mark right" x={x - 3.2} y={y - 3.2} width="6.4" height="6.4" />;
      case 'both':
        return (
          <g key={index}>
            <rect className="mark right" x={x - 5} y={y - 5} width="10" height="10" />
            <circle className="mark left" cx={x} cy={y} r="2.8" />
          </g>
        );
      case 'compared':
        return <path key={index} className="mark compared" d={`M${x},${y - 4.4}l4.4,4.4l-4.4,4.4l-4.4,-4.4z`} />;
    }
  });
};

/** The compared setup: grey dots; where its sides part, the right one has longer spaces. */
const Behind = ({ frame, lines }: { readonly frame: PlotFrame; readonly lines: SweptLines }) => (
  <>
    <path className="curve compared" d={linePath(frame, lines.inputs, lines.left.values)} />
    {lines.right && !isSameLine(lines.left.values, lines.right.values, distanceIn(frame)) && (
      <path className="curve compared right" d={linePath(frame, lines.inputs, lines.right.values)} />
    )}
    <Markers frame={frame} lines={lines} of="compared" />
  </>
);

/** A line's width as a difference of values. */
const distanceIn = ({ top, bottom, y }: PlotFrame): number => (LINE_WIDTH * (y[1] - y[0])) / (bottom - top);

const Letters = ({ frame, lines, isOne }: { readonly frame: PlotFrame; readonly lines: SweptLines; readonly isOne: boolean }) => {
  const left = lastInside(frame, lines.inputs, lines.left.values);
  const right = lines.right && lastInside(frame, lines.inputs, lines.right.values);
  const at = frame.right + 3;
  if (!lines.right || !left) return null;
  if (isOne)
    return (
      <text className="letter" x={at} y={left.y + 4}>
        LR
      </text>
    );
  const apart = right ? Math.max(0, 13 - Math.abs(left.y - right.y)) / 2 : 0;
  const up = right && left.y > right.y ? 1 : -1;
  return (
    <>
      <text className="letter left" x={at} y={left.y + 4 + up * apart}>
        L
      </text>
      {right && (
        <text className="letter right" x={at} y={right.y + 4 - up * apart}>
          R
        </text>
      )}
    </>
  );
};

const Own = ({ frame, lines }: { readonly frame: PlotFrame; readonly lines: SweptLines }) => {
  const { inputs, left, right } = lines;
  const d = linePath(frame, inputs, left.values);
  if (!right) return <path className="curve axle" d={d} />;
  if (isSameLine(left.values, right.values, distanceIn(frame)))
    return (
      <>
        <path className="curve both under" d={d} />
        <path className="curve both over" d={d} />
        <Markers frame={frame} lines={lines} of="both" />
      </>
    );
  return (
    <>
      <path className="curve right" d={linePath(frame, inputs, right.values)} />
      <Markers frame={frame} lines={lines} of="right" />
      <path className="curve left" d={d} />
      <Markers frame={frame} lines={lines} of="left" />
    </>
  );
};

const CROSS = { left: 'M-4,-4l8,8m0,-8l-8,8', right: 'M-4.5,0h9M0,-4.500v9', both: 'M-4,-4l8,8m0,-8l-8,8' } as const;

const Measured = ({ frame, content }: { readonly frame: PlotFrame; readonly content: PlotContent }) =>
  content.measured.flatMap(({ name, points }) =>
    points.map(({ input, value, sigma, side }, index) => {
      const [x, y] = [xOf(frame, input), yOf(frame, value)];
      const bar = sigma === null ? 0 : Math.abs(yOf(frame, value + sigma) - y);
      return (
        <g key={`${name}.${index}`} className="measured" transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
          <path d={CROSS[side]} />
          {sigma !== null && <path className="bar" d={`M0,${-bar}V${bar}M-3,${-bar}h6M-3,${bar}h6`} />}
        </g>
      );
    }),
  );

const Gaps = ({ frame, lines }: { readonly frame: PlotFrame; readonly lines: SweptLines }) =>
  gapsOf(lines.inputs, lines.left.values, lines.left.why).map(({ from, to, why }) => {
    const [a, b] = [Math.max(frame.left, xOf(frame, from)), Math.min(frame.right, xOf(frame, to))];
    return (
      <rect key={from} className="gap" x={a} y={frame.top} width={Math.max(0, b - a)} height={frame.bottom - frame.top}>
        <title>{why}</title>
      </rect>
    );
  });

export interface PlotDrawingProps {
  readonly frame: PlotFrame;
  readonly content: PlotContent;
  readonly clip: string;
}

/** All of a plot but its cursor: drawn anew only when a line or the frame changes. */
export const PlotDrawing = memo(({ frame, content, clip }: PlotDrawingProps) => {
  const { own, compared } = content;
  const isOne = own?.right ? isSameLine(own.left.values, own.right.values, distanceIn(frame)) : false;
  return (
    <>
      <clipPath id={clip}>
        <rect x={frame.left} y={frame.top} width={frame.right - frame.left} height={frame.bottom - frame.top} />
      </clipPath>
      <Axes frame={frame} isInMinutes={content.isInMinutes} isCounted={content.isCounted === true} />
      <g clipPath={`url(#${clip})`}>
        {own && <Gaps frame={frame} lines={own} />}
        {compared && <Behind frame={frame} lines={compared} />}
        {own && <Own frame={frame} lines={own} />}
        <Measured frame={frame} content={content} />
      </g>
      {own && <Letters frame={frame} lines={own} isOne={isOne} />}
    </>
  );
});
