import type {
  AxleDocument,
  BodyDocument,
  CarDocument,
  SetupAxleDocument,
  SetupDocument,
  Triple,
  WheelDocument,
} from '../../geometry/car/document';
import { judgeMechanism } from '../../geometry/setup/judgeMechanism';
import { drawFrom, type Draw } from './draw';
import { randomAdjusters, randomSettings, TOE_ADJUSTERS } from './randomAdjusters';
import { randomLinkage, type LayoutName } from './randomLinkages';
import { randomParts } from './randomParts';

/** Names of the setups of every random car, from nothing moved to everything at once. */
export const SETUPS = ['Design', 'Set', 'Toe', 'Stance'] as const;
export type SetupName = (typeof SETUPS)[number];

const FRONTS: readonly LayoutName[] = ['strut', 'steered double wishbone', 'steered five rods'];
const REARS: readonly LayoutName[] = ['five rods', 'three rods and a trailing arm'];
/** Every fourth car is wild: points up to 30 mm from where an ordinary car has them. */
const PLAUSIBLE_MM = 8;
export const WILD_MM = 30;
export const isWild = (seed: number): boolean => seed % 4 === 0;

/** Which kind of corner is where: all combinations in turn, every eleventh car with front and rear exchanged. */
export function layoutsOf(seed: number): { readonly front: LayoutName; readonly rear: LayoutName } {
  const [steered, other] = [FRONTS[seed % 3], REARS[Math.floor(seed / 3) % 2]];
  return seed % 11 === 0 ? { front: other, rear: steered } : { front: steered, rear: other };
}

const mirrored = ([x, y, z]: Triple): Triple => [x, -y, z];

function randomWheel(draw: Draw): WheelDocument {
  return {
    camber: draw.between(-4, 1),
    toe: draw.between(-0.4, 0.4),
    loadedRadius: draw.between(285, 330),
    ...(draw.chance(0.7) ? { tyreWidth: draw.between(185, 265) } : {}),
  };
}

function randomAxle(draw: Draw, name: LayoutName, scatter: number, x: number): AxleDocument {
  const linkage = randomLinkage(draw, name, scatter, x);
  const parts = randomParts(draw, linkage);
  const points = { ...linkage.points, ...parts.points };
  const adjusters = randomAdjusters(draw, linkage, parts);
  const toe = draw.pick(TOE_ADJUSTERS.filter(([, adjuster]) => adjusters[adjuster] !== undefined))[1];
  const own: Record<string, Triple> = {};
  if (draw.chance(0.5))
    for (const [point, at] of Object.entries(points)) if (draw.chance(0.6)) own[point] = draw.near(mirrored(at), 4);
  const right =
    Object.keys(own).length === 0
      ? undefined
      : { points: own, ...(draw.chance(0.7) ? { wheel: { camber: draw.between(-4, 1), toe: draw.between(-0.4, 0.4) } } : {}) };
  return {
    ...linkage,
    points,
    ...(right === undefined ? {} : { right }),
    wheel: randomWheel(draw),
    ...(parts.spring === undefined ? {} : { spring: parts.spring }),
    ...(parts.damper === undefined ? {} : { damper: parts.damper }),
    ...(parts.antiRollBar === undefined ? {} : { antiRollBar: parts.antiRollBar }),
    ...(parts.heightAt === undefined ? {} : { heightAt: parts.heightAt }),
    adjusters,
    ...(linkage.steering === undefined && draw.chance(0.05) ? {} : { toeAdjuster: toe }),
  };
}

function randomBody(draw: Draw): BodyDocument {
  return {
    mass: draw.between(900, 1800),
    frontShare: draw.between(0.4, 0.65),
    // halves and sixteenths: 1 − share is exact, so that a mirrored car has the same bits
    leftShare: draw.pick([0.5, 0.5, 0.5625]),
    ...(draw.chance(0.9) ? { centreOfGravityHeight: draw.between(380, 600) } : {}),
    unsprungFront: draw.between(30, 45),
    unsprungRear: draw.between(30, 45),
    ...(draw.chance(0.8) ? { brakeFrontShare: draw.between(0.55, 0.75) } : {}),
    ...(draw.chance(0.8) ? { drivenAxle: draw.pick(['front', 'rear'] as const) } : {}),
  };
}

function randomSetupAxle(draw: Draw, axle: AxleDocument, setup: SetupName): SetupAxleDocument {
  const adjusters = axle.adjusters ?? {};
  const settings: SetupAxleDocument = {
    both: randomSettings(draw, adjusters, setup === 'Set' ? 0.5 : 0.25),
    ...(draw.chance(0.5) ? { left: randomSettings(draw, adjusters, 0.2), right: randomSettings(draw, adjusters, 0.2) } : {}),
  };
  const toe = axle.toeAdjuster === undefined ? {} : { setToe: draw.between(-0.3, 0.3) };
  if (setup === 'Set') return settings;
  if (setup === 'Toe') return { ...(draw.chance(0.5) ? settings : {}), ...toe };
  const hole = (): string => draw.pick(['soft', 'own']);
  return {
    ...settings,
    ...(draw.chance(0.7) ? toe : {}),
    ...(draw.chance(0.8) ? { rideHeight: draw.between(-35, 25) } : {}),
    ...(axle.spring !== undefined && draw.chance(0.5) ? { springRate: draw.between(30, 90) } : {}),
    ...(axle.antiRollBar !== undefined && draw.chance(0.5)
      ? { barHole: draw.chance(0.5) ? hole() : { left: hole(), right: hole() } }
      : {}),
    ...(axle.antiRollBar !== undefined && draw.chance(0.3) ? { barRate: draw.pick([0, 12]) } : {}),
    ...(draw.chance(0.4) ? { wheel: { loadedRadius: draw.between(285, 325), camber: draw.between(-3, 0) } } : {}),
  };
}

function drawCar(draw: Draw, seed: number): CarDocument {
  const layouts = layoutsOf(seed);
  const scatter = isWild(seed) ? WILD_MM : PLAUSIBLE_MM;
  const front = randomAxle(draw, layouts.front, scatter, draw.between(-20, 20));
  const rear = randomAxle(draw, layouts.rear, scatter, -draw.between(2300, 2800));
  const setupOf = (name: SetupName): SetupDocument => ({
    front: randomSetupAxle(draw, front, name),
    rear: randomSetupAxle(draw, rear, name),
  });
  return {
    format: 'jounce-car',
    version: 1,
    name: `Random car ${seed}`,
    ...(draw.chance(0.85) ? { body: randomBody(draw) } : {}),
    ...(draw.chance(0.4)
      ? { masses: [{ name: 'driver', mass: 75, at: draw.near([-1400, 350, 450], 100), included: draw.chance(0.5) }] }
      : {}),
    front,
    rear,
    setups: { Design: {}, Set: setupOf('Set'), Toe: setupOf('Toe'), Stance: setupOf('Stance') },
  };
}

/** A car in order: wild links that do not hold the wheel at design are drawn anew, from the same seed on. */
export function randomCar(seed: number): CarDocument {
  for (let attempt = 0; ; attempt++) {
    const document = drawCar(drawFrom(seed * 97 + attempt), seed);
    if (!isWild(seed) || judgeMechanism(document).length === 0) return document;
  }
}

/** Seeds of the cars that every law is tried on: 500 struts, wishbones and steered five rods, 750 each of the two others. */
export const SEEDS: readonly number[] = Array.from({ length: 1500 }, (_, i) => i + 1);
/** One dozen in so many: all combinations of layouts, wild and plausible. */
export const oneDozenIn = (dozens: number): readonly number[] => SEEDS.filter((seed) => Math.floor(seed / 12) % dozens === 0);
export const SEEDS_IN_WORDS = `seeds 1–${SEEDS.length}`;
