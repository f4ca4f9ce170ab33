import { findSetup, openStudy, parseCar, toMechanism, type CarDocument, type MeshFiles } from '../../geometry/index';
import { searchMesh } from '../../geometry/meshes/meshSearch';

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

/** Half a shell over the tyre, of 20,000 triangles; only tread and sensor can meet it. */
const LINER = {
  axle: 'front',
  on: 'body',
  shape: { kind: 'mesh', file: 'liner.stl' },
  touches: ['caliper', 'bracket', 'seat', 'disc', 'strutTube', 'driveShaft', 'tieRod', 'armFront', 'armRear', 'barLink'],
} as const;

/** From −90° to 90° about an axis along Y through the wheel centre, with waves so that no two triangles are alike. */
function linerTriangles(around = 100, across = 100): Float64Array {
  const at = (i: number, j: number): readonly number[] => {
    const angle = Math.PI * (i / around - 0.5);
    const radius = 455 + 6 * Math.sin(9 * angle) + 3 * Math.cos(0.7 * j);
    return [radius * Math.sin(angle), 600 + (300 * j) / across, 320 + radius * Math.cos(angle)];
  };
  const corners: number[] = [];
  for (let i = 0; i < around; i++)
    for (let j = 0; j < across; j++) {
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      corners.push(...a, ...b, ...c, ...a, ...c, ...d);
    }
  return Float64Array.from(corners);
}

/** A row of the bench. */
export interface ClearanceRow {
  readonly name: string;
  readonly units: number;
  readonly runs: number;
  readonly work: () => unknown;
}

/** The least clearance of forty pairs of simple shapes over 21 × 21 positions of three setups, refined; and with a mesh in two more. */
export const clearanceBench = (hatch: CarDocument): readonly ClearanceRow[] => [
  clearanceRow('clearance, 40 pairs', hatch, PARTS, {}, PAIRS),
  clearanceRow(
    'clearance, 40 pairs, and 2 of 20,000 triangles',
    hatch,
    { ...PARTS, liner: LINER },
    { liner: linerTriangles() },
    PAIRS + 2,
  ),
];

function clearanceRow(name: string, hatch: CarDocument, parts: object, meshes: MeshFiles, pairs: number): ClearanceRow {
  const parsed = parseCar(JSON.stringify({ ...hatch, parts }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const { document } = parsed.value;
  const setups = SETUPS.map((setup) => [setup, findSetup(document, setup)] as const);
  const mechanism = toMechanism(document);
  return {
    name,
    units: 1,
    runs: 3,
    work: () => {
      const question = { axles: ['front'], sides: ['left'], setups, meshes } as const;
      const round = openStudy({ study: 'clearance', document, question }, mechanism, searchMesh).round();
      if (round.chunks < pairs) throw new Error(`${round.chunks} pairs, not ${pairs}`);
      for (let chunk = 0; chunk < pairs; chunk += 1) round.run(chunk);
    },
  };
}
