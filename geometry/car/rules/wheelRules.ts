import { at, entriesOf, isThere, numberOf, type Place } from '../place';
import type { AxleView } from './axleView';

/** A tyre under load keeps more of its radius than this, even flat on a car that stands. */
const LEAST_OF_TYRE = 0.75;
/** Without rim and tyre to hold it against: the wheels of any car [mm]. */
const [LEAST_RADIUS, MOST_RADIUS] = [75, 1500];

/** A wheel's loaded radius where the file gives one, with what it can be held against. */
export interface WheelView {
  readonly loadedRadius: Place;
  readonly mmPerUnit: number;
  readonly rimDiameter: number | undefined;
  readonly tyreRadius: number | undefined;
}

/** Every place that gives a loaded radius: the axles' wheels, right-hand ones of their own, and those of setups. */
export function wheelsOf(car: Place, views: readonly AxleView[]): WheelView[] {
  const wheels: WheelView[] = [];
  for (const { axle, place, mmPerUnit } of views) {
    const own = at(place, 'wheel');
    const others = [at(place, 'right', 'wheel'), ...entriesOf(at(car, 'setups')).map(([, setup]) => at(setup, axle, 'wheel'))];
    for (const wheel of [own, ...others]) {
      const loadedRadius = at(wheel, 'loadedRadius');
      if (!isThere(loadedRadius)) continue;
      // what a partial wheel leaves out is the axle's
      const [rimDiameter, tyreRadius] = ['rimDiameter', 'tyreRadius'].map(
        (key) => numberOf(at(wheel, key)) ?? numberOf(at(own, key)),
      );
      wheels.push({ loadedRadius, mmPerUnit, rimDiameter, tyreRadius });
    }
  }
  return wheels;
}

/** Why a loaded radius cannot well be true; null when it can. */
export function whatIsOddAbout({ loadedRadius, mmPerUnit, rimDiameter, tyreRadius }: WheelView): string | null {
  const radius = numberOf(loadedRadius);
  if (radius === undefined) return null;
  const words = `The loaded radius ${radius}`;
  if (rimDiameter !== undefined && radius < rimDiameter / 2)
    return `${words} is less than that of the rim, ${rimDiameter / 2}: the wheel would stand on its rim.`;
  if (tyreRadius !== undefined && radius > tyreRadius) return `${words} is more than the tyre's own radius, ${tyreRadius}.`;
  if (tyreRadius !== undefined && radius < LEAST_OF_TYRE * tyreRadius)
    return `${words} is far less than the tyre's own radius, ${tyreRadius}.`;
  const inMm = radius * mmPerUnit;
  if (inMm >= LEAST_RADIUS && inMm <= MOST_RADIUS) return null;
  return `${words}${mmPerUnit === 1 ? ' mm' : ' in'} is not that of the wheel of a car.`;
}
