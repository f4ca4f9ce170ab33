import { overlaps, placeLabels, type LabelBox, type PlacedLabel, type WantedLabel } from './labelPlaces';
import type { OverlayItem } from './overlayTypes';
import { clipRay, convexHull, type Project, type ScreenPoint } from './screenLines';

const SVG = 'http://www.w3.org/2000/svg';
const RING = 5;
/** Half-size of what stands clear of labels about a mark [px]. */
const CLEAR = 8;
/** How far a plate reaches past the box of its label, on either side [px]; less than the gap between labels. */
const PLATE = 1.5;

const circle = (radius: number): string =>
  `M${-radius} 0a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;

const MARKS = {
  ring: circle(RING),
  cross: 'M-7 0H7M0-7V7',
  diamond: 'M0-6L6 0 0 6-6 0Z',
  target: `${circle(9)}M-14 0H14M0-14V14`,
  square: 'M-5-5H5V5H-5Z',
  dot: circle(4.5),
  disc: circle(17),
} as const;

/** Where a line between two places of the screen crosses a level of x or y; null where it runs along it. */
const crossing = (a: ScreenPoint, b: ScreenPoint, axis: 0 | 1, level: number): number | null => {
  const run = b[axis] - a[axis];
  const other = axis === 0 ? 1 : 0;
  return Math.abs(run) < 1 ? null : a[other] + ((level - a[axis]) / run) * (b[other] - a[other]);
};

const text = (value: number): string => value.toFixed(1);
const line = (points: readonly (readonly [number, number, ...number[]])[]): string =>
  `M${points.map(([x, y]) => `${text(x)} ${text(y)}`).join('L')}`;

/** The head of an arrow at the end of a line on the screen. */
const arrowHead = ([x0, y0]: ScreenPoint, [x, y]: ScreenPoint): string => {
  const length = Math.sqrt((x - x0) * (x - x0) + (y - y0) * (y - y0));
  if (length < 1) return '';
  const [ux, uy] = [(x - x0) / length, (y - y0) / length];
  return `${line([
    [x - 11 * ux - 5 * uy, y - 11 * uy + 5 * ux],
    [x, y],
    [x - 11 * ux + 5 * uy, y - 11 * uy - 5 * ux],
  ])}Z`;
};

export interface OverlayFrame {
  readonly project: Project;
  readonly width: number;
  readonly height: number;
  /** what stands over the view and must not be written on [px] */
  readonly blocked: readonly LabelBox[];
  readonly lengthWords: (mm: number, decimals: number) => string;
}

export interface Overlay {
  readonly draw: (items: readonly OverlayItem[], frame: OverlayFrame) => void;
  readonly place: (x: number, y: number, width: number, height: number) => void;
  readonly remove: () => void;
}

/**
 * Lines, marks and words over the picture, kept at the screen's width. Elements are used again from one drawing to the
 * next; React has no part in it.
 */
export const buildOverlay = (parent: SVGSVGElement): Overlay => {
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('overflow', 'hidden');
  parent.append(svg);
  const paths: SVGPathElement[] = [];
  const words: SVGTextElement[] = [];
  const ruler = document.createElementNS(SVG, 'text');
  ruler.setAttribute('class', 'tag');
  ruler.setAttribute('visibility', 'hidden');
  svg.append(ruler);
  const widths = new Map<string, number>();
  const widthOf = (words: string): number => {
    const known = widths.get(words);
    if (known !== undefined) return known;
    ruler.textContent = words;
    const width = ruler.getComputedTextLength();
    ruler.textContent = '';
    // Widths are those of the fallback until the typeface is there.
    if (document.fonts.status === 'loaded') widths.set(words, width);
    return width;
  };
  const take = <Kind extends SVGElement>(pool: Kind[], index: number, tag: string): Kind => {
    const known = pool[index];
    if (known) return known;
    const made = document.createElementNS(SVG, tag) as Kind;
    pool.push(made);
    svg.append(made);
    return made;
  };

  const draw = (items: readonly OverlayItem[], { project, width, height, blocked, lengthWords }: OverlayFrame): void => {
    const area: LabelBox = { x: 6, y: 6, width: width - 12, height: height - 12 };
    const taken: LabelBox[] = [...blocked];
    const wanted: WantedLabel[] = [];
    const numbers: PlacedLabel[] = [];
    /** A number at the edge where its line leaves the view, if nothing stands there. */
    const number = (words: string, middle: number, edge: 'left' | 'bottom'): void => {
      const wide = widthOf(words) + 6;
      const at = [edge === 'bottom' ? middle - wide / 2 : 3, edge === 'bottom' ? height - 20 : middle - 8.5] as const;
      const box: LabelBox = { x: at[0], y: at[1], width: wide, height: 17 };
      const isIn = at[0] >= 2 && at[0] + wide <= width - 2 && at[1] >= 2 && at[1] + 17 <= height - 2;
      if (!isIn || taken.some((other) => overlaps(box, other))) return;
      taken.push(box);
      numbers.push({ text: words, at, reach: [0, 0], strong: false, className: 'scale', depth: 0, box });
    };
    let used = 0;
    const path = (className: string, d: string, at?: readonly [number, number, ...number[]]): void => {
      const element = take(paths, used, 'path');
      used += 1;
      element.setAttribute('class', className);
      element.setAttribute('d', d);
      if (at) element.setAttribute('transform', `translate(${text(at[0])} ${text(at[1])})`);
      else element.removeAttribute('transform');
    };
    for (const item of items) {
      switch (item.kind) {
        case 'line': {
          const points = item.points.map(project).filter((point) => point !== null);
          if (points.length > 1) path(item.className, line(points));
          break;
        }
        case 'scale': {
          const [from, to] = item.points.map(project);
          if (!from || !to) break;
          path(item.className, line([from, to]));
          const [a, b] = [[from[0], from[1]] as const, [to[0], to[1]] as const];
          const middle = item.edge === 'bottom' ? crossing(a, b, 1, height) : crossing(a, b, 0, 0);
          if (middle !== null) number(item.text, middle, item.edge);
          break;
        }
        case 'hull': {
          const points = item.points.map(project).filter((point) => point !== null);
          const hull = convexHull(points.map(([x, y]) => [x, y] as const));
          if (hull.length > 2) path(item.className, `${line(hull)}Z`);
          break;
        }
        case 'ray': {
          const ray = clipRay(item.from, item.to, project, area);
          if (!ray || (item.onlyFar && ray.further === 0)) break;
          path(item.className, line([ray.from, ray.to]));
          const at = project(ray.last);
          if (!at) break;
          const outOfView = ray.further > 0;
          if (outOfView) path(`${item.className} arrow`, arrowHead(ray.from, ray.to));
          if (item.text === null) break;
          const words = outOfView ? `${item.text}, ${lengthWords(ray.further, 0)} further` : item.text;
          const inward = at[0] > width / 2 ? -26 : 26;
          wanted.push({ text: words, at: [at[0], at[1]], reach: [inward, -22], strong: true, plated: true, depth: at[2] });
          break;
        }
        case 'mark': {
          const at = project(item.at);
          if (!at) break;
          path(item.className, MARKS[item.shape], at);
          // Where something else was is only a hint; words may stand on it.
          if (item.shape !== 'disc' && item.shape !== 'diamond')
            taken.push({ x: at[0] - CLEAR, y: at[1] - CLEAR, width: 2 * CLEAR, height: 2 * CLEAR });
          break;
        }
        case 'label': {
          const at = project(item.at);
          if (at)
            wanted.push({
              text: item.text,
              at: [at[0], at[1]],
              reach: item.reach,
              strong: item.strong ?? false,
              plated: item.plated,
              className: item.className,
              depth: at[2],
            });
        }
      }
    }
    const named = placeLabels(wanted, widthOf, taken, area);
    const labels = [...numbers, ...named];
    for (const { at, box } of named) {
      const edge = Math.min(Math.max(at[0], box.x + 2), box.x + box.width - 2);
      const near = at[1] < box.y ? box.y + 1 : at[1] > box.y + box.height ? box.y + box.height - 1 : box.y + box.height / 2;
      path('leader', line([at, [edge, near]]));
    }
    for (const { box, plated } of labels) {
      const [x, y, wide] = [box.x - PLATE, box.y, box.width + 2 * PLATE];
      if (plated) path('tagplate', `M${text(x)} ${text(y)}h${text(wide)}v${text(box.height)}h${text(-wide)}Z`);
    }
    paths.slice(used).forEach((element) => element.setAttribute('d', ''));
    labels.forEach((label, index) => {
      const element = take(words, index, 'text');
      element.setAttribute(
        'class',
        `tag${label.strong ? ' strong' : ''}${label.plated ? ' plated' : ''} ${label.className ?? ''}`,
      );
      element.setAttribute('x', text(label.box.x + label.box.width / 2));
      element.setAttribute('y', text(label.box.y + 12.5));
      if (element.textContent !== label.text) element.textContent = label.text;
    });
    words.slice(labels.length).forEach((element) => (element.textContent = ''));
    // Words stand over every line.
    svg.append(...words);
  };

  return {
    draw,
    place: (x, y, width, height) => {
      for (const [name, value] of Object.entries({ x, y, width, height })) svg.setAttribute(name, text(value));
    },
    remove: () => svg.remove(),
  };
};
