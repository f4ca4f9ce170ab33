import { placeLabel, type LabelBox } from './labelPlaces';
import type { OverlayItem } from './overlayItems';
import type { Point } from './camera';

/** Screen place of a point [px]; null behind the eye. */
export type Project = (point: Point) => readonly [number, number] | null;

const SVG = 'http://www.w3.org/2000/svg';
const RING = 5;

const MARKS = {
  ring: `M${-RING} 0a${RING} ${RING} 0 1 0 ${2 * RING} 0a${RING} ${RING} 0 1 0 ${-2 * RING} 0`,
  cross: 'M-7 0H7M0-7V7',
  diamond: 'M0-6L6 0 0 6-6 0Z',
  target: 'M-9 0a9 9 0 1 0 18 0a9 9 0 1 0 -18 0M-14 0H14M0-14V14',
} as const;

const text = (value: number): string => value.toFixed(1);

/**
 * Lines, marks and words over the picture, kept at the screen's width. Elements are used again from one drawing to the
 * next; React has no part in it.
 */
export const buildOverlay = (
  svg: SVGSVGElement,
): { readonly draw: (items: readonly OverlayItem[], project: Project, width: number, height: number) => void } => {
  const paths: SVGPathElement[] = [];
  const words: SVGTextElement[] = [];
  const take = <Kind extends SVGElement>(pool: Kind[], index: number, tag: string): Kind => {
    const known = pool[index];
    if (known) return known;
    const made = document.createElementNS(SVG, tag) as Kind;
    pool.push(made);
    svg.append(made);
    return made;
  };

  const draw = (items: readonly OverlayItem[], project: Project, width: number, height: number): void => {
    const area: LabelBox = { x: 6, y: 6, width: width - 108, height: height - 12 };
    const taken: LabelBox[] = [];
    let used = 0;
    let written = 0;
    const path = (className: string, d: string): void => {
      const element = take(paths, used, 'path');
      used += 1;
      element.setAttribute('class', className);
      element.setAttribute('d', d);
    };
    // Words are placed last, clear of the marks.
    const isWords = (item: OverlayItem): boolean => item.kind === 'label';
    for (const item of [...items.filter((one) => !isWords(one)), ...items.filter(isWords)]) {
      if (item.kind === 'line') {
        const points = item.points.map(project).filter((point) => point !== null);
        if (points.length > 1) path(item.className, `M${points.map(([x, y]) => `${text(x)} ${text(y)}`).join('L')}`);
        continue;
      }
      const at = project(item.at);
      if (!at) continue;
      if (item.kind === 'mark') {
        const element = take(paths, used, 'path');
        used += 1;
        element.setAttribute('class', item.className);
        element.setAttribute('d', MARKS[item.shape]);
        element.setAttribute('transform', `translate(${text(at[0])} ${text(at[1])})`);
        if (item.shape === 'target') taken.push({ x: at[0] - 14, y: at[1] - 14, width: 28, height: 28 });
        continue;
      }
      const box = placeLabel(item.text, at, item.reach, taken, area);
      if (!box) continue;
      taken.push(box);
      const edge = Math.min(Math.max(at[0], box.x + 2), box.x + box.width - 2);
      const near = at[1] < box.y ? box.y + 1 : at[1] > box.y + box.height ? box.y + box.height - 1 : box.y + box.height / 2;
      path('leader', `M${text(at[0])} ${text(at[1])}L${text(edge)} ${text(near)}`);
      const element = take(words, written, 'text');
      written += 1;
      element.setAttribute('class', item.strong ? 'tag strong' : 'tag');
      element.setAttribute('x', text(box.x + box.width / 2));
      element.setAttribute('y', text(box.y + 12.5));
      if (element.textContent !== item.text) element.textContent = item.text;
    }
    paths.forEach((element, index) => {
      if (index >= used) element.setAttribute('d', '');
      else if (!element.getAttribute('class')?.match(/mark|contact|pierced|rollcentre/)) element.removeAttribute('transform');
    });
    words.slice(written).forEach((element) => (element.textContent = ''));
    // Words stand over every line.
    svg.append(...words);
  };
  return { draw };
};
