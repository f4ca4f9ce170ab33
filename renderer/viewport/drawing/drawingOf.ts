import { placeSetup } from '../../compute/placeSetup';
import type { BenchState } from '../../state/benchStore';
import { chosenUnits } from '../../state/chosenUnits';
import { scopeOf } from '../../state/viewing';
import { mmPerFileUnit } from '../../units/fileLength';
import { positionWords, titleWords } from '../pictureWords';
import { wheelSections } from '../wheelSection';
import { carDrawing, type DrawnAxle, type DrawnView } from './carDrawing';

/** The drawing of what the bench shows; the whole car's where that is shown. Null where it has no answer. */
export const drawingOf = (state: BenchState, view: DrawnView): string | null => {
  const bench = state.history?.present;
  if (!bench || !state.shown) return null;
  const mm = mmPerFileUnit(bench.document);
  const units = chosenUnits(state);
  const other = state.axle === 'front' ? 'rear' : 'front';
  const wanted =
    scopeOf(state.preferences) === 'car' && view !== 'front' ? ([state.axle, other] as const) : ([state.axle] as const);
  const axles = wanted.flatMap((name): DrawnAxle[] => {
    const axle = bench.document[name];
    const placed =
      name === state.axle ? state.shown?.row.placed : axle && placeSetup(bench.document, bench.setup, name, state.position);
    if (!axle || !placed) return [];
    const { tyreRadius, width } = wheelSections(axle.wheel, mm);
    return [{ name, placed, tyreRadius, tyreWidth: width }];
  });
  const title = titleWords(state);
  return axles.length === 0 ? null : carDrawing({ title, position: positionWords(state.position, units), view, units, axles });
};
