import { describe, expect, test } from 'vitest';
import { assembleCar, findSetup, placeAxle, readingsOfAxle, toMechanism, toRadians } from '../../../geometry/index';
import { groundFrame } from '../../../renderer/viewport/groundFrame';
import { placeLabel } from '../../../renderer/viewport/labelPlaces';
import { overlayItems, type OverlayContent, type OverlayLine } from '../../../renderer/viewport/overlayItems';
import { separation } from '../../../renderer/viewport/points';
import { carDocument } from '../carUnderTest';

const document = carDocument('car-23');
const assembled = assembleCar(toMechanism(document), findSetup(document, 'Baseline') ?? {});
if (!assembled.ok) throw new Error('car 23 stands');
const car = assembled.value;

const placedAt = (position: Parameters<typeof placeAxle>[2]) => {
  const placed = placeAxle(car, 'front', position);
  if (!placed.ok) throw new Error('closes');
  return placed.value;
};

const contentOf = (position: Parameters<typeof placeAxle>[2]): OverlayContent => {
  const placed = placedAt(position);
  if (!document.front) throw new Error('has a front axle');
  return {
    view: 'corner',
    placed,
    frame: groundFrame(placed.ground),
    compared: null,
    axle: document.front,
    held: { label: 'Plate across', point: 'strutTop' },
    trail: '7 mm',
    scrub: '4 mm',
    rollCentre: '80 mm',
    outlines: false,
    wheelRadius: 322,
  };
};

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
  test.each([{}, { travel: 40 }, { rack: 25 }])('trail and scrub are as long as the readings say at %o', (position) => {
    const content = contentOf(position);
    const row = readingsOfAxle(car, 'front', position);
    if (!row.ok) throw new Error('closes');
    const dimension = overlayItems(content).find(
      (item): item is OverlayLine => item.kind === 'line' && item.className === 'dimension',
    );
    const [contact, elbow, foot] = dimension?.points ?? [];
    if (!contact || !elbow || !foot) throw new Error('three corners');
    expect(separation(contact, elbow)).toBeCloseTo(Math.abs(row.value.left.mechanicalTrail ?? NaN), 2);
    expect(separation(elbow, foot)).toBeCloseTo(Math.abs(row.value.left.scrubRadius ?? NaN), 2);
  });
  test('the compared setup is drawn only where it is another one', () => {
    const content = contentOf({});
    const same = { placed: content.placed, frame: content.frame };
    expect(overlayItems({ ...content, compared: same }).some((item) => item.kind !== 'label' && item.className === 'ghost')).toBe(
      false,
    );
    const other = placedAt({ travel: 20 });
    const compared = { placed: other, frame: content.frame };
    expect(overlayItems({ ...content, compared }).some((item) => item.kind !== 'label' && item.className === 'ghost')).toBe(true);
  });
});

describe('labels', () => {
  const area = { x: 0, y: 0, width: 400, height: 300 };
  test('keep clear of one another and of the edge, or are left out', () => {
    const first = placeLabel('steering axis', [200, 150], [-60, 10], [], area);
    if (!first) throw new Error('there is room');
    const second = placeLabel('trail 28.6 mm', [200, 150], [-60, 10], [first], area);
    expect(second).not.toBeNull();
    expect(second?.x !== first.x || second?.y !== first.y).toBe(true);
    expect(placeLabel('steering axis', [200, 150], [-60, 10], [area], area)).toBeNull();
  });
});
