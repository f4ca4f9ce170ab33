import { findReading } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import type { BenchState } from '../state/benchStore';
import { formatReading } from '../units/format';
import type { AxleModel } from './axleModel';
import { groundFrame } from './groundFrame';
import { keysOfAdjuster, pointOfAdjuster } from './partKeys';
import type { OverlayContent } from './overlayItems';

const lengthText = (key: string, value: unknown): string | null => {
  const entry = findReading(key);
  return entry && typeof value === 'number' ? `${formatReading(entry, value)} mm` : null;
};

/** What the view writes over the solids, of the answer that is shown; null before there is one. */
export const overlayContent = (state: BenchState, model: AxleModel, outlines: boolean): OverlayContent | null => {
  const { shown, history, axle: axleName, held, view } = state;
  const axle = history?.present.document[axleName];
  if (!shown || !axle) return null;
  const { row, compared } = shown;
  const adjuster = held === null ? undefined : axle.adjusters?.[held];
  const other = compared.ok && compared.value !== row ? compared.value.placed : null;
  return {
    view,
    placed: row.placed,
    frame: model.frame(),
    compared: other && { placed: other, frame: groundFrame(other.ground) },
    axle,
    held: adjuster && held !== null ? { label: adjuster.label ?? nameOfKey(held), point: pointOfAdjuster(axle, adjuster) } : null,
    trail: lengthText('mechanicalTrail', row.left['mechanicalTrail']),
    scrub: lengthText('scrubRadius', row.left['scrubRadius']),
    rollCentre: lengthText('rollCentreHeight', row.both['rollCentreHeight']),
    outlines,
    wheelRadius: model.subject.wheelRadius,
  };
};

/** The solids that are under the hand. */
export const heldKeys = ({ history, axle, held }: BenchState): readonly string[] =>
  keysOfAdjuster(held === null ? undefined : history?.present.document[axle]?.adjusters?.[held]);
