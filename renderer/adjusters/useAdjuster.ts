import { useMemo } from 'react';
import { type AdjusterDocument, type AxleDocument } from '../../geometry/index';
import { scaleOf, stepSetting } from '../compute/adjusterSteps';
import { useBench, useWindow } from '../shell/benchContext';
import { comparedWith } from '../state/benchStore';
import { joinSides, separateSides, turnAdjuster } from '../state/actions/editSetup';
import { isApart, settingOf, setupNamed, type Sides } from '../state/settings';
import { mmPerFileUnit } from '../units/fileLength';
import { nameOfKey } from './fitterWords';

export type SideOfCar = 'left' | 'right';

const distanceOf = (axle: AxleDocument | undefined, adjuster: AdjusterDocument): number | undefined => {
  if (adjuster.kind !== 'clamp-eccentric') return undefined;
  const [pivot, bolt] = [axle?.points[adjuster.pivot], axle?.points[adjuster.bolt]];
  if (!pivot || !bolt) return undefined;
  const [x, y, z] = [pivot[0] - bolt[0], pivot[1] - bolt[1], pivot[2] - bolt[2]];
  return Math.sqrt(x * x + y * y + z * z);
};

/** A part's name in a sentence: a capital that only begins it goes small, any other is the name's own ("B7 bolt", "Λίμνη"). */
export const inSentence = (label: string): string => label.replace(/^[A-Z](?=[a-z])/, (first) => first.toLowerCase());

const UNITS = { length: 'mm', clock: '°', turns: 'turn' } as const;

/** Everything that a card says and does about one adjuster of the axle on the bench. */
export const useAdjuster = (name: string, adjuster: AdjusterDocument) => {
  const { store } = useWindow();
  const axle = useBench((state) => state.axle);
  const bench = useBench((state) => state.history?.present ?? null);
  const toeReset = useBench((state) => state.shown?.row.toeReset ?? null);
  const setup = useMemo(() => (bench ? setupNamed(bench.document, bench.setup) : undefined), [bench]);
  const other = useBench(comparedWith);
  const against = useMemo(() => (other ? setupNamed(other.document, other.setup) : setup), [other, setup]);
  const label = adjuster.label ?? nameOfKey(name);
  const scale = scaleOf(adjuster);
  const mm = bench ? mmPerFileUnit(bench.document) : 1;
  const factor = scale.measure === 'length' ? mm : 1;
  const axleDocument = bench?.document[axle];
  const setsToe = axleDocument?.toeAdjuster === name && setup?.[axle]?.setToe !== undefined;
  const reached = (side: SideOfCar): number | null => toeReset?.[side] ?? null;
  const settingNow = (side: SideOfCar) => (setsToe ? reached(side) : settingOf(setup, axle, name, side));
  const value = { left: settingNow('left'), right: settingNow('right') };
  const compared = { left: settingOf(against, axle, name, 'left'), right: settingOf(against, axle, name, 'right') };
  return {
    label,
    scale,
    mm,
    /** what stands in the fields is the setting times this */
    factor,
    unit: UNITS[scale.measure],
    value,
    apart: isApart(setup, axle, name) || value.left !== value.right,
    differs: value.left !== compared.left || value.right !== compared.right,
    pivotToBolt: distanceOf(axleDocument, adjuster),
    locked: adjuster.locked,
    toeDeg: setsToe ? (setup?.[axle]?.setToe ?? null) : null,
    outOfRange: setsToe && toeReset !== null && !toeReset.inRange,
    set: (sides: Sides, setting: number | null) => turnAdjuster(store, name, inSentence(label), sides, setting),
    step: (sides: Sides, steps: number) =>
      turnAdjuster(
        store,
        name,
        inSentence(label),
        sides,
        stepSetting(adjuster, value[sides === 'right' ? 'right' : 'left'], steps),
      ),
    separate: () => separateSides(store, name, label),
    join: () => joinSides(store, name, label, value.left),
  };
};

export type AdjusterInHand = ReturnType<typeof useAdjuster>;
