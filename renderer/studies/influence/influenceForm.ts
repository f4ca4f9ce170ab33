import { toRadians, type AxleName, type CarDocument, type StudyOrder } from '../../../geometry/index';
import { setupNamed } from '../../state/settings';
import { atOf, placeOf, setToeOf, toeOf } from '../kept/keptParts';
import type { QuestionForms } from '../kept/useQuestionPage';
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
  return {
    study: 'influence',
    document,
    question: {
      setup: setupNamed(document, setup),
      axles: [axle],
      side: form.side,
      toeReset: askedToe(form.toe, ownToe(document, setup, [axle])),
      at: {
        travel: travel.value ?? 0,
        rack: document[axle]?.steering === undefined ? 0 : (rack.value ?? 0),
        roll: toRadians(roll.value ?? 0),
      },
      withLocked: form.withLocked,
    },
  };
};

/** How the form and the question of the file become one another. */
export const influenceForms = (axle: AxleName): QuestionForms<'influence', InfluenceForm> => ({
  ask: 'influence',
  begin: beginInfluence,
  formOf: (question) => ({
    side: question.side ?? 'both',
    place: placeOf(question.at),
    toe: toeOf(question.setToe),
    withLocked: question.locked === true,
    readings: question.readings ?? USUAL_COLUMNS,
  }),
  questionOf: (form) => {
    if (influenceFault(form) !== null) return { fault: null };
    if (form.readings.length === 0) return { fault: 'A question that is kept has one column at least.' };
    const at = atOf(form.place);
    return {
      question: {
        ask: 'influence',
        setToe: setToeOf(form.toe),
        ...(form.withLocked && { locked: true }),
        axle,
        side: form.side,
        ...(at && { at }),
        readings: form.readings,
      },
    };
  },
});
