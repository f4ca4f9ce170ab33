import type { AdjusterDocument, AxleDocument } from '../../geometry/index';

/** Names of the solids that can be under the hand: the piece at a point, a rod, the clamp, the spring, the bar's link. */
export const pointKey = (point: string): string => `point:${point}`;
export const rodKey = (rod: string): string => `rod:${rod}`;
export const CLAMP_KEY = 'clamp';
export const SPRING_KEY = 'spring';

/** The solids that an adjuster is, so that the part in hand is blued in the view too. */
export const keysOfAdjuster = (adjuster: AdjusterDocument | undefined): readonly string[] => {
  if (!adjuster) return [];
  switch (adjuster.kind) {
    case 'slide':
    case 'eccentric-bolt':
    case 'offset-bushing':
      return [pointKey(adjuster.moves)];
    case 'clamp-eccentric':
      return [CLAMP_KEY];
    case 'turnbuckle':
      return [rodKey(adjuster.rod)];
    case 'perch':
      return [SPRING_KEY];
  }
};

/** The named point where an adjuster is to be found; null where it is no single point. */
export const pointOfAdjuster = (axle: AxleDocument, adjuster: AdjusterDocument): string | null => {
  switch (adjuster.kind) {
    case 'slide':
    case 'eccentric-bolt':
    case 'offset-bushing':
      return adjuster.moves;
    case 'clamp-eccentric':
      return adjuster.bolt;
    case 'turnbuckle':
      return axle.rods?.[adjuster.rod]?.[0] ?? (adjuster.rod === 'tieRod' ? 'rackEnd' : null);
    case 'perch':
      return axle.layout === 'strut' ? 'strutFoot' : (axle.spring?.lower ?? null);
  }
};
