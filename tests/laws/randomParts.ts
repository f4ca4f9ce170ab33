import type { AntiRollBarDocument, AxleDocument, DamperDocument, SpringDocument, Triple } from '../../geometry/car/document';
import type { Draw } from './draw';
import type { LinkageDocument } from './randomLinkages';

/** Spring, damper and bar of an axle, on any carrier; points that they add. */
export type PartsDocument = Pick<AxleDocument, 'spring' | 'damper' | 'antiRollBar' | 'heightAt'> & {
  readonly points: Readonly<Record<string, Triple>>;
};

function carriers(linkage: LinkageDocument): string[] {
  if (linkage.layout === 'strut') return ['strut', 'knuckle', 'arm', 'armRear', 'tieRod'];
  return ['knuckle', ...(linkage.trailingArm === undefined ? [] : ['trailingArm']), ...Object.keys(linkage.rods ?? {})];
}

/** Somewhere on or beside the carrier. */
function placeOn(draw: Draw, linkage: LinkageDocument, on: string): Triple {
  const { points } = linkage;
  const rods: Readonly<Record<string, readonly [string, string]>> = linkage.rods ?? {
    arm: ['armFront', 'ballJoint'],
    armFront: ['armFront', 'ballJoint'],
    armRear: ['armRear', 'ballJoint'],
    tieRod: ['rackEnd', 'tieRodEnd'],
  };
  const rod = rods[on];
  const [x, y, z] = points['wheelCentre'];
  if (rod === undefined) return draw.near([x - 20, y - 110, z - 40], 50);
  const [inner, outer] = [points[rod[0]], points[rod[1]]];
  const t = draw.between(0.3, 0.9);
  return draw.near(
    [inner[0] + t * (outer[0] - inner[0]), inner[1] + t * (outer[1] - inner[1]), inner[2] + t * (outer[2] - inner[2])],
    30,
  );
}

const above = (draw: Draw, [x, y, z]: Triple): Triple => draw.near([x - 20, Math.max(200, y - 90), z + 370], 70);
const round = (value: number): number => Math.round(value * 1000) / 1000;

export function randomParts(draw: Draw, linkage: LinkageDocument): PartsDocument {
  const points: Record<string, Triple> = {};
  const span = (part: 'spring' | 'damper'): { upper: string; lower: string; lowerOn: string } => {
    const lowerOn = draw.pick(carriers(linkage));
    const lower = placeOn(draw, linkage, lowerOn);
    points[`${part}Lower`] = lower;
    points[`${part}Upper`] = above(draw, lower);
    return { upper: `${part}Upper`, lower: `${part}Lower`, lowerOn };
  };
  const onStrut = linkage.layout === 'strut';
  const rate = draw.between(25, 90);
  const spring: SpringDocument = {
    ...(onStrut && draw.chance(0.4) ? { seat: 'strut' as const } : span('spring')),
    ...(draw.chance(0.9) ? { rate } : {}),
    ...(draw.chance(0.7) ? { freeLength: 260, installed: draw.between(150, 200) } : {}),
    ...(draw.chance(0.2) ? { helper: { rate: 8, freeLength: 60, solidLength: 18 } } : {}),
  };
  const damper: DamperDocument = {
    ...(onStrut && draw.chance(0.4) ? {} : span('damper')),
    ...(draw.chance(0.6) ? { stroke: 170, bumpStopAt: 60, droopStopAt: 90 } : {}),
  };
  const linkOn = draw.pick(carriers(linkage));
  const linkEnd = placeOn(draw, linkage, linkOn);
  const behind = draw.chance(0.5) ? -1 : 1;
  const armEnd = draw.near(
    [linkEnd[0], Math.max(150, linkEnd[1] - 30), linkEnd[2] - draw.between(90, 260) * draw.pick([1, -1])],
    15,
  );
  const pivot: Triple = [
    round(armEnd[0] + behind * draw.between(140, 260)),
    round(armEnd[1] - draw.between(20, 150)),
    round(armEnd[2] + draw.between(-40, 40)),
  ];
  const bar: AntiRollBarDocument = {
    pivot,
    ...(draw.chance(0.5) ? { axis: draw.leaning([0, 1, 0], 0.2) } : {}),
    armEnd,
    linkEnd,
    linkOn,
    ...(draw.chance(0.9) ? { rate: draw.between(5, 40) } : {}),
    holes: [
      { name: 'soft', armEnd: [round(armEnd[0] - behind * 20), armEnd[1], armEnd[2]] },
      { name: 'own', armEnd: [round(armEnd[0] + behind * 15), armEnd[1], armEnd[2]], rate: 30 },
    ],
  };
  const [x, y] = linkage.points['wheelCentre'];
  // a strut's file refuses points that nothing uses
  const has = { spring: draw.chance(0.9), damper: draw.chance(0.9) };
  const used = Object.entries(points).filter(([name]) => (name.startsWith('spring') ? has.spring : has.damper));
  return {
    points: Object.fromEntries(used),
    ...(has.spring ? { spring } : {}),
    ...(has.damper ? { damper } : {}),
    ...(draw.chance(0.85) ? { antiRollBar: bar } : {}),
    ...(draw.chance(0.7) ? { heightAt: { point: draw.near([x - 300, y - 60, 180], 40), name: 'sill' } } : {}),
  };
}
