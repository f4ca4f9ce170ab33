import type { AxleDocument } from '../../car/document';
import { add, distance, dot, length, scale, subtract, unit, type Vector } from '../../core/vector';
import type { AssembledAxle } from '../../setup/assembleCar';
import { addWrenches, wrenchAt } from './balance';
import { greatestBending, placeOf, type BeamForce } from './bending';
import type { CarriedLoad } from './carriedLoad';
import { ball, type LinkEnd, type LinkRow } from './linkRow';
import { BEAM } from './sections';

/** A part fast to the knuckle: what the body and its loads put on it goes on to the knuckle at a point where it is cut. */
function handedOn(point: string, cut: Vector, body: Vector, at: Vector, loads: readonly CarriedLoad[]): LinkEnd {
  const all = addWrenches([wrenchAt(body, at, cut), ...loads.map((load) => wrenchAt(load.force, load.at, cut))]);
  return { point, on: 'knuckle', at: cut, force: all.force, moment: all.moment };
}

/** @param force - of the body on the arm */
export function trailingArmRow(
  axle: AssembledAxle,
  at: Vector,
  force: Vector,
  centre: Vector,
  loads: readonly CarriedLoad[],
): LinkRow {
  const { pivot } = axle.mechanism.trailingArm!;
  const hands = handedOn('wheelCentre', centre, force, at, loads);
  const acting: BeamForce[] = [
    { at, force, moment: null, place: pivot },
    ...loads.map(placeOf),
    { at: centre, force: scale(hands.force, -1), moment: scale(hands.moment!, -1), place: 'wheelCentre' },
  ];
  return {
    link: 'trailingArm',
    kind: 'trailingArm',
    axial: -dot(force, unit(subtract(centre, at))),
    ends: [ball(pivot, 'body', at, scale(force, -1)), hands],
    bending: greatestBending(at, centre, acting),
    buckling: null,
    why: { buckling: BEAM },
  };
}

/**
 * The strut. Its rod is bent between the top and the guide bushing, which is where the tube ends; without `strutTube` the foot
 * stands for it.
 * @param sideways - of the body on the strut's top, across its axis
 * @param along - the same along it
 */
export function strutRow(
  document: AxleDocument,
  mm: number,
  top: Vector,
  foot: Vector,
  axis: Vector,
  sideways: Vector,
  along: Vector,
  loads: readonly CarriedLoad[],
): LinkRow {
  const force = add(sideways, along);
  const tube = document.strutTube;
  const guide = tube === undefined ? foot : add(foot, scale(axis, tube.to * mm));
  return {
    link: 'strut',
    kind: 'strut',
    axial: dot(along, axis),
    ends: [ball('strutTop', 'body', top, scale(force, -1)), handedOn('strutFoot', foot, force, top, loads)],
    bending: {
      moment: length(sideways) * distance(top, guide),
      at: guide,
      place: tube === undefined ? 'strutFoot' : 'guide',
    },
    buckling: null,
    why: { buckling: BEAM },
  };
}
