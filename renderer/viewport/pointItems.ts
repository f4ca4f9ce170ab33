import { nameOfKey } from '../adjusters/fitterWords';
import { turnedToGround, placeOf, type AxleContent, type OverlayContent } from './overlayContent';
import type { SideName } from '../../geometry/index';
import type { OverlayItem } from './overlayTypes';
import { along, between, direction, separation, type Point } from './points';

export const AXES: readonly { readonly name: 'x' | 'y' | 'z'; readonly direction: Point }[] = [
  { name: 'x', direction: [1, 0, 0] },
  { name: 'y', direction: [0, 1, 0] },
  { name: 'z', direction: [0, 0, 1] },
];

/** Names of all points of a corner, each pointing away from the wheel's middle. */
export const nameItems = ({ placed, frame }: AxleContent, side: SideName, words: (name: string) => string): OverlayItem[] => {
  const corner = placed[side];
  return Object.entries(corner.points).map(([name, point]): OverlayItem => {
    const up = point[2] >= corner.wheelCentre[2] ? -1 : 1;
    return { kind: 'label', text: words(name), at: frame.toGround(point), reach: [16, 15 * up] };
  });
};

/** The chosen point: its ring, its path over bump with a mark at both ends, and the arms it is dragged by. */
export const chosenItems = (content: OverlayContent): OverlayItem[] => {
  const { chosen, hovered, handles, overlays } = content;
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
      const frame = content.axles.find(({ name }) => name === chosen.ref.axle)?.frame;
      if (handles !== null && frame) {
        for (const axis of AXES) {
          const end = along(at, turnedToGround(frame, axis.direction), handles);
          items.push({ kind: 'line', className: 'arm', points: [at, end] });
          items.push({ kind: 'mark', className: 'armend', shape: 'square', at: end });
          items.push({ kind: 'label', text: axis.name.toUpperCase(), at: end, reach: [0, -15], strong: true });
        }
      }
      items.push({ kind: 'mark', className: 'chosen', shape: 'target', at });
      // Lines name every point already, as the file does.
      if (!content.schematic)
        items.push({ kind: 'label', text: nameOfKey(chosen.ref.point), at, reach: [22, -24], strong: true });
    }
  }
  if (hovered && String(Object.values(hovered)) !== String(Object.values(chosen?.ref ?? {}))) {
    const at = placeOf(content, hovered);
    if (at) {
      items.push({ kind: 'mark', className: 'hovered', shape: 'ring', at });
      items.push({ kind: 'label', text: nameOfKey(hovered.point), at, reach: [18, -20], strong: true });
    }
  }
  return items;
};

/** A direction to be aimed: its line from the point, and the ring at its end that is dragged. */
export const aimItems = (content: OverlayContent): OverlayItem[] => {
  const { aim } = content;
  const from = aim && placeOf(content, aim.from);
  const frame = content.axles.find(({ name }) => name === aim?.from.axle)?.frame;
  if (!aim || !from || !frame) return [];
  const end = along(from, turnedToGround(frame, direction([0, 0, 0], aim.direction)), aim.reach);
  return [
    { kind: 'line', className: 'arm', points: [from, end] },
    { kind: 'mark', className: 'armend', shape: 'ring', at: end },
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
