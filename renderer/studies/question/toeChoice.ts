import type { AskedToe, AxleName, CarDocument } from '../../../geometry/index';
import { standingRow } from '../../compute/standing';
import { setupNamed } from '../../state/settings';
import { faultOfNumber, type FieldValue } from './fieldValue';

/** What becomes of toe while parts are turned: set anew to the setup's own, or to a number; or left to follow. */
export interface ToeChoice {
  readonly kind: 'own' | 'value' | 'follow';
  /** [degrees per wheel] */
  readonly value: FieldValue;
}

/** What is asked of a setup's own toe [degrees per wheel], and what that is on each axle that has a toe adjuster. */
export interface OwnToe {
  /** true: what the setup sets, else the drawing's, which is no other than where the car stands unless `isDrawn` */
  readonly asked: true | number;
  /** without repeats */
  readonly toes: readonly number[];
  /** the axles cannot be asked for one number: where the setup sets no toe it would be the drawing's */
  readonly isDrawn: boolean;
  /** the setup sets it on all of them: there it cannot be left to follow, since a set toe is set after every move */
  readonly isSet: boolean;
}

/** Nobody sets toe finer than a ten-thousandth of a degree. */
const STANDING_PLACES = 4;
const SAME = 0.5 * 10 ** -STANDING_PLACES;

/** Where the wheels of a setup stand by themselves [degrees], the mean of the two, rounded; null where the car does not close. */
const standingToe = (document: CarDocument, setup: string, axle: AxleName): number | null => {
  const row = standingRow({ document, setup }, axle);
  const [left, right] = [row?.left.toe, row?.right.toe];
  return typeof left !== 'number' || typeof right !== 'number' ? null : Number(((left + right) / 2).toFixed(STANDING_PLACES));
};

/** The setup's own toe on these axles: what it sets, else where it stands; null where nothing turns toe. */
export const ownToe = (document: CarDocument, setup: string, axles: readonly AxleName[]): OwnToe | null => {
  const found = axles.flatMap((axle) => {
    const described = document[axle];
    if (described?.toeAdjuster === undefined) return [];
    const set = setupNamed(document, setup)[axle]?.setToe;
    const said = set ?? described.wheel.toe;
    const toe = set ?? standingToe(document, setup, axle) ?? said;
    return [{ isSet: set !== undefined, said, toe: Math.abs(toe - said) <= SAME ? said : toe }];
  });
  if (found.length === 0) return null;
  const toes = [...new Set(found.map(({ toe }) => toe))];
  const [first] = toes;
  const isSet = found.every((one) => one.isSet);
  if (found.every(({ said, toe }) => said === toe)) return { asked: true, toes, isDrawn: false, isSet };
  if (first !== undefined && toes.length === 1) return { asked: first, toes, isDrawn: false, isSet };
  return { asked: true, toes: [...new Set(found.map(({ said }) => said))], isDrawn: true, isSet };
};

/** What a study is told. @param own - that of its setup */
export const askedToe = ({ kind, value }: ToeChoice, own: OwnToe | null): AskedToe =>
  own === null || kind === 'follow' ? undefined : kind === 'own' ? own.asked : (value.value ?? undefined);

export const faultOfToe = ({ kind, value }: ToeChoice): string | null => {
  if (kind !== 'value') return null;
  const fault = faultOfNumber(value);
  if (fault !== null) return `Toe: ${fault}.`;
  return Math.abs(value.value ?? 0) > 20 ? 'Toe: at most 20° either way.' : null;
};
