import type { PlacedCorner, SideName } from '../../geometry/index';
import type { AxleContent, OverlayContent } from './overlayContent';
import type { OverlayItem } from './overlayTypes';
import type { Point } from './points';

const SIDE_MARK = { left: 'dot', right: 'square' } as const;

/** Points of the knuckle whose paths the instant centre is the centre of: joints that two links share, the strut's top. */
const knucklePoints = (corner: PlacedCorner): readonly Point[] => {
  if (corner.strut) return [corner.strut.top, ...(corner.arm ? [corner.arm[2]] : [])];
  const outers = corner.rods.map(({ outer }) => outer);
  const shared = outers.filter((outer, index) => outers.findIndex((other) => String(other) === String(outer)) !== index);
  return shared.length > 0 ? shared : [corner.wheelCentre];
};

/** One instant centre with the line to it from the contact centre, and thinner those from the joints. */
const centreOf = (content: AxleContent, side: SideName, centre: Point, name: string): OverlayItem[] => {
  const { toGround } = content.frame;
  const corner = content.placed[side];
  const to = toGround(centre);
  const contact = toGround(corner.contactCentre);
  return [
    ...knucklePoints(corner).map((from): OverlayItem => ({
      kind: 'ray',
      className: `made ${side}`,
      from: toGround(from),
      to,
      text: null,
    })),
    { kind: 'ray', className: `construct ${side}`, from: contact, to, text: `${side} ${name}` },
    { kind: 'mark', className: `sidemark ${side}`, shape: SIDE_MARK[side], at: contact },
    { kind: 'mark', className: `centremark ${side}`, shape: 'ring', at: to },
  ];
};

/** Front- and side-view instant centres of one corner: those that lie in the plane that a view looks at. */
export const instantCentreItems = (content: AxleContent, side: SideName, view: OverlayContent['view']): OverlayItem[] => {
  const corner = content.placed[side];
  const [x, y] = corner.contactCentre;
  const [front, across] = [corner.frontViewInstantCentre, corner.sideViewInstantCentre];
  const items: OverlayItem[] = [];
  if (front && view !== 'side' && view !== 'wheel') {
    items.push(
      ...centreOf(content, side, [x, front[0], front[1]], view === 'front' ? 'instant centre' : 'front-view instant centre'),
    );
  }
  if (across && view !== 'front') {
    items.push(
      ...centreOf(content, side, [across[0], y, across[1]], view === 'side' ? 'instant centre' : 'side-view instant centre'),
    );
  }
  return items;
};

/** Over the line that joins the contact centres, as the reading has it: those leave the floor by hundredths as the camber changes. */
const heightOver = ({ placed, frame }: AxleContent, [, y, z]: Point): number => {
  const [[, yl, zl], [, yr, zr]] = [frame.toGround(placed.left.contactCentre), frame.toGround(placed.right.contactCentre)];
  const [dy, dz] = [yl - yr, zl - zr];
  return ((z - (zl + zr) / 2) * dy - (y - (yl + yr) / 2) * dz) / Math.sqrt(dy * dy + dz * dz);
};

/** @param of - "front " or "rear " where both axles are shown */
const rollCentreWords = (up: number, y: number, words: OverlayContent['lengthWords'], of: string): string => {
  const height = `${of}roll centre ${words(Math.abs(up), 1)} ${up < 0 ? 'below ground' : 'high'}`;
  return Math.abs(y) < 0.05 ? height : `${height}, ${words(Math.abs(y), 1)} ${y > 0 ? 'left' : 'right'}`;
};

/** Ring and cross on a disc, its height over the ground and its offset from the car's middle dimensioned. */
export const rollCentreItems = (
  axle: AxleContent,
  { view, scope, lengthWords }: Pick<OverlayContent, 'view' | 'scope' | 'lengthWords'>,
): OverlayItem[] => {
  const { name, placed, frame } = axle;
  if (!placed.rollCentre) return [];
  const at = frame.toGround(placed.rollCentre);
  const [x, y, z] = at;
  const words = rollCentreWords(heightOver(axle, at), y, lengthWords, scope === 'car' ? `${name} ` : '');
  const items: OverlayItem[] = [
    { kind: 'ray', className: 'thin', from: [x, 0, 0], to: at, text: words, onlyFar: true },
    { kind: 'line', className: 'thin', points: [at, [x, y, 0]] },
    { kind: 'mark', className: 'rcdisc', shape: 'disc', at },
    { kind: 'mark', className: 'rollcentre', shape: 'target', at },
  ];
  if (view === 'front' && Math.abs(y) > 1)
    items.push({
      kind: 'line',
      className: 'thin',
      points: [
        [x, 0, z - Math.sign(z) * Math.min(18, Math.abs(z) / 2)],
        [x, y, z - Math.sign(z) * Math.min(18, Math.abs(z) / 2)],
      ],
    });
  return [...items, { kind: 'label', text: words, at, reach: [0, -64], strong: true, plated: true }];
};

/** Both roll centres joined, a little past each. */
export const rollAxisItems = ({ axles }: OverlayContent): OverlayItem[] => {
  const centres = axles.flatMap(({ placed, frame }) => (placed.rollCentre ? [frame.toGround(placed.rollCentre)] : []));
  const [a, b] = centres;
  if (!a || !b) return [];
  const past = (share: number): Point => [
    a[0] + (b[0] - a[0]) * share,
    a[1] + (b[1] - a[1]) * share,
    a[2] + (b[2] - a[2]) * share,
  ];
  return [
    { kind: 'line', className: 'axishalo', points: [past(-0.08), past(1.08)] },
    { kind: 'line', className: 'axis', points: [past(-0.08), past(1.08)] },
    { kind: 'label', text: 'roll axis', at: past(0.5), reach: [0, -24], strong: true, plated: true },
  ];
};

/** What the floor is graduated in: a tick in mm, how many of them have a figure, and what the figure says of one. */
const FLOOR_RULE = { mm: { mm: 100, figure: 3, worth: 100 }, in: { mm: 4 * 25.4, figure: 3, worth: 4 } } as const;

/**
 * The floor in the views square to the car: its line, ticks and figures from the middle in the chosen unit, which the first figure
 * of either side says; and the car's middle.
 */
export const floorItems = ({ axles, view, sides, roll, lengthUnit }: OverlayContent): OverlayItem[] => {
  const [first] = axles;
  if (!first || view !== 'front') return [];
  const { placed, frame } = first;
  const [x, y] = frame.toGround(placed[sides[0] ?? 'left'].contactCentre);
  const rule = FLOOR_RULE[lengthUnit];
  const ticks = Math.ceil((Math.abs(y) + 220) / rule.mm);
  const half = ticks * rule.mm;
  const [from, to] = [sides.includes('right') ? -half : 0, sides.includes('left') ? half : 0];
  const items: OverlayItem[] = [
    {
      kind: 'line',
      className: 'floor',
      points: [
        [x, from, 0],
        [x, to, 0],
      ],
    },
  ];
  for (let tick = Math.round(from / rule.mm); tick <= to / rule.mm; tick += 1) {
    const mm = tick * rule.mm;
    const isFigure = tick % rule.figure === 0;
    const long = isFigure ? 22 : 12;
    items.push({
      kind: 'line',
      className: 'tick',
      points: [
        [x, mm, 0],
        [x, mm, -long],
      ],
    });
    const unit = Math.abs(tick) === rule.figure ? ` ${lengthUnit}` : '';
    if (isFigure)
      items.push({ kind: 'label', text: `${Math.abs(tick) * rule.worth}${unit}`, at: [x, mm, -long], reach: [0, 12] });
  }
  if (sides.length < 2) return items;
  const top = frame.toGround([placed.left.contactCentre[0], 0, placed.left.wheelCentre[2] + first.wheelRadius]);
  const foot = frame.toGround([placed.left.contactCentre[0], 0, placed.ground.point[2]]);
  items.push({ kind: 'line', className: 'bodyline', points: [foot, top] });
  if (roll !== null) items.push({ kind: 'label', text: roll, at: top, reach: [0, -16], strong: true });
  return items;
};
