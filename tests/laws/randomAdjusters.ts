import type { AdjusterDocument, AdjusterKind, SideSettings } from '../../geometry/car/document';
import type { Draw } from './draw';
import type { LinkageDocument } from './randomLinkages';
import type { PartsDocument } from './randomParts';

export type Adjusters = Readonly<Record<string, AdjusterDocument>>;

/** Inner and outer point of every rod, by its name. */
export const rodsOf = (linkage: LinkageDocument): Readonly<Record<string, readonly [string, string]>> =>
  linkage.rods ?? { armFront: ['armFront', 'ballJoint'], armRear: ['armRear', 'ballJoint'], tieRod: ['rackEnd', 'tieRodEnd'] };

/** All kinds of adjuster that the axle can have, some points with two of them; `toe*` steer the wheel. */
export function randomAdjusters(draw: Draw, linkage: LinkageDocument, parts: PartsDocument): Adjusters {
  const rods = rodsOf(linkage);
  const names = Object.keys(rods);
  const [toeInner, toeOuter] = rods['tieRod'] ?? rods['toe'];
  const someInner = rods[draw.pick(names)][0];
  const [armInner, armOuter] = rods[names[names.length - 2]];
  const adjusters: Record<string, AdjusterDocument> = {
    toeTurnbuckle: {
      kind: 'turnbuckle',
      rod: rods['tieRod'] === undefined ? 'toe' : 'tieRod',
      perTurn: draw.pick([1.25, 1.5, 3]),
      range: [-5, 5],
      step: 0.25,
    },
    toeSlide: { kind: 'slide', moves: toeInner, along: draw.leaning([0, 1, 0], 0.3), range: [-6, 6], step: 0.5 },
    toeCam: {
      kind: 'eccentric-bolt',
      moves: toeInner,
      slot: draw.leaning([0, 1, 0], 0.3),
      throw: draw.between(3, 7),
      seat: draw.pick(['body', 'arm'] as const),
      mark: 10,
    },
    toeBush: {
      kind: 'offset-bushing',
      moves: toeInner,
      axis: draw.leaning([1, 0, 0], 0.2),
      twelve: draw.leaning([0, 0, 1], 0.2),
      offset: draw.between(2, 5),
      seat: 'arm',
      index: 15,
    },
    shim: { kind: 'slide', moves: toeOuter, along: [0, 0, 1], range: [-8, 8], step: 0.5 },
    spacer: { kind: 'slide', moves: 'wheelCentre', along: 'spindle', range: [0, 25], step: 1 },
    bush: {
      kind: 'offset-bushing',
      moves: armInner,
      axis: draw.leaning([1, 0, 0], 0.3),
      twelve: draw.leaning([0, 0, 1], 0.3),
      offset: draw.between(2, 6),
      seat: draw.pick(['body', 'arm'] as const),
      index: 15,
    },
    pin: {
      kind: 'slide',
      moves: armOuter,
      along: draw.leaning([0, 0, -1], 0.2),
      ...(draw.chance(0.5) ? { seat: 'arm' as const } : {}),
      range: [-8, 8],
      step: 1,
    },
    cam: { kind: 'eccentric-bolt', moves: someInner, slot: draw.leaning([0, 1, 0], 0.5), throw: draw.between(3, 6), mark: 15 },
  };
  if (linkage.layout === 'strut') {
    adjusters['topPlate'] = { kind: 'slide', moves: 'strutTop', along: draw.leaning([0, -1, 0], 0.3), range: [-15, 15], step: 1 };
    adjusters['clamp'] = {
      kind: 'clamp-eccentric',
      pivot: 'clampLower',
      bolt: 'clampUpper',
      axis: draw.leaning([1, 0, 0], 0.3),
      throw: draw.between(1, 3),
      mark: 10,
    };
    if (parts.damper !== undefined) adjusters['foot'] = { kind: 'perch', perTurn: 2, range: [-10, 10], step: 0.5, moves: 'body' };
  }
  if (linkage.trailingArm !== undefined)
    adjusters['pivotShim'] = {
      kind: 'slide',
      moves: linkage.trailingArm.pivot,
      along: [0, 0, 1],
      seat: draw.pick(['body', 'arm'] as const),
      range: [-6, 6],
      step: 0.5,
    };
  if (parts.spring !== undefined) adjusters['perch'] = { kind: 'perch', perTurn: 2, range: [-6, 6], step: 0.25 };
  if (parts.antiRollBar !== undefined)
    adjusters['link'] = { kind: 'turnbuckle', rod: 'barLink', perTurn: 2, range: [-3, 3], step: 0.25 };
  return adjusters;
}

/** Adjusters that can be named as the one that resets toe: one of each kind that steers. */
export const TOE_ADJUSTERS: readonly (readonly [AdjusterKind, string])[] = [
  ['turnbuckle', 'toeTurnbuckle'],
  ['slide', 'toeSlide'],
  ['eccentric-bolt', 'toeCam'],
  ['offset-bushing', 'toeBush'],
  ['clamp-eccentric', 'clamp'],
];

function randomSetting(draw: Draw, adjuster: AdjusterDocument): number {
  switch (adjuster.kind) {
    case 'eccentric-bolt':
    case 'clamp-eccentric':
      return draw.between(-90, 90);
    case 'offset-bushing':
      return draw.between(0, 360);
    case 'slide':
    case 'turnbuckle':
    case 'perch':
      return draw.between(adjuster.range[0], adjuster.range[1]);
  }
}

/** Settings of some of the adjusters. @param share - of them that are moved */
export function randomSettings(draw: Draw, adjusters: Adjusters, share: number): SideSettings {
  const settings: Record<string, number | null> = {};
  for (const [name, adjuster] of Object.entries(adjusters)) {
    if (!draw.chance(share)) continue;
    settings[name] = draw.chance(0.05) ? null : randomSetting(draw, adjuster);
  }
  return settings;
}
