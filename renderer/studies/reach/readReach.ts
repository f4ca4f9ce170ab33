import {
  contradictionsIn,
  findReading,
  setupNames,
  type AxleName,
  type CarDocument,
  type MayDocument,
  type QuestionDocument,
  type WantedDocument,
} from '../../../geometry/index';
import { faultOfNumber, type FieldValue } from '../question/fieldValue';
import { faultOfPlace } from '../question/place';
import { askedToe, faultOfToe, ownToe } from '../question/toeChoice';
import { axlesAsked, DIRECTIONS, type MayForm, type ReachForm, type WantedForm } from './reachForm';

/** What is wrong, by the field: "wanted.2.value", "may.1.step", "wanted", "count". */
export type ReachFaults = Readonly<Record<string, string>>;

/** Positions of a stretch: more say no more, and take longer. */
const MOST_STEPS = 1001;
const MOST_ANSWERS = 1000;

class Faults {
  readonly found: Record<string, string> = {};

  say(field: string, fault: string | null): void {
    if (fault !== null) this.found[field] ??= fault;
  }

  /** The number of a field; NaN and a fault where there is none. */
  number(key: string, name: string, field: FieldValue): number {
    const fault = faultOfNumber(field);
    this.say(key, fault === null ? null : `${name}: ${fault}.`);
    return field.value ?? NaN;
  }

  whole(key: string, name: string, field: FieldValue, least: number, most: number): number {
    const value = this.number(key, name, field);
    const isWrong = field.value !== null && (!Number.isInteger(value) || value < least || value > most);
    this.say(key, isWrong ? `${name}: a whole number from ${least} to ${most}.` : null);
    return value;
  }
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const readWanted = (wanted: WantedForm, document: CarDocument, faults: Faults): WantedDocument => {
  const key = (field: string): string => `wanted.${wanted.id}.${field}`;
  const entry = findReading(wanted.reading);
  const name = entry?.name ?? wanted.reading;
  const has = (axle: AxleName): boolean => document[axle] !== undefined;
  if (entry === undefined || entry.components !== undefined)
    faults.say(key('reading'), `There is no reading “${wanted.reading}”.`);
  else if (entry.of === 'car' && !(has('front') && has('rear')))
    faults.say(key('reading'), `${name} needs a car with both axles.`);
  if (entry?.of !== 'car' && !has(wanted.axle)) faults.say(key('axle'), `This car has no ${wanted.axle} axle.`);
  const tolerance = faults.number(key('tolerance'), `${name}, tolerance`, wanted.tolerance);
  if (tolerance <= 0) faults.say(key('tolerance'), `${name}, tolerance: it has to be over 0: the score is miss ÷ tolerance.`);
  return {
    reading: wanted.reading,
    ...(entry?.of !== 'car' && { axle: wanted.axle }),
    ...(entry?.of === 'corner' && { side: wanted.side }),
    ...readWhere(wanted, name, key, faults),
    ...(wanted.isChange && { change: true }),
    ...readAim(wanted, name, key, faults),
    tolerance,
  };
};

/** One line of what is wanted by itself; null while something in it is wrong. */
export const wantedOf = (wanted: WantedForm, document: CarDocument): WantedDocument | null => {
  const faults = new Faults();
  const read = readWanted(wanted, document, faults);
  return Object.keys(faults.found).length === 0 ? read : null;
};

/** The field of a line that says what it leaves possible. */
const aimField = ({ relation }: WantedForm): 'value' | 'least' | 'greatest' =>
  relation === 'value' ? 'value' : relation === 'above' ? 'least' : 'greatest';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];
const lineWords = (index: number): string => `the ${ORDINALS[index] ?? `${index + 1}th`}`;

/** Lines that exclude each other: said at the fields of each of them. */
const readContradictions = (lines: readonly WantedForm[], document: CarDocument, faults: Faults): void => {
  const wanted = lines.map((line) => wantedOf(line, document) ?? undefined);
  for (const { lines: excluded, at } of contradictionsIn(wanted, (reading) => findReading(reading)?.of === 'corner')) {
    const isStanding = Object.values(at).every((part) => part === 0);
    for (const index of excluded) {
      const line = lines[index];
      if (!line) continue;
      const name = findReading(line.reading)?.name ?? line.reading;
      const others = excluded.filter((other) => other !== index).map(lineWords);
      const where = isStanding ? 'at ride height' : 'at a place that they share';
      faults.say(
        `wanted.${line.id}.${aimField(line)}`,
        `${name}: this line${others.length > 1 ? ', ' : ' and '}${others.join(' and ')} exclude each other ${where}: no car meets ${others.length === 1 ? 'both' : 'all of them'}.`,
      );
    }
  }
};

const readWhere = (
  wanted: WantedForm,
  name: string,
  key: (field: string) => string,
  faults: Faults,
): Pick<WantedDocument, 'at' | 'over'> => {
  if (wanted.where === 'at') {
    const fault = faultOfPlace(wanted.place);
    faults.say(key('where'), fault === null ? null : `${name}, where: ${fault}.`);
    const { travel, rack, roll } = wanted.place;
    return { at: { travel: wanted.apart ?? travel.value ?? 0, rack: rack.value ?? 0, roll: roll.value ?? 0 } };
  }
  const from = faults.number(key('where'), `${name}, from`, wanted.from);
  const to = faults.number(key('where'), `${name}, to`, wanted.to);
  const steps = faults.whole(key('where'), `${name}, positions`, wanted.steps, 1, MOST_STEPS);
  if (steps === 1 && from !== to)
    faults.say(key('where'), `${name}, positions: one is no stretch: take 2 at least, or want it at one place.`);
  if (steps > 1 && from >= to)
    faults.say(key('where'), `${name}: the stretch runs from the lower to the higher, not ${from} to ${to}.`);
  return { over: { motion: wanted.motion, from, to, steps } };
};

const readAim = (
  wanted: WantedForm,
  name: string,
  key: (field: string) => string,
  faults: Faults,
): Pick<WantedDocument, 'value' | 'range'> => {
  switch (wanted.relation) {
    case 'value':
      return { value: faults.number(key('value'), capital(name), wanted.value) };
    case 'above':
      return { range: [faults.number(key('least'), `${name}, above`, wanted.least), null] };
    case 'below':
      return { range: [null, faults.number(key('greatest'), `${name}, below`, wanted.greatest)] };
    case 'steady': {
      const either = faults.number(key('greatest'), `${name}, no more than`, wanted.greatest);
      if (either < 0) faults.say(key('greatest'), `${name}: so far either way is no number below 0.`);
      return { range: [0 - either, either] };
    }
    case 'within': {
      const least = faults.number(key('least'), `${name}, from`, wanted.least);
      const greatest = faults.number(key('greatest'), `${name}, to`, wanted.greatest);
      if (least > greatest) faults.say(key('greatest'), `${name}: the range is the wrong way round: the lower end stands first.`);
      return { range: [least, greatest] };
    }
  }
};

const readMay = (may: MayForm, document: CarDocument, withLocked: boolean, faults: Faults): MayDocument => {
  const key = (field: string): string => `may.${may.id}.${field}`;
  const axle = document[may.axle];
  if (may.kind === 'adjuster') {
    const adjuster = axle?.adjusters?.[may.name];
    if (!adjuster) faults.say(key('name'), `The ${may.axle} axle has no adjuster “${may.name}” any more.`);
    else if (adjuster.locked !== undefined && !withLocked)
      faults.say(
        key('name'),
        `${adjuster.label ?? may.name} is locked: ${adjuster.locked}. Allow what is locked, or take it out.`,
      );
    return { axle: may.axle, adjuster: may.name, sides: may.sides };
  }
  if (!axle || !Object.hasOwn(axle.points, may.name))
    faults.say(key('name'), `The ${may.axle} axle has no point “${may.name}” any more.`);
  const least = faults.number(key('range'), `${may.name}, from`, may.least);
  const greatest = faults.number(key('range'), `${may.name}, to`, may.greatest);
  if (least > greatest) faults.say(key('range'), `${may.name}: the range is the wrong way round: the lower end stands first.`);
  const step = faults.number(key('step'), `${may.name}, step`, may.step);
  if (step <= 0) faults.say(key('step'), `${may.name}, step: it has to be over 0.`);
  const own = may.along.map((part, axis) => faults.number(key('along'), `${may.name}, ${'XYZ'.charAt(axis)}`, part));
  const along = may.direction === 'own' ? own : DIRECTIONS[may.direction].along;
  const [x = 0, y = 0, z = 0] = along;
  if (x === 0 && y === 0 && z === 0) faults.say(key('along'), `${may.name}: a direction of no length points nowhere.`);
  return { axle: may.axle, point: may.name, along: [x, y, z], range: [least, greatest], step, sides: may.sides };
};

/** The same thing may be named once only: twice it would be two different numbers of one part. */
const sameAs = (a: MayForm, b: MayForm): boolean => a.kind === b.kind && a.axle === b.axle && a.name === b.name && a.id !== b.id;

/** The question that stands on the page, or what is wrong with it. */
export const readReach = (
  form: ReachForm,
  document: CarDocument,
): { readonly question: QuestionDocument } | { readonly faults: ReachFaults } => {
  const faults = new Faults();
  if (form.wanted.length === 0) faults.say('wanted', 'Nothing is wanted: add a reading.');
  if (form.may.length === 0) faults.say('may', 'Nothing may be turned: choose parts.');
  if (!setupNames(document).includes(form.setup)) faults.say('setup', `There is no setup “${form.setup}” any more.`);
  const wanted = form.wanted.map((one) => readWanted(one, document, faults));
  readContradictions(form.wanted, document, faults);
  const may = form.may.map((one) => readMay(one, document, form.withLocked, faults));
  const twice = form.may.find((one, index) => form.may.slice(0, index).some((other) => sameAs(one, other)));
  if (twice && twice.kind === 'adjuster') faults.say(`may.${twice.id}.name`, `${twice.name} stands here twice.`);
  const count = faults.whole('count', 'How many answers', form.count, 1, MOST_ANSWERS);
  faults.say('toe', faultOfToe(form.toe));
  if (Object.keys(faults.found).length > 0) return { faults: faults.found };
  return {
    question: {
      setup: form.setup,
      setToe: askedToe(form.toe, ownToe(document, form.setup, axlesAsked(form, document))) ?? false,
      ...(form.withLocked && { locked: true }),
      count,
      ...(form.seed !== null && { seed: form.seed }),
      wanted,
      may,
    },
  };
};
