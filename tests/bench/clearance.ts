import { findSetup, openStudy, parseCar, toMechanism, type CarDocument } from '../../geometry/index';

const PAIRS = 40;
const SETUPS = ['Baseline', 'Wet', 'Sprint'];

/** Parts of every simple shape around a front wheel, on what moves and on what does not. */
const PARTS = {
  tread: { axle: 'front', on: 'wheel', shape: { kind: 'tyre' }, touches: ['caliper', 'bracket', 'sensor'] },
  caliper: { axle: 'front', on: 'knuckle', shape: { kind: 'box', centre: [-128, 738, 326], size: [70, 90, 130] } },
  bracket: { axle: 'front', on: 'knuckle', shape: { kind: 'capsule', from: [20, 680, 380], to: [30, 620, 430], radius: 9 } },
  sensor: { axle: 'front', on: 'knuckle', shape: { kind: 'sphere', at: [60, 690, 300], radius: 14 } },
  seat: { axle: 'front', on: 'strut', shape: { kind: 'cylinder', from: [-10, 620, 520], to: [-10.4, 619.4, 524], radius: 62 } },
  duct: { axle: 'front', on: 'body', shape: { kind: 'capsule', from: [300, 480, 240], to: [180, 520, 280], radius: 38 } },
  tray: { axle: 'front', on: 'body', shape: { kind: 'box', centre: [120, 420, 520], size: [260, 140, 40] } },
  pump: { axle: 'front', on: 'body', shape: { kind: 'cylinder', from: [-200, 430, 300], to: [-200, 430, 420], radius: 40 } },
  lamp: { axle: 'front', on: 'body', shape: { kind: 'sphere', at: [420, 600, 420], radius: 60 } },
} as const;

/** The least clearance of forty pairs of simple shapes over 21 × 21 positions of three setups, refined. */
export function clearanceBench(hatch: CarDocument): { name: string; units: number; runs: number; work: () => unknown } {
  const parsed = parseCar(JSON.stringify({ ...hatch, parts: PARTS }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const { document } = parsed.value;
  const setups = SETUPS.map((name) => [name, findSetup(document, name)] as const);
  const mechanism = toMechanism(document);
  return {
    name: 'clearance, 40 pairs',
    units: 1,
    runs: 3,
    work: () => {
      const round = openStudy(
        { study: 'clearance', document, question: { axles: ['front'], sides: ['left'], setups } },
        mechanism,
      ).round();
      if (round.chunks < PAIRS) throw new Error(`${round.chunks} pairs, not ${PAIRS}`);
      for (let chunk = 0; chunk < PAIRS; chunk += 1) round.run(chunk);
    },
  };
}
