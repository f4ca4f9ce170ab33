import { designPoints, type PlacedPoint } from '../../geometry/index';
import { benchOf, type BenchState } from '../state/benchStore';

/** Every point of the axle on the bench, in the setup and position that the view shows, beside design [mm]. */
export const placedFor = (state: BenchState): readonly PlacedPoint[] => {
  const document = benchOf(state)?.document;
  const placed = state.shown?.row.placed;
  const { axle } = state;
  if (!document) return [];
  return (['left', 'right'] as const).flatMap((side) =>
    Object.entries(designPoints(document, axle, side)).map(([name, design]): PlacedPoint => {
      const at = placed?.[side].points[name] ?? design;
      return { axle, side, name, at, design, change: [at[0] - design[0], at[1] - design[1], at[2] - design[2]] };
    }),
  );
};
