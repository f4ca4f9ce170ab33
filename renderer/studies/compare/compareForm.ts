import { toRadians, type AxleName, type CarDocument, type Position } from '../../../geometry/index';
import type { CurveOver } from '../../compute/curves';
import type { AgainstChoice } from '../../setups/againstChoices';
import type { Bench } from '../../state/benchStore';
import type { Compared } from '../../state/compared';
import { atOf, placeOf } from '../kept/keptParts';
import type { QuestionForms } from '../kept/useQuestionPage';
import { faultOfPlace, RIDE_HEIGHT, type Place } from '../question/place';

/** The question of a comparison, as it stands in its sentence. */
export interface CompareForm {
  /** what the setup on the bench is held against, by the values of the choices; null: what the bench is */
  readonly others: readonly string[] | null;
  readonly place: Place;
  readonly over: CurveOver;
  /** readings of the four curves */
  readonly curves: readonly string[];
  /** readings that do not differ too */
  readonly withAlike: boolean;
}

/** Others beside the setup on the bench: more columns than these are no table that one reads. */
export const MOST_OTHERS = 3;

export const beginCompare = (): CompareForm => ({
  others: null,
  place: RIDE_HEIGHT,
  over: 'bump',
  curves: ['camber', 'toe', 'caster', 'rollCentreHeight'],
  withAlike: true,
});

const documentOf = ({ againstCar }: AgainstChoice, bench: Bench, saved: CarDocument | null): CarDocument => {
  switch (againstCar.kind) {
    case 'own':
      return bench.document;
    case 'saved':
      return saved ?? bench.document;
    case 'file':
    case 'answer':
      return againstCar.document;
  }
};

/** What is compared with, as it stands now: a choice that is no longer there is left out. */
export const othersOf = (
  { others }: Pick<CompareForm, 'others'>,
  choices: readonly AgainstChoice[],
  bench: Bench,
  saved: CarDocument | null,
  asOnBench: Compared | null,
): readonly (Compared & { readonly value: string })[] => {
  const standard = asOnBench && choices.find(({ value }) => value === `${bench.againstCar.kind}:${asOnBench.setup}`);
  const wanted = others ?? (standard ? [standard.value] : choices.slice(0, 1).map(({ value }) => value));
  return [...new Set(wanted)].slice(0, MOST_OTHERS).flatMap((value) => {
    const choice = choices.find((one) => one.value === value);
    return choice ? [{ value, document: documentOf(choice, bench, saved), setup: choice.against, name: choice.label }] : [];
  });
};

/** Where everything is compared; null where a field cannot be read. */
export const comparePosition = (place: Place, document: CarDocument, axle: AxleName): Position | null => {
  if (faultOfPlace(place) !== null) return null;
  const { travel, rack, roll } = place;
  return {
    travel: travel.value ?? 0,
    rack: document[axle]?.steering === undefined ? 0 : (rack.value ?? 0),
    roll: toRadians(roll.value ?? 0),
  };
};

const OWN = 'own:';

/** How the form and the question of the file become one another. */
export const compareForms = (axle: AxleName): QuestionForms<'compare', CompareForm> => ({
  ask: 'compare',
  begin: beginCompare,
  formOf: ({ against, at, motion, readings, alike }) => {
    const begun = beginCompare();
    return {
      others: against?.map((setup) => `${OWN}${setup}`) ?? begun.others,
      place: placeOf(at),
      over: motion ?? begun.over,
      curves: begun.curves.map((number, index) => readings?.[index] ?? number),
      withAlike: alike ?? begun.withAlike,
    };
  },
  questionOf: (form) => {
    if (faultOfPlace(form.place) !== null) return { fault: null };
    if (form.others?.some((value) => !value.startsWith(OWN)) === true)
      return { fault: 'Only setups of this file can be kept in it: one here is of another file, of an answer or as saved.' };
    const at = atOf(form.place);
    return {
      question: {
        ask: 'compare',
        axle,
        ...(form.others !== null && form.others.length > 0 && { against: form.others.map((value) => value.slice(OWN.length)) }),
        ...(at && { at }),
        motion: form.over,
        readings: form.curves,
        alike: form.withAlike,
      },
    };
  },
});
