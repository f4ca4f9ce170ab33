import type { Vector } from '../../../geometry/index';
import { overlaps, type LabelBox } from '../../viewport/labelPlaces';
import type { ScreenPoint } from '../../viewport/screenLines';
import type { DrawnForce, DrawnGap } from './fitUpContent';

const SVG = 'http://www.w3.org/2000/svg';

type Place = (point: Vector) => readonly [number, number, number] | null;
interface Size {
  readonly width: number;
  readonly height: number;
}

/** Lines and words over the picture that are made anew at every frame. */
export interface MarksLayer {
  readonly begin: () => void;
  readonly path: (className: string, d: string) => void;
  readonly words: (
    className: string,
    text: string,
    at: readonly [number, number],
    anchor?: 'start' | 'middle' | 'end',
  ) => SVGTextElement;
  readonly end: () => void;
  readonly remove: () => void;
}

export const marksLayer = (parent: SVGSVGElement): MarksLayer => {
  const group = document.createElementNS(SVG, 'g');
  parent.append(group);
  let made: SVGElement[] = [];
  const add = <Kind extends SVGElement>(tag: string, className: string): Kind => {
    const element = document.createElementNS(SVG, tag) as Kind;
    element.setAttribute('class', className);
    made.push(element);
    group.append(element);
    return element;
  };
  return {
    begin: () => {
      made.forEach((element) => element.remove());
      made = [];
      parent.append(group);
    },
    path: (className, d) => add('path', className).setAttribute('d', d),
    words: (className, text, [x, y], anchor = 'start') => {
      const element = add<SVGTextElement>('text', className);
      element.setAttribute('x', x.toFixed(1));
      element.setAttribute('y', y.toFixed(1));
      element.setAttribute('text-anchor', anchor);
      element.textContent = text;
      return element;
    },
    end: () => undefined,
    remove: () => group.remove(),
  };
};

const at = ([x, y]: readonly [number, number, ...number[]]): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** Half of the stroke that ends a dimension [px]. */
const TICK = 9;
/** Where the figure of a gap stands from its middle [px]. */
const FIGURE = { right: 96, up: 84 } as const;
const FIGURE_BOX = { width: 124, height: 46 } as const;

/** The line between the two points, a stroke at each, and the figure at a leader's end. */
export const drawGap = (
  { path, words }: MarksLayer,
  { points, figure, needs, cuts, verdict }: DrawnGap,
  place: Place,
  { width, height }: Size,
  blocked: readonly LabelBox[],
): void => {
  const [from, to] = points.map(place);
  if (!from || !to) return;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.sqrt(dx * dx + dy * dy);
  const [ux, uy] = size > 0.5 ? [dx / size, dy / size] : [1, 0];
  const strokes = [from, to]
    .map(([x, y]) => `M${at([x - uy * TICK, y + ux * TICK])}L${at([x + uy * TICK, y - ux * TICK])}`)
    .join('');
  path('gaphalo', `M${at(from)}L${at(to)}${strokes}`);
  path(`gapline ${verdict}${cuts ? ' cuts' : ''}`, `M${at(from)}L${at(to)}${strokes}`);
  const middle: ScreenPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  // the corner of the view around the gap in which the figure is in sight and covers nothing that stands over the view
  const seats = [
    [1, -1],
    [-1, -1],
    [1, 1],
    [-1, 1],
  ].map(([x = 1, y = -1]) => {
    const end: readonly [number, number] = [middle[0] + x * FIGURE.right, middle[1] + y * FIGURE.up];
    const box: LabelBox = {
      x: x > 0 ? end[0] : end[0] - FIGURE_BOX.width,
      y: end[1] - FIGURE_BOX.height / 2,
      ...FIGURE_BOX,
    };
    return { x, end, box };
  });
  const isFree = ({ box }: (typeof seats)[number]): boolean =>
    box.x > 4 &&
    box.y > 4 &&
    box.x + box.width < width - 4 &&
    box.y + box.height < height - 4 &&
    !blocked.some((other) => overlaps(box, other));
  const seat = seats.find(isFree) ?? seats[0];
  if (!seat) return;
  const { end, x } = seat;
  path(`gapleader ${verdict}`, `M${at(middle)}L${at(end)}h${x * FIGURE_BOX.width}`);
  const anchor = x > 0 ? 'start' : 'end';
  words(`gapfigure ${verdict}`, figure, [end[0] + 4 * x, end[1] - 6], anchor);
  words('gapneeds', needs, [end[0] + 4 * x, end[1] + 16], anchor);
};

/** A ring where the picture is, and what the small picture is. */
export const drawLocator = (
  { path, words }: MarksLayer,
  { x, y, width, height }: LabelBox,
  point: readonly [number, number, number] | null,
): void => {
  path('locatorframe', `M${x} ${y}h${width}v${height}h${-width}Z`);
  if (point) {
    const r = 11;
    path('locatorring', `M${at([x + point[0] - r, y + point[1]])}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`);
  }
  words('locatorwords', 'where on the corner', [x + 6, y + height - 6]);
};

const LABEL_HEIGHT = 20;

/** Arrows at the screen's width, each with its number and word, where there is room for it. */
export const drawForces = (
  { path, words }: MarksLayer,
  forces: readonly DrawnForce[],
  place: Place,
  { width, height }: Size,
  blocked: readonly LabelBox[],
): void => {
  const taken: LabelBox[] = [...blocked];
  const labels: { readonly text: string; readonly box: LabelBox }[] = [];
  for (const { at: foot, arrow, kind, label } of forces) {
    const from = place(foot);
    const to = place([foot[0] + arrow[0], foot[1] + arrow[1], foot[2] + arrow[2]]);
    if (!from || !to) continue;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const size = Math.sqrt(dx * dx + dy * dy);
    if (size < 3) continue;
    const [ux, uy] = [dx / size, dy / size];
    const [long, wide] = kind === 'given' ? [20, 11] : [14, 7];
    const neck = [to[0] - ux * long, to[1] - uy * long] as const;
    path(`force ${kind}`, `M${at(from)}L${at(neck)}`);
    const left = [neck[0] - uy * wide, neck[1] + ux * wide] as const;
    const right = [neck[0] + uy * wide, neck[1] - ux * wide] as const;
    path(`forcehead ${kind}`, `M${at(left)}L${at([to[0], to[1]])}L${at(right)}Z`);
    if (label === '') continue;
    const wideBox = 14 + label.length * 7.2;
    const seats = [
      [to[0] + (ux >= 0 ? 8 : -8 - wideBox), to[1] - LABEL_HEIGHT / 2],
      [to[0] - wideBox / 2, to[1] + (uy >= 0 ? 8 : -8 - LABEL_HEIGHT)],
      [to[0] + 12, to[1] - 30],
      [to[0] - 12 - wideBox, to[1] - 30],
      [to[0] + 12, to[1] + 14],
      [to[0] - 12 - wideBox, to[1] + 14],
    ].map(([x = 0, y = 0]): LabelBox => ({ x, y, width: wideBox, height: LABEL_HEIGHT }));
    const seat = seats.find(
      (box) =>
        box.x > 2 &&
        box.y > 2 &&
        box.x + box.width < width - 2 &&
        box.y + box.height < height - 2 &&
        !taken.some((other) => overlaps(box, other)),
    );
    if (!seat) continue;
    taken.push(seat);
    labels.push({ text: label, box: seat });
  }
  for (const { text, box } of labels) {
    path('tagplate', `M${at([box.x, box.y])}h${box.width.toFixed(1)}v${box.height}h${(-box.width).toFixed(1)}Z`);
    words('forcewords', text, [box.x + box.width / 2, box.y + 14], 'middle');
  }
};
