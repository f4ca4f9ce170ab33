import type { AskedToe, AxleName, CarDocument } from '../../../geometry/index';
import { setupNamed } from '../../state/settings';
import { faultOfNumber, type FieldValue } from './fieldValue';

/** What becomes of toe while parts are turned: set anew to the setup's own, or to a number; or left to follow. */
export interface ToeChoice {
  readonly kind: 'own' | 'value' | 'follow';
  /** [degrees per wheel] */
  readonly value: FieldValue;
}

/** What a study is told. */
export const askedToe = ({ kind, value }: ToeChoice): AskedToe =>
  kind === 'own' ? true : kind === 'follow' ? undefined : (value.value ?? undefined);

/** Toe that a setup keeps on an axle [degrees per wheel]: its own, else that of the drawing; null where nothing turns toe there. */
export const ownToe = (document: CarDocument, setup: string, axle: AxleName): number | null => {
  const described = document[axle];
  if (described?.toeAdjuster === undefined) return null;
  return setupNamed(document, setup)[axle]?.setToe ?? described.wheel.toe;
};

export const faultOfToe = ({ kind, value }: ToeChoice): string | null => {
  if (kind !== 'value') return null;
  const fault = faultOfNumber(value);
  if (fault !== null) return `Toe: ${fault}.`;
  return Math.abs(value.value ?? 0) > 20 ? 'Toe: at most 20° either way.' : null;
};
