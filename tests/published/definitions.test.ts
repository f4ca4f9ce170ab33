import { describe, expect, it } from 'vitest';
import { toDegrees, toRadians } from '../../geometry/index';
import { placedAt, rowAt, stand } from './ask';
import { expectWithin } from './near';
import { positionFor, steeredAxle } from './steeredAxle';
import { CLOSED_DEG, CLOSED_MM } from './tolerances';

// S01. ISO 8855:2011, clauses 7.1.3 to 7.1.9 read in a public preview, 7.2.3 second-hand; SAE J670e 6.2.1 for caster, quoted in
// SAE 850219 (first page read). Axes x forward, y left, z up; a: unit vector along the spin axis, pointing left.
describe('S01 definitions of the standards', () => {
  const wanted = { layout: 'multi-link', kingpinInclination: 11, caster: 5, camber: -1.4, offset: [6, -50, 0] } as const;
  const axle = steeredAxle(wanted);
  const car = stand({ front: { ...axle, wheel: { ...axle.wheel, toe: 0.35 } } });
  const at = (rack: number) => ({ row: rowAt(car, 'front', { rack }), placed: placedAt(car, 'front', { rack }) });

  it('7.1.6 toe: atan2(a_x, a_y) on the left, a_x turned on the right where a points right', () => {
    const { row, placed } = at(0);
    for (const side of ['left', 'right'] as const) {
      const [x, y] = placed[side].spindle;
      expectWithin(row[side].toe, toDegrees(Math.atan2(x, Math.abs(y))), CLOSED_DEG, side);
      expectWithin(row[side].toe, 0.35, CLOSED_DEG, side);
    }
  });

  it('7.1.7 total toe: the sum of both sides', () => {
    const { row } = at(20);
    expectWithin(row.both.totalToe, row.left.toe + row.right.toe, CLOSED_DEG);
  });

  it('steer angle: positive to the left, on both wheels', () => {
    // the tie rods lie behind the axle, so a rack to the left steers to the right
    const { row, placed } = at(-30);
    for (const side of ['left', 'right'] as const) {
      const outboard = side === 'left' ? 1 : -1;
      const [x, y] = placed[side].spindle;
      expect(row[side].steerAngle).toBeGreaterThan(5);
      expectWithin(row[side].steerAngle, toDegrees(Math.atan2(-outboard * x, outboard * y)), CLOSED_DEG, side);
      expectWithin(row[side].toe, -outboard * row[side].steerAngle, CLOSED_DEG, side);
    }
  });

  it('7.2.3 castor offset: along the wheel, from the contact centre to where the steering axis meets the ground', () => {
    const { row, placed } = at(-30);
    for (const side of ['left', 'right'] as const) {
      const { contactCentre, steeringAxis } = placed[side];
      const turn = toRadians(row[side].steerAngle);
      const [dx, dy] = [steeringAxis!.ground[0] - contactCentre[0], steeringAxis!.ground[1] - contactCentre[1]];
      expectWithin(row[side].mechanicalTrail, dx * Math.cos(turn) + dy * Math.sin(turn), CLOSED_MM, side);
      const inboard = side === 'left' ? -1 : 1;
      expectWithin(row[side].scrubRadius, inboard * (-dx * Math.sin(turn) + dy * Math.cos(turn)), CLOSED_MM, side);
    }
  });

  it('caster and kingpin inclination: the steering axis seen from the side and from ahead', () => {
    const { row, placed } = at(0);
    const { direction } = placed.left.steeringAxis!;
    expectWithin(row.left.caster, toDegrees(Math.atan2(-direction[0], direction[2])), CLOSED_DEG);
    expectWithin(row.left.kingpinInclination, toDegrees(Math.atan2(-direction[1], direction[2])), CLOSED_DEG);
    expectWithin(row.left.caster, 5, CLOSED_DEG);
    expectWithin(row.left.kingpinInclination, 11, CLOSED_DEG);
  });

  // Camber by projection is −atan2(a_z, a_y), by inclination −asin(a_z): at 30 deg of steer and 5 deg of camber 0.77 deg apart.
  it('camber is the inclination of the wheel, not its projection', () => {
    const upright = { layout: 'multi-link', kingpinInclination: 0, caster: 0, camber: 5 } as const;
    const position = positionFor(upright, 30);
    const { left } = rowAt(stand({ front: steeredAxle(upright) }), 'front', {
      travel: { left: position.travel, right: 0 },
      rack: position.rack,
    });
    const { spindle } = placedAt(stand({ front: steeredAxle(upright) }), 'front', {
      travel: { left: position.travel, right: 0 },
      rack: position.rack,
    }).left;
    expectWithin(left.camber, 5, CLOSED_DEG, 'an upright kingpin keeps camber');
    expectWithin(left.steerAngle, 30, CLOSED_DEG, 'steer angle');
    expectWithin(toDegrees(Math.atan2(-spindle[2], spindle[1])) - left.camber, 0.77, 0.005, 'projection less inclination');
  });
});
