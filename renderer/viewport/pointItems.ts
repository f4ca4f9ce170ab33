import { nameOfKey } from '../adjusters/fitterWords';
import { isAtEye } from './dragTarget';
import { aimedEnd, placeOf, turnedToGround, type AxleContent, type OverlayContent } from './overlayContent';
import type { SideName } from '../../geometry/index';
import type { PointRef } from '../state/viewing';
import type { OverlayItem } from './overlayTypes';
import { along, between, direction, separation, type Point } from './points';

export const AXES: readonly { readonly name: 'x' | 'y' | 'z'; readonly direction: Point }[] = [
  { name: 'x', direction: [1, 0, 0] },
  { name: 'y', direction: [0, 1, 0] },
  { name: 'z', direction: [0, 0, 1] },
];

/** The arms that a point is dragged by: one along each axis of the car that does not point at the eye. */
export const armsOf = ({ axles, chosen, handles, eye }: OverlayContent): readonly { name: 'x' | 'y' | 'z'; end: Point }[] => {
  const frame = axles.find(({ name }) => name === chosen?.ref.axle)?.frame;
  const at = chosen && placeOf({ axles }, chosen.ref);
  if (!frame || !at || handles === null) return [];
  const away = direction(eye, at);
  return AXES.flatMap(({ name, direction: axis }) => {
    const turned = turnedToGround(frame, axis);
    return isAtEye(turned, away) ? [] : [{ name, end: along(at, turned, handles) }];
  });
};

/** Names of all points of a corner, each pointing away from the wheel's middle. */
export const nameItems = ({ placed, frame }: AxleContent, side: SideName, words: (name: string) => string): OverlayItem[] => {
  const corner = placed[side];
  return Object.entries(corner.points).map(([name, point]): OverlayItem => {
    const up = point[2] >= corner.wheelCentre[2] ? -1 : 1;
    return { kind: 'label', text: words(name), at: frame.toGround(point), reach: [16, 15 * up] };
  });
};

const isSamePoint = (a: PointRef, b: PointRef): boolean => a.axle === b.axle && a.side === b.side && a.point === b.point;

/** The chosen point: its ring, its path over bump with a mark at both ends, and the arms it is dragged by. */
export const chosenItems = (content: OverlayContent): OverlayItem[] => {
  const { chosen, hovered, overlays } = content;
  const items: OverlayItem[] = [];
  if (chosen) {
    const at = placeOf(content, chosen.ref);
    if (at) {
      const [first, last] = [chosen.path[0], chosen.path.at(-1)];
      if (overlays.includes('path') && first && last) {
        items.push({ kind: 'line', className: 'pathhalo', points: chosen.path });
        items.push({ kind: 'line', className: 'path', points: chosen.path });
        items.push({ kind: 'mark', className: 'pathend', shape: 'ring', at: first });
        items.push({ kind: 'mark', className: 'pathend', shape: 'ring', at: last });
      }
      for (const { name, end } of armsOf(content)) {
        items.push({ kind: 'line', className: 'arm', points: [at, end] });
        items.push({ kind: 'mark', className: 'armend', shape: 'square', at: end });
        items.push({ kind: 'label', text: name.toUpperCase(), at: end, reach: [0, -15], strong: true });
      }
      items.push({ kind: 'mark', className: 'chosen', shape: 'target', at });
      // Lines name every point already, as the file does.
      if (!content.schematic)
        items.push({ kind: 'label', text: nameOfKey(chosen.ref.point), at, reach: [22, -24], strong: true });
    }
  }
  if (hovered && !(chosen && isSamePoint(hovered, chosen.ref))) {
    const at = placeOf(content, hovered);
    if (at) {
      items.push({ kind: 'mark', className: 'hovered', shape: 'ring', at });
      if (!content.schematic) items.push({ kind: 'label', text: nameOfKey(hovered.point), at, reach: [18, -20], strong: true });
    }
  }
  return items;
};

/** A direction to be aimed: its line from the point, and the ring at its end that is dragged. */
export const aimItems = (content: OverlayContent): OverlayItem[] => {
  const { aim } = content;
  const from = aim && placeOf(content, aim.from);
  const end = aimedEnd(content);
  if (!from || !end) return [];
  return [
    { kind: 'line', className: 'arm', points: [from, end] },
    { kind: 'mark', className: 'armend', shape: 'ring', at: end },
  ];
};

/** Steps nearer to one another than this share of an axis would run together: they are drawn once the eye is near enough. */
const TELLING = 1 / 7;

/**
 * The range of an adjuster that is being made: thick from end to end and true to scale, its steps as dots, how far each end is
 * from design, and the car's axes thin beside it.
 */
export const rangeItems = (content: OverlayContent): OverlayItem[] => {
  const { range, lengthWords } = content;
  const from = range && placeOf(content, range.from);
  const frame = content.axles.find(({ name }) => name === range?.from.axle)?.frame;
  const [first, last] = [range?.marks[0], range?.marks.at(-1)];
  if (!range || !from || !frame || first === undefined || last === undefined) return [];
  const line = turnedToGround(frame, direction([0, 0, 0], range.direction));
  const at = (mark: number): Point => along(from, line, mark);
  const words = (mark: number): string => {
    const moved = mark - range.design;
    return `${moved < 0 ? '−' : '+'}${lengthWords(Math.abs(moved), 1)}`;
  };
  const steps = range.marks.slice(1, -1);
  const isTelling = (last - first) / Math.max(1, range.marks.length - 1) > range.reach * TELLING;
  return [
    ...AXES.flatMap((axis): OverlayItem[] => {
      const end = along(from, turnedToGround(frame, axis.direction), range.reach);
      return [
        { kind: 'line', className: 'rangeaxis', points: [from, end] },
        { kind: 'label', text: axis.name.toUpperCase(), at: end, reach: [0, -12] },
      ];
    }),
    { kind: 'line', className: 'rangehalo', points: [at(first), at(last)] },
    { kind: 'line', className: 'range', points: [at(first), at(last)] },
    ...(isTelling ? steps : []).map((mark): OverlayItem => ({
      kind: 'mark',
      className: 'rangestep',
      shape: 'dot',
      at: at(mark),
    })),
    { kind: 'mark', className: 'rangeend', shape: 'cross', at: at(first) },
    { kind: 'mark', className: 'rangeend', shape: 'cross', at: at(last) },
    { kind: 'label', text: words(first), at: at(first), reach: [18, 22], strong: true },
    { kind: 'label', text: words(last), at: at(last), reach: [18, -22], strong: true },
  ];
};

/** A tape between two points, its length written at its middle. */
export const tapeItems = (content: OverlayContent): OverlayItem[] => {
  const { tape } = content;
  const [from, to] = [tape && placeOf(content, tape[0]), tape && placeOf(content, tape[1])];
  if (!from || !to) return [];
  return [
    { kind: 'line', className: 'tapehalo', points: [from, to] },
    { kind: 'line', className: 'tape', points: [from, to] },
    { kind: 'mark', className: 'tapeend', shape: 'cross', at: from },
    { kind: 'mark', className: 'tapeend', shape: 'cross', at: to },
    {
      kind: 'label',
      text: content.lengthWords(separation(from, to), 2),
      at: between(from, to, 0.5),
      reach: [14, -18],
      strong: true,
    },
  ];
};
