import type { MeshFiles } from '../../geometry/index';
import type { LoadedCar } from './carSource';
import { CommandError } from './commandError';
import { meshesOf } from './meshFiles';

/** The meshes that least gaps need: one that cannot be read leaves a gap unknown, and the question answered. */
export async function meshesForGaps(car: LoadedCar): Promise<MeshFiles> {
  try {
    return await meshesOf(car);
  } catch (thrown) {
    if (thrown instanceof CommandError) return {};
    throw thrown;
  }
}
