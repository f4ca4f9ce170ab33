import type { Range } from './plotScale';

/** Where a plot's frame lies in its drawing, and the numbers at its edges. Pixels; y runs down. */
export interface PlotFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Range;
  readonly y: Range;
}

export const xOf = ({ left, right, x }: PlotFrame, input: number): number =>
  left + ((input - x[0]) / (x[1] - x[0])) * (right - left);
export const yOf = ({ top, bottom, y }: PlotFrame, value: number): number =>
  bottom - ((value - y[0]) / (y[1] - y[0])) * (bottom - top);
export const inputOf = ({ left, right, x }: PlotFrame, at: number): number =>
  x[0] + ((at - left) / (right - left)) * (x[1] - x[0]);
export const valueOf = ({ top, bottom, y }: PlotFrame, at: number): number =>
  y[0] + ((bottom - at) / (bottom - top)) * (y[1] - y[0]);

const FAR = 1e5;
const pixel = (at: number): string => Math.min(FAR, Math.max(-FAR, at)).toFixed(1);

/** A line as an SVG path: it is lifted where there is no number. A lone point is drawn as a dot. */
export const linePath = (frame: PlotFrame, inputs: Float64Array, values: Float64Array): string => {
  let path = '';
  let drawing = false;
  inputs.forEach((input, index) => {
    const value = values[index] ?? NaN;
    if (Number.isNaN(value)) {
      drawing = false;
      return;
    }
    const point = `${pixel(xOf(frame, input))},${pixel(yOf(frame, value))}`;
    const alone = !drawing && Number.isNaN(values[index + 1] ?? NaN);
    path += drawing ? `L${point}` : `M${point}${alone ? 'h0.1' : ''}`;
    drawing = true;
  });
  return path;
};

/** Whether two lines lie within a distance of each other everywhere, gaps at the same places. */
export const isSameLine = (one: Float64Array, other: Float64Array, distance: number): boolean =>
  one.every((value, index) => {
    const second = other[index] ?? NaN;
    return Number.isNaN(value) || Number.isNaN(second)
      ? Number.isNaN(value) && Number.isNaN(second)
      : Math.abs(value - second) <= distance;
  });

/** A stretch without numbers, between the last position that has one and the next; its reason in the engine's words. */
export interface Gap {
  readonly from: number;
  readonly to: number;
  readonly why: string;
}

/** The stretches of a line that have no number. */
export const gapsOf = (inputs: Float64Array, values: Float64Array, why: (index: number) => string | null): readonly Gap[] => {
  const gaps: Gap[] = [];
  for (let index = 0; index < values.length; index += 1) {
    if (!Number.isNaN(values[index])) continue;
    const first = index;
    while (index + 1 < values.length && Number.isNaN(values[index + 1])) index += 1;
    gaps.push({
      from: inputs[Math.max(0, first - 1)] ?? NaN,
      to: inputs[Math.min(values.length - 1, index + 1)] ?? NaN,
      why: why(first) ?? 'no value here',
    });
  }
  return gaps;
};

/** Which of the lines a marker belongs to decides where along the motion it stands, so that markers do not cover each other. */
const STAGGER = { left: 0.25, right: 0.58, compared: 0.92 } as const;

/** The positions that carry a marker, one in every `spacing` of the motion. */
export const markerIndexes = (
  inputs: Float64Array,
  values: Float64Array,
  spacing: number,
  of: keyof typeof STAGGER,
): readonly number[] => {
  const indexes: number[] = [];
  let next = Math.ceil((inputs[0] ?? 0) / spacing - STAGGER[of]);
  inputs.forEach((input, index) => {
    const wanted = (next + STAGGER[of]) * spacing;
    if (input < wanted - 1e-9) return;
    next = Math.floor(input / spacing - STAGGER[of] + 1e-9) + 1;
    if (!Number.isNaN(values[index])) indexes.push(index);
  });
  return indexes;
};

/** The last position of a line that has a number and is inside a frame; null where none is. */
export const lastInside = (frame: PlotFrame, inputs: Float64Array, values: Float64Array): { x: number; y: number } | null => {
  for (let index = inputs.length - 1; index >= 0; index -= 1) {
    const [input, value] = [inputs[index] ?? NaN, values[index] ?? NaN];
    if (value >= frame.y[0] && value <= frame.y[1] && input >= frame.x[0] && input <= frame.x[1] + 1e-9)
      return { x: xOf(frame, input), y: yOf(frame, value) };
  }
  return null;
};
