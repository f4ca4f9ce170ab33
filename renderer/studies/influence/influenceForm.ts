import { toRadians, type AxleName, type CarDocument, type StudyOrder } from '../../../geometry/index';
import { setupNamed } from '../../state/settings';
import { faultOfPlace, RIDE_HEIGHT, type Place } from '../question/place';
import { EMPTY_FIELD } from '../question/fieldValue';
import { askedToe, faultOfToe, ownToe, type ToeChoice } from '../question/toeChoice';

export type InfluenceOrder = Extract<StudyOrder, { study: 'influence' }>;

/** The question of the matrix, as it stands in its sentence. */
export interface InfluenceForm {
  readonly side: 'both' | 'left' | 'right';
  readonly place: Place;
  readonly toe: ToeChoice;
  readonly withLocked: boolean;
  /** readings that are columns, by key */
  readonly readings: readonly string[];
}

/** What a change of the alignment is judged by. */
export const USUAL_COLUMNS: readonly string[] = [
  'camber',
  'caster',
  'kingpinInclination',
  'mechanicalTrail',
  'scrubRadius',
  'rollCentreHeight',
  'bumpSteer',
  'camberGain',
  'track',
  'wheelbaseLeft',
];

export const beginInfluence = (): InfluenceForm => ({
  side: 'both',
  place: RIDE_HEIGHT,
  toe: { kind: 'own', value: EMPTY_FIELD },
  withLocked: false,
  readings: USUAL_COLUMNS,
});

export const influenceFault = ({ place, toe }: InfluenceForm): string | null => {
  const wrong = faultOfPlace(place);
  return wrong === null ? faultOfToe(toe) : `Where: ${wrong}.`;
};

/** The order of a form; null where something in it cannot be read. What is a column decides nothing. */
export const influenceOrder = (
  form: Omit<InfluenceForm, 'readings'>,
  document: CarDocument,
  setup: string,
  axle: AxleName,
): InfluenceOrder | null => {
  if (influenceFault({ ...form, readings: [] }) !== null) return null;
  const { travel, rack, roll } = form.place;
  const isReset = ownToe(document, setup, axle) !== null;
  return {
    study: 'influence',
    document,
    question: {
      setup: setupNamed(document, setup),
      axles: [axle],
      side: form.side,
      toeReset: isReset ? askedToe(form.toe) : undefined,
      at: {
        travel: travel.value ?? 0,
        rack: document[axle]?.steering === undefined ? 0 : (rack.value ?? 0),
        roll: toRadians(roll.value ?? 0),
      },
      withLocked: form.withLocked,
    },
  };
};
