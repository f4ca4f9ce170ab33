import type { AdjusterDocument, AxleDocument, AxleName, CarDocument } from '../../../geometry/index';
import { renamedFrom, withKey, withNames, withPart, withValues, type Renamed } from './holders';

type Survey = NonNullable<CarDocument['survey']>[string];
type Question = NonNullable<CarDocument['questions']>[string];

const inAdjuster = (adjuster: AdjusterDocument, renamed: Renamed): AdjusterDocument => {
  switch (adjuster.kind) {
    case 'slide':
    case 'eccentric-bolt':
    case 'offset-bushing':
      return withNames(adjuster, ['moves'], renamed);
    case 'clamp-eccentric':
      return withNames(adjuster, ['pivot', 'bolt'], renamed);
    case 'turnbuckle':
    case 'perch':
      return adjuster;
  }
};

const inAxle = (axle: AxleDocument, from: string, to: string): AxleDocument => {
  const renamed = renamedFrom(from, to);
  let now: AxleDocument = { ...axle, points: withKey(axle.points, from, to) };
  now = withPart(now, 'rods', (rods) => withValues(rods, ([inner, outer]) => [renamed(inner), renamed(outer)] as const));
  now = withPart(now, 'trailingArm', (arm) => withNames(arm, ['pivot'], renamed));
  now = withPart(now, 'right', (right) => withPart(right, 'points', (points) => withKey(points, from, to)));
  now = withPart(now, 'spring', (spring) => withNames(spring, ['upper', 'lower'], renamed));
  now = withPart(now, 'damper', (damper) => withNames(damper, ['upper', 'lower'], renamed));
  return withPart(now, 'adjusters', (adjusters) => withValues(adjusters, (adjuster) => inAdjuster(adjuster, renamed)));
};

const inSurvey = (survey: Survey, from: string, to: string): Survey => {
  const known = withPart(survey, 'known', (points) => withKey(points, from, to));
  const renamed = renamedFrom(from, to);
  return {
    ...known,
    observations: known.observations.map((one) =>
      'point' in one ? withNames(one, ['point'], renamed) : withNames(one, ['from', 'to'], renamed),
    ),
  };
};

const inQuestion = (question: Question, axle: AxleName, renamed: Renamed): Question =>
  'may' in question
    ? {
        ...question,
        may: question.may.map((may) => ('point' in may && may.axle === axle ? withNames(may, ['point'], renamed) : may)),
      }
    : question;

/** The car with one point of an axle under another name, wherever it is named: links, parts on it, studies and surveys. */
export const pointRenamed = (document: CarDocument, axle: AxleName, from: string, to: string): CarDocument => {
  const renamed = renamedFrom(from, to);
  const other = document[axle === 'front' ? 'rear' : 'front'];
  const isAmbiguous = other !== undefined && Object.hasOwn(other.points, from);
  const isHere = (entry: { readonly axle?: AxleName }): boolean =>
    entry.axle === undefined ? !isAmbiguous : entry.axle === axle;
  let now = withPart(document, axle, (part) => inAxle(part, from, to));
  now = withPart(now, 'joints', (joints) => {
    const joint = joints[from];
    return joint && isHere(joint) ? withKey(joints, from, to) : joints;
  });
  now = withPart(now, 'spans', (spans) =>
    withValues(spans, (span) => (isHere(span) ? withNames(span, ['from', 'to'], renamed) : span)),
  );
  now = withPart(now, 'questions', (questions) => withValues(questions, (question) => inQuestion(question, axle, renamed)));
  now = withPart(now, 'uncertainty', (uncertainty) => withPart(uncertainty, axle, (sigmas) => withKey(sigmas, from, to)));
  return withPart(now, 'survey', (surveys) =>
    withValues(surveys, (survey) => (survey.axle === axle ? inSurvey(survey, from, to) : survey)),
  );
};
