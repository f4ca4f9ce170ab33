import { toDegrees, type CarDocument, type Triple } from '../../geometry/index';
import { M } from './speed/common.mjs';

const named = (letter: string, points: readonly Triple[]): [string, Triple][] =>
  points.map((point, i) => [`${letter}${i}`, point]);

/** The two linkages of the reference kernels as one car in the project's own form: the strut in front, the five rods behind. */
export function referenceCar(): CarDocument {
  const { A, B } = M;
  const [x, y, z] = A.s;
  const wheel = { camber: toDegrees(-Math.asin(z)), toe: toDegrees(Math.atan2(x, y)), loadedRadius: 310 };
  return {
    format: 'jounce-car',
    version: 1,
    name: 'Reference linkages',
    front: {
      layout: 'strut',
      points: {
        armFront: A.AF,
        armRear: A.AR,
        ballJoint: A.B,
        strutTop: A.T,
        strutFoot: A.L,
        rackEnd: A.RI,
        tieRodEnd: A.RO,
        wheelCentre: A.W,
      },
      wheel,
      steering: { axis: [0, 1, 0], travel: 70 },
      adjusters: { tieRod: { kind: 'turnbuckle', rod: 'tieRod', perTurn: 1.5, range: [-8, 8], step: 0.125 } },
      toeAdjuster: 'tieRod',
    },
    rear: {
      layout: 'multi-link',
      points: { wheelCentre: B.W, ...Object.fromEntries([...named('inner', B.inner), ...named('outer', B.outer)]) },
      rods: Object.fromEntries(B.inner.map((_: Triple, i: number) => [`rod${i}`, [`inner${i}`, `outer${i}`]])),
      wheel,
      adjusters: { toeRod: { kind: 'turnbuckle', rod: 'rod4', perTurn: 1.5, range: [-8, 8], step: 0.125 } },
      toeAdjuster: 'toeRod',
    },
  };
}
