import {
  findReading,
  mattersOf,
  setupNames,
  setWithin,
  toRadians,
  type AxleName,
  type CarDocument,
  type Sides,
  type StudyOrder,
} from '../../../geometry/index';
import { setupNamed } from '../../state/settings';
import { atOf, placeOf, setToeOf, toeOf } from '../kept/keptParts';
import type { QuestionForms } from '../kept/useQuestionPage';
import { EMPTY_FIELD, faultOfNumber, fieldOf, type FieldValue } from '../question/fieldValue';
import { faultOfPlace, RIDE_HEIGHT, type Place } from '../question/place';
import { askedToe, faultOfToe, ownToe, type ToeChoice } from '../question/toeChoice';

export type WaysOrder = Extract<StudyOrder, { study: 'ways' }> & { readonly from: string };

/** The sentence with its fields, as it stands on the page. */
export interface WaysForm {
  readonly reading: string;
  readonly side: Sides;
  readonly place: Place;
  readonly value: FieldValue;
  readonly tolerance: FieldValue;
  readonly setup: string;
  readonly toe: ToeChoice;
  readonly pairs: boolean;
  readonly withLocked: boolean;
}

/** Fields of the sentence that can be wrong. */
export type WaysFault = Partial<Record<'reading' | 'place' | 'value' | 'tolerance' | 'setup' | 'toe', string>>;

/** How near a reading is set, else what of it counts, where something says so. */
export const toleranceOf = (document: CarDocument, reading: string): FieldValue =>
  fieldOf(setWithin(document, reading) ?? mattersOf(document, reading));

/** The sentence with its blanks. */
export const beginWays = (document: CarDocument, setup: string): WaysForm => ({
  reading: 'camber',
  side: 'both',
  place: RIDE_HEIGHT,
  value: EMPTY_FIELD,
  tolerance: toleranceOf(document, 'camber'),
  setup,
  toe: { kind: 'own', value: EMPTY_FIELD },
  pairs: true,
  withLocked: false,
});

/** Another reading is asked about: its number is another one. */
export const withReading = (form: WaysForm, document: CarDocument, reading: string): WaysForm => ({
  ...form,
  reading,
  value: EMPTY_FIELD,
  tolerance: toleranceOf(document, reading),
});

/** What the sentence asks, or what is wrong with it. */
export const readWays = (
  form: WaysForm,
  document: CarDocument,
  axle: AxleName,
): { readonly order: WaysOrder } | { readonly faults: WaysFault } => {
  const entry = findReading(form.reading);
  const place = faultOfPlace(form.place);
  const value = faultOfNumber(form.value);
  const tolerance = faultOfNumber(form.tolerance) ?? ((form.tolerance.value ?? 0) <= 0 ? 'it has to be over 0' : null);
  const toe = faultOfToe(form.toe);
  const faults: WaysFault = {
    ...((entry === undefined || entry.of === 'car' || entry.components !== undefined) && {
      reading: `There is no reading “${form.reading}” of a corner or an axle.`,
    }),
    ...(place !== null && { place: `Where: ${place}.` }),
    ...(value !== null && { value: `Bring it to what: ${value}.` }),
    ...(tolerance !== null && { tolerance: `How near counts as reached: ${tolerance}.` }),
    ...(!setupNames(document).includes(form.setup) && { setup: `There is no setup “${form.setup}” any more.` }),
    ...(toe !== null && { toe }),
  };
  if (entry === undefined || Object.keys(faults).length > 0) return { faults };
  const asked = askedToe(form.toe, ownToe(document, form.setup, [axle]));
  return {
    order: {
      study: 'ways',
      document,
      from: form.setup,
      question: {
        setup: setupNamed(document, form.setup),
        entry,
        value: form.value.value ?? 0,
        axle,
        side: form.side,
        tolerance: form.tolerance.value ?? 0,
        toeReset: asked,
        at: {
          travel: form.place.travel.value ?? 0,
          rack: form.place.rack.value ?? 0,
          roll: toRadians(form.place.roll.value ?? 0),
        },
        pairs: form.pairs,
        withLocked: form.withLocked,
        withWalls: true,
      },
    },
  };
};

/** How the form and the question of the file become one another. */
export const waysForms = (document: CarDocument, setup: string, axle: AxleName): QuestionForms<'ways', WaysForm> => ({
  ask: 'ways',
  begin: () => beginWays(document, setup),
  formOf: (question) => ({
    reading: question.reading,
    side: question.side ?? 'both',
    place: placeOf(question.at),
    value: fieldOf(question.value),
    tolerance: question.tolerance === undefined ? toleranceOf(document, question.reading) : fieldOf(question.tolerance),
    setup: question.setup ?? setup,
    toe: toeOf(question.setToe),
    pairs: question.pairs ?? true,
    withLocked: question.locked === true,
  }),
  questionOf: (form) => {
    const read = readWays(form, document, axle);
    if ('faults' in read) return { fault: null };
    const at = atOf(form.place);
    const { value, tolerance } = read.order.question;
    return {
      question: {
        ask: 'ways',
        setup: form.setup,
        setToe: setToeOf(form.toe),
        ...(form.withLocked && { locked: true }),
        axle,
        side: form.side,
        ...(at && { at }),
        reading: form.reading,
        value,
        ...(tolerance !== undefined && { tolerance }),
        pairs: form.pairs,
      },
    };
  },
});
