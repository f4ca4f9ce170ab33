import { xOf, yOf, type PlotFrame } from './plotLines';

export interface PlotCursorProps {
  readonly frame: PlotFrame;
  /** present position in the units shown */
  readonly at: number;
  /** values there, in the units shown */
  readonly values: readonly (number | null)[];
}

/** The blue line at the present position, with a dot on each of the setup's own lines. */
export const PlotCursor = ({ frame, at, values }: PlotCursorProps) => {
  if (at < frame.x[0] - 1e-9 || at > frame.x[1] + 1e-9) return null;
  const x = xOf(frame, at).toFixed(1);
  return (
    <g className="cursor">
      <path className="line" d={`M${x},${frame.top}V${frame.bottom}`} />
      <path className="index" d={`M${x},${frame.top}l-4,-6h8z`} />
      {values.map((value, index) =>
        value === null || value < frame.y[0] || value > frame.y[1] ? null : (
          <circle key={index} className="dot" cx={x} cy={yOf(frame, value).toFixed(1)} r="3" />
        ),
      )}
    </g>
  );
};
