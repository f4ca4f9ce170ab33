import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findSetup,
  placeAxle,
  readingsOfAxle,
  toMechanism,
  toRadians,
  type AxleName,
} from '../../../geometry/index';
import type { OverlayName } from '../../../renderer/state/viewing';
import { groundFrame } from '../../../renderer/viewport/groundFrame';
import type { AxleContent, OverlayContent } from '../../../renderer/viewport/overlayContent';
import { overlayItems } from '../../../renderer/viewport/overlayItems';
import type { OverlayItem, OverlayLine, OverlayRay } from '../../../renderer/viewport/overlayTypes';
import { separation, type Point } from '../../../renderer/viewport/points';
import { carDocument } from '../carUnderTest';

const document = carDocument('car-23');
const assembled = assembleCar(toMechanism(document), findSetup(document, 'Baseline') ?? {});
if (!assembled.ok) throw new Error('car 23 stands');
const car = assembled.value;

const placedAt = (position: Parameters<typeof placeAxle>[2], axle: AxleName = 'front') => {
  const placed = placeAxle(car, axle, position);
  if (!placed.ok) throw new Error('closes');
  return placed.value;
};

const axleAt = (position: Parameters<typeof placeAxle>[2], name: AxleName = 'front'): AxleContent => {
  const placed = placedAt(position, name);
  const axle = document[name];
  if (!axle) throw new Error('has the axle');
  const words = { trail: '7 mm', scrub: '4 mm', over: null };
  return {
    name,
    axle,
    placed,
    frame: groundFrame(placed.ground),
    compared: null,
    outlines: { left: false, right: false },
    wheelRadius: 322,
    tyreWidth: 235,
    words: { left: words, right: words },
  };
};

const contentOf = (position: Parameters<typeof placeAxle>[2], part: Partial<OverlayContent> = {}): OverlayContent => ({
  view: 'corner',
  scope: 'left',
  sides: ['left'],
  overlays: ['ghost', 'steeringAxis', 'rollCentre'],
  axles: [axleAt(position)],
  schematic: false,
  roll: null,
  held: { label: 'Plate across', point: 'strutTop' },
  chosen: null,
  hovered: null,
  tape: null,
  lengthWords: (mm, decimals) => `${mm.toFixed(decimals)} mm`,
  lengthUnit: 'mm',
  handles: null,
  eye: [2000, 2500, 900],
  aim: null,
  range: null,
  envelopes: [],
  tilts: [],
  ...part,
});

const classed = (items: readonly OverlayItem[], className: string) =>
  items.filter((item) => item.kind !== 'label' && item.className === className);
const labels = (items: readonly OverlayItem[]) => items.flatMap((item) => (item.kind === 'label' ? item.text : []));

describe('the ground frame', () => {
  test('lays the contact centres on the floor, in roll and bump too', () => {
    for (const position of [{}, { roll: toRadians(2) }]) {
      const placed = placedAt(position);
      const { toGround } = groundFrame(placed.ground);
      const heights = [placed.left, placed.right].map(({ contactCentre }) => toGround(contactCentre)[2]);
      for (const height of heights) expect(Math.abs(height)).toBeLessThan(1);
    }
  });
  test('keeps lengths', () => {
    const { toGround } = groundFrame({ point: [0, 0, 5], normal: [0, 0.02, 1] });
    expect(separation(toGround([1, 2, 3]), toGround([40, -20, 9]))).toBeCloseTo(separation([1, 2, 3], [40, -20, 9]), 9);
  });
});

describe('what is drawn over the solids', () => {
  test('the floor of the view from the front is graduated in the chosen unit, which is said once a side', () => {
    const floor = (lengthUnit: 'mm' | 'in') =>
      labels(overlayItems(contentOf({}, { view: 'front', sides: ['left', 'right'], lengthUnit })));
    expect(floor('mm')).toEqual(expect.arrayContaining(['0', '300 mm', '600', '900']));
    expect(floor('in')).toEqual(expect.arrayContaining(['0', '12 in', '24', '36']));
    expect(floor('in')).not.toContain('300 mm');
    const ticks = (lengthUnit: 'mm' | 'in') =>
      (classed(overlayItems(contentOf({}, { view: 'front', lengthUnit })), 'tick') as OverlayLine[]).map(
        ({ points }) => points[0]?.[1],
      );
    expect(ticks('in').slice(0, 3)).toEqual([0, 101.6, 203.2]);
    expect(ticks('mm').slice(0, 3)).toEqual([0, 100, 200]);
  });
  test.each([{}, { travel: 40 }, { rack: 25 }])('trail and scrub are as long as the readings say at %o', (position) => {
    const row = readingsOfAxle(car, 'front', position);
    if (!row.ok) throw new Error('closes');
    for (const side of ['left', 'right'] as const) {
      const items = overlayItems(contentOf(position, { scope: side, sides: [side] }));
      const dimension = classed(items, 'dimension')[0] as OverlayLine | undefined;
      const [contact, elbow, foot] = dimension?.points ?? [];
      if (!contact || !elbow || !foot) throw new Error('three corners');
      expect(separation(contact, elbow)).toBeCloseTo(Math.abs(row.value[side].mechanicalTrail ?? NaN), 2);
      expect(separation(elbow, foot)).toBeCloseTo(Math.abs(row.value[side].scrubRadius ?? NaN), 2);
    }
  });

  test('the compared setup is drawn only where it is another one, and can be switched off', () => {
    const axle = axleAt({});
    const same = { ...axle, compared: { placed: axle.placed, frame: axle.frame } };
    expect(classed(overlayItems(contentOf({}, { axles: [same] })), 'ghost')).toEqual([]);
    const other = { ...axle, compared: { placed: placedAt({ travel: 20 }), frame: axle.frame } };
    const items = overlayItems(contentOf({}, { axles: [other] }));
    expect(classed(items, 'ghost').length).toBeGreaterThan(3);
    expect(classed(items, 'ghostmark').length).toBeGreaterThan(2);
    expect(classed(overlayItems(contentOf({}, { axles: [other], overlays: [] })), 'ghost')).toEqual([]);
  });

  test.each([
    ['front', {}],
    ['front', { travel: 30 }],
    ['rear', {}],
    ['rear', { roll: toRadians(1.5) }],
  ] as const)('lines from the contact centres to the instant centres meet in the roll centre: %s %o', (name, position) => {
    const content = axleAt(position, name);
    const items = overlayItems(
      contentOf({}, { axles: [content], view: 'front', scope: 'axle', sides: ['left', 'right'], overlays: ['instantCentres'] }),
    );
    const rays = (['left', 'right'] as const).map((side) => classed(items, `construct ${side}`)[0] as OverlayRay | undefined);
    const centre = content.placed.rollCentre && content.frame.toGround(content.placed.rollCentre);
    if (!centre) throw new Error('has a roll centre');
    for (const ray of rays) {
      if (!ray) throw new Error('has its line');
      const [dy, dz] = [ray.to[1] - ray.from[1], ray.to[2] - ray.from[2]];
      const off = ((centre[1] - ray.from[1]) * dz - (centre[2] - ray.from[2]) * dy) / Math.sqrt(dy * dy + dz * dz);
      expect(Math.abs(off)).toBeLessThan(0.5);
    }
  });

  test.each(['front', 'rear'] as const)(
    'the label of the %s roll centre says what the reading says, at every position',
    (name) => {
      for (const position of [-50, -20, 0, 13, 32, 50].flatMap((travel) => [{ travel }, { travel, roll: toRadians(1.2) }])) {
        const row = readingsOfAxle(car, name, position);
        const height = row.ok ? row.value.both.rollCentreHeight : null;
        if (height === null) throw new Error('has a roll centre');
        const content = { axles: [axleAt(position, name)], view: 'front', overlays: ['rollCentre'] } as const;
        const said = labels(overlayItems(contentOf({}, content))).find((text) => text.startsWith('roll centre'));
        expect(said, JSON.stringify(position)).toContain(
          `roll centre ${Math.abs(height).toFixed(1)} mm ${height < 0 ? 'below ground' : 'high'}`,
        );
      }
    },
  );

  test('the whole car has both roll centres and the axis through them', () => {
    const axles = [axleAt({}), axleAt({}, 'rear')];
    const items = overlayItems(contentOf({}, { axles, scope: 'car', sides: ['left', 'right'], overlays: ['rollCentre'] }));
    expect(labels(items).filter((text) => /^(front|rear) roll centre/.test(text))).toHaveLength(2);
    expect(labels(items)).toContain('roll axis');
    const [axis] = classed(items, 'axis') as OverlayLine[];
    const [from, to] = [axis?.points[0], axis?.points[1]];
    for (const { placed, frame } of axles) {
      const centre = placed.rollCentre && frame.toGround(placed.rollCentre);
      if (!from || !to || !centre) throw new Error('is drawn');
      expect(separation(from, centre) + separation(centre, to)).toBeCloseTo(separation(from, to), 6);
    }
  });

  test('names, path, arms, tape and envelope come and go with their switches', () => {
    const path: readonly Point[] = [
      [0, 700, 180],
      [0, 702, 220],
    ];
    const ref = { axle: 'front', side: 'left', point: 'ballJoint' } as const;
    const content = (overlays: readonly OverlayName[], more: Partial<OverlayContent> = {}) =>
      overlayItems(contentOf({}, { overlays, chosen: { ref, path }, ...more }));
    expect(labels(content(['pointNames']))).toEqual(expect.arrayContaining(['Arm front', 'Tie rod end', 'Wheel centre']));
    expect(labels(content([]))).not.toContain('Tie rod end');
    expect(classed(content(['path']), 'path')).toHaveLength(1);
    expect(classed(content([]), 'path')).toEqual([]);
    expect(classed(content([], { handles: 60 }), 'arm')).toHaveLength(3);
    const far = { ...ref, point: 'strutTop' };
    const tape = content([], { tape: [ref, far] });
    const points = contentOf({}).axles[0]?.placed.left.points;
    const length = separation(points?.['ballJoint'] ?? [0, 0, 0], points?.['strutTop'] ?? [0, 0, 0]);
    expect(labels(tape)).toContain(`${length.toFixed(2)} mm`);
    const corners = [placedAt({ travel: 60 }).left, placedAt({ travel: -60 }).left];
    const swept = content(['envelope'], { envelopes: [{ axle: 'front', side: 'left', corners }] });
    expect(classed(swept, 'envelope')).toHaveLength(2);
  });

  test('the range of an adjuster that is being made is true to scale, its steps only where they stand apart', () => {
    const from = { axle: 'front', side: 'left', point: 'strutTop' } as const;
    const content = (reach: number) =>
      overlayItems(contentOf({}, { range: { from, direction: [0, 2, 0], marks: [-8, -3, 2, 7], design: 2, reach } }));
    const near = content(30);
    const [line] = near.filter((item) => item.kind === 'line' && item.className === 'range');
    const [first, last] = line?.kind === 'line' ? line.points : [];
    if (!first || !last) throw new Error('is drawn');
    expect(separation(first, last)).toBeCloseTo(15, 9);
    expect([first, last].map(([x]) => x)).toEqual([first[0], first[0]]);
    expect(labels(near)).toEqual(expect.arrayContaining(['X', 'Y', 'Z', '−10.0 mm', '+5.0 mm']));
    expect(classed(near, 'rangestep')).toHaveLength(2);
    expect(classed(content(500), 'rangestep')).toEqual([]);
    expect(classed(overlayItems(contentOf({})), 'range')).toEqual([]);
  });
});
