import type { PlacelessFault } from '../fault';
import { isThere, type Place } from '../place';
import { judgeAdjusters } from './adjusterRules';
import { AXLES, viewAxle } from './axleView';
import { judgeCar } from './carRules';
import { judgeFitUp } from './fitUpRules';
import { judgeLinkage } from './linkageRules';
import { judgeLoads } from './loadRules';
import { judgeCoordinates, judgePoints } from './pointRules';
import { judgeSetups } from './setupRules';
import { judgeSprings } from './springRules';
import { judgeStudies } from './studyRules';

/**
 * Everything that one field of a car file asks of another.
 * The file may break its form too: each rule reads what it needs and is silent where that is missing or broken.
 */
export function judgeRules(document: unknown): PlacelessFault[] {
  const faults: PlacelessFault[] = [];
  const report = (fault: PlacelessFault): void => {
    faults.push(fault);
  };
  const car: Place = { value: document, path: [] };
  const views = AXLES.map((axle) => viewAxle(car, axle));
  judgeCar(car, views, report);
  for (const view of views) {
    if (!isThere(view.place)) continue;
    judgePoints(view, report);
    judgeLinkage(view, report);
    judgeAdjusters(view, report);
    judgeSprings(view, report);
  }
  judgeCoordinates(car, views[0].mmPerUnit, report);
  judgeSetups(car, views, report);
  judgeFitUp(car, views, report);
  judgeLoads(car, views, report);
  judgeStudies(car, views, report);
  return faults;
}
