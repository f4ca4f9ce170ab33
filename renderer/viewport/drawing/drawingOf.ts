import { placeSetup } from '../../compute/placeSetup';
import type { BenchState } from '../../state/benchStore';
import { chosenUnits } from '../../state/chosenUnits';
import { scopeOf } from '../../state/viewing';
import { mmPerFileUnit } from '../../units/fileLength';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { wheelSections } from '../wheelSection';
import { carDrawing, type DrawnAxle, type DrawnView } from './carDrawing';
import { carTitle } from '../../state/carTitle';

const positionWords = ({ travel, rollDeg, rack }: BenchState['position'], units: ShownUnits): string => {
  const length = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const angle = shownQuantity({ quantity: 'angle', decimals: 2 }, units);
  const moved = (mm: number): string => withUnit(length.formatChange(mm), length.unit);
  const parts = [
    travel === 0 ? '' : `bump ${moved(travel)}`,
    rollDeg === 0 ? '' : `roll ${withUnit(angle.formatChange(rollDeg), angle.unit)}`,
    rack === 0 ? '' : `rack ${moved(rack)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'Standing' : `At ${parts.join(', ')}`;
};

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
  const title = [carTitle(state) ?? '', bench.setup].filter((part) => part !== '').join(', ');
  return axles.length === 0 ? null : carDrawing({ title, position: positionWords(state.position, units), view, units, axles });
};
