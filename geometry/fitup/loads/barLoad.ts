import { add, cross, distance, dot, scale, subtract, unit, ZERO, type Vector } from '../../core/vector';
import type { Motion } from '../../corner/motion';
import { barState } from '../../readings/barReadings';
import type { AssembledSide } from '../../setup/assembleSide';
import type { CarriedLoad } from './carriedLoad';
import { ball, type LinkRow } from './linkRow';
import type { Sections } from './sections';

/** The bar's link and arm at a pose. */
export interface BarLoad {
  readonly load: CarriedLoad;
  /** of the link, tension + [N] */
  readonly axial: number;
  readonly armEnd: Vector;
  readonly linkEnd: Vector;
  readonly along: Vector;
  readonly pivot: Vector;
  /** on the arm [N·mm] */
  readonly torque: Vector;
}

/** The arm is in balance about the bar's axis: the link's moment about it is the bar's torque. */
export function barLoad(side: AssembledSide, motion: Motion, rack: number, torque: number | null): BarLoad | null {
  const bar = side.parts.bar;
  const state = bar === null || torque === null ? null : barState(bar, side.corner, motion, rack);
  if (bar === null || torque === null || state === null) return null;
  const along = unit(subtract(state.linkEnd, state.armEnd));
  const lever = dot(bar.axis, cross(subtract(state.armEnd, bar.pivot), along));
  const axial = torque === 0 ? 0 : -torque / lever;
  const load = { link: 'barLink', carrier: bar.link, at: state.linkEnd, force: scale(along, -axial) };
  const turned = scale(bar.axis, torque);
  return { load, axial, armEnd: state.armEnd, linkEnd: state.linkEnd, along, pivot: bar.pivot, torque: turned };
}

export function barRows(bar: BarLoad, on: string, section: Sections): LinkRow[] {
  const pull = scale(bar.along, bar.axial);
  const couple = cross(subtract(bar.armEnd, bar.pivot), pull);
  return [
    {
      link: 'barLink',
      kind: 'barLink',
      axial: bar.axial,
      ends: [ball('armEnd', 'bar', bar.armEnd, pull), ball('linkEnd', on, bar.linkEnd, scale(pull, -1))],
      bending: null,
      ...section.of('barLink', distance(bar.armEnd, bar.linkEnd), bar.axial),
    },
    {
      link: 'bar',
      kind: 'bar',
      axial: null,
      ends: [
        // bushings hold the couple across the axis, the other arm the torque about it
        { ...ball('pivot', 'body', bar.pivot, pull), moment: add(couple, bar.torque) },
        { ...ball('pivot', 'otherArm', bar.pivot, ZERO), moment: scale(bar.torque, -1) },
      ],
      bending: null,
      buckling: null,
      why: {
        axial: 'an arm, not a bar between two joints',
        bending: 'the file does not give where its bushings are',
        buckling: 'an arm',
      },
    },
  ];
}
