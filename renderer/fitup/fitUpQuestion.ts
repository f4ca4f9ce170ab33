import { setupNames, type AxleName, type CarDocument, type MeshFiles, type SideName } from '../../geometry/index';
import type { FitUpOrder, NamedSetups } from '../compute/fitup/fitUpOrder';
import { memoLast } from '../compute/memoLast';
import { partMeshFiles } from '../compute/fitup/partMeshFiles';
import { setupNamed } from '../state/settings';

/** Which wheels and setups are asked about. */
export interface FitUpAsked {
  readonly sides: 'both' | SideName;
  /** names of setups that are left out: one that is made later is in */
  readonly without: readonly string[];
}

export const ALL_ASKED: FitUpAsked = { sides: 'both', without: [] };

/** Tabs of the page. */
export type FitUpTab = 'clearance' | 'joints' | 'stroke' | 'loads' | 'keepOut';

export const sidesOf = ({ sides }: FitUpAsked): readonly SideName[] => (sides === 'both' ? ['left', 'right'] : [sides]);

/** Setups in use; all where every one is left out, since of none nothing can be said. */
const setupsOf = (document: CarDocument, without: readonly string[]): NamedSetups => {
  const all = setupNames(document);
  const names = all.length === 0 ? ['Baseline'] : all;
  const asked = names.filter((name) => !without.includes(name));
  return (asked.length === 0 ? names : asked).map((name) => [name, setupNamed(document, name)] as const);
};

/** The setups that an answer is over, by name: the same list while the car and the choice are. */
export const askedSetups = memoLast(setupsOf, 4);

const keptMeshes = memoLast(partMeshFiles, 2);
/** The meshes of a car's parts: read once, while the parts stay. */
export const meshesOfCar = (document: CarDocument): ReturnType<typeof partMeshFiles> => keptMeshes(document.parts);

/** The same object while nothing of the question changed, so that an answer is known to be of today's. */
export const clearanceOrder = memoLast(
  (document: CarDocument, axle: AxleName, sides: FitUpAsked['sides'], setups: NamedSetups, meshes: MeshFiles) =>
    ({
      job: 'clearance',
      document,
      question: { axles: [axle], sides: sides === 'both' ? ['left', 'right'] : [sides], setups, meshes, ground: true },
    }) satisfies FitUpOrder,
  4,
);

export const jointsOrder = memoLast(
  (document: CarDocument, axle: AxleName, setups: NamedSetups) =>
    ({ job: 'joints', document, axles: [axle], setups }) satisfies FitUpOrder,
  4,
);

export const strokeOrder = memoLast(
  (document: CarDocument, axle: AxleName, setups: NamedSetups) =>
    ({ job: 'stroke', document, axles: [axle], setups }) satisfies FitUpOrder,
  4,
);

/** @param travel - from where the car stands [mm], with roll the heave; cases are those of the file, or the program's own where it has none */
export const loadsOrder = memoLast(
  (
    document: CarDocument,
    axle: AxleName,
    name: string,
    setup: NamedSetups[number][1],
    travel: number,
    rack: number,
    rollDeg: number,
  ) =>
    ({
      job: 'loads',
      document,
      axles: [axle],
      setup: [name, setup],
      at: { travel, rack, rollDeg },
      cases: null,
    }) satisfies FitUpOrder,
  4,
);

/** What is swept, by how much it is grown and how far its surface may be outside of it [mm]. */
export interface KeepOutAsked {
  readonly of: readonly string[] | 'all-moving';
  readonly grow: number;
  readonly bound: number;
}

export const keepOutOrder = memoLast(
  (
    document: CarDocument,
    axle: AxleName,
    sides: FitUpAsked['sides'],
    setups: NamedSetups,
    { of, grow, bound }: KeepOutAsked,
    meshes: MeshFiles,
  ) =>
    ({
      job: 'keepOut',
      document,
      question: { axles: [axle], sides: sides === 'both' ? ['left', 'right'] : [sides], setups, of, grow, bound, meshes },
    }) satisfies FitUpOrder,
  4,
);
