import type { AxleName, CarDocument, KeptQuestionDocument } from '../../../geometry/index';
import { renamedFrom, withKey, withNames, withPart, withValues, type Renamed } from './holders';

const inQuestion = (question: KeptQuestionDocument, axle: AxleName, renamed: Renamed): KeptQuestionDocument => {
  switch (question.ask) {
    case undefined:
    case 'reach':
      return {
        ...question,
        may: question.may.map((may) => ('adjuster' in may && may.axle === axle ? withNames(may, ['adjuster'], renamed) : may)),
      };
    case 'map':
      if (question.axle !== axle) return question;
      return {
        ...question,
        x: withNames(question.x, ['adjuster'], renamed),
        y: 'adjuster' in question.y ? withNames(question.y, ['adjuster'], renamed) : question.y,
      };
    default:
      return question;
  }
};

/** The car with one adjuster of an axle under another name, wherever it is set, limited, turned for toe or asked about. */
export const adjusterRenamed = (document: CarDocument, axle: AxleName, from: string, to: string): CarDocument => {
  const renamed = renamedFrom(from, to);
  const other = document[axle === 'front' ? 'rear' : 'front'];
  const isAmbiguous = other?.adjusters !== undefined && Object.hasOwn(other.adjusters, from);
  let now = withPart(document, axle, (part) =>
    withNames(
      withPart(part, 'adjusters', (adjusters) => withKey(adjusters, from, to)),
      ['toeAdjuster'],
      renamed,
    ),
  );
  now = withPart(now, 'setups', (setups) =>
    withValues(setups, (setup) =>
      withPart(setup, axle, (settings) =>
        (['both', 'left', 'right'] as const).reduce(
          (part, side) => withPart(part, side, (values) => withKey(values, from, to)),
          settings,
        ),
      ),
    ),
  );
  now = withPart(now, 'limits', (limits) =>
    limits.map((limit) =>
      (limit.axle === undefined ? !isAmbiguous : limit.axle === axle) ? withNames(limit, ['setting'], renamed) : limit,
    ),
  );
  return withPart(now, 'questions', (questions) => withValues(questions, (question) => inQuestion(question, axle, renamed)));
};
