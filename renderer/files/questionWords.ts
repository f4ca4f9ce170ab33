import {
  findReading,
  type AtDocument,
  type AxleName,
  type CarDocument,
  type KeptQuestionDocument,
  type OverDocument,
  type QuestionDocument,
  type WantedDocument,
} from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { formatShort } from '../units/format';
import { shownQuantity, shownReading, withUnit } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';

const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
const listOf = (words: readonly string[]): string => words.filter((word) => word !== '').join(', ');

const readingName = (key: string): string => (findReading(key)?.name ?? key).toLowerCase();
const readingNames = (keys: readonly string[] | undefined): string => (keys ? list(keys.map(readingName)) : 'readings');
const partName = (document: CarDocument, axle: AxleName, name: string): string =>
  (document[axle]?.adjusters?.[name]?.label ?? nameOfKey(name)).toLowerCase();

const GAUGES = {
  bumpSteer: 'bump-steer gauge',
  swing: 'caster by swing',
  rim: 'toe at the rim',
  strings: 'toe by strings',
  camber: 'camber gauge',
  floor: 'cambers on a floor that is not level',
} as const;

/** Lengths of a question are mm in every file, angles degrees. */
class QuestionWords {
  constructor(
    private readonly document: CarDocument,
    private readonly units: ShownUnits,
  ) {}

  private moved(motion: OverDocument['motion'] | 'travel' | 'rack', value: number): string {
    const shown = shownQuantity({ quantity: motion === 'roll' ? 'angle' : 'length', decimals: 1 }, this.units);
    return `${value > 0 ? '+' : ''}${formatShort(shown.toShown(value), 3)}`;
  }

  private unitOf(motion: OverDocument['motion']): string {
    return shownQuantity({ quantity: motion === 'roll' ? 'angle' : 'length', decimals: 1 }, this.units).unit;
  }

  private over({ motion, from, to, steps }: OverDocument): string {
    const stretch = withUnit(`${this.moved(motion, from)}…${this.moved(motion, to)}`, this.unitOf(motion));
    return `over ${motion} ${stretch} in ${steps} positions`;
  }

  /** "at bump +20 mm, roll +1°"; nothing at ride height */
  private at(at: WantedDocument['at'] | AtDocument): string {
    const { travel = 0, rack = 0, roll = 0 } = at ?? {};
    const bump =
      typeof travel === 'number'
        ? this.moved('travel', travel)
        : `${this.moved('travel', travel[0])} left, ${this.moved('travel', travel[1])} right`;
    const words = [
      ...(travel === 0 ? [] : [`bump ${withUnit(bump, this.unitOf('bump'))}`]),
      ...(roll === 0 ? [] : [`roll ${withUnit(this.moved('roll', roll), this.unitOf('roll'))}`]),
      ...(rack === 0 ? [] : [`rack ${withUnit(this.moved('rack', rack), this.unitOf('steer'))}`]),
    ];
    return words.length === 0 ? '' : `at ${words.join(', ')}`;
  }

  private read(reading: string, value: number): { readonly number: string; readonly unit: string } {
    const entry = findReading(reading);
    if (!entry) return { number: formatShort(value, 3), unit: '' };
    const shown = shownReading(entry, this.units);
    return { number: shown.format(value), unit: shown.unit };
  }

  private value(reading: string, value: number): string {
    const { number, unit } = this.read(reading, value);
    return withUnit(number, unit);
  }

  private range(reading: string, [least, greatest]: readonly [number | null, number | null]): string {
    if (least === null) return greatest === null ? '' : `below ${this.value(reading, greatest)}`;
    if (greatest === null) return `above ${this.value(reading, least)}`;
    if (least === -greatest) return `within ±${this.value(reading, greatest)}`;
    return `from ${this.read(reading, least).number} to ${this.value(reading, greatest)}`;
  }

  /** "front left camber −3.20° ± 0.05, over bump −30…+30 mm in 7 positions" */
  private wanted(wanted: WantedDocument): string {
    const { reading, axle = '', side, value, range = [null, null], tolerance } = wanted;
    const whose = [axle, side === 'left' || side === 'right' ? side : ''].filter((word) => word !== '').join(' ');
    const aim =
      value === undefined
        ? this.range(reading, range)
        : `${this.value(reading, value)} ± ${this.read(reading, tolerance).number}`;
    const what = `${whose} ${readingName(reading)}${wanted.change === true ? ' change' : ''} ${aim}`.trim();
    const where = wanted.over ? this.over(wanted.over) : this.at(wanted.at);
    return where === '' ? what : `${what} ${where}`;
  }

  private reach({ wanted, may }: QuestionDocument): string {
    const parts = may.map((one) => {
      const name = 'adjuster' in one ? partName(this.document, one.axle, one.adjuster) : nameOfKey(one.point).toLowerCase();
      return `${one.axle} ${name}${one.sides === 'apart' ? ', each side' : ''}`;
    });
    return `${wanted.map((one) => this.wanted(one)).join('; ')}; by ${list(parts)}`;
  }

  private body(question: KeptQuestionDocument): string {
    switch (question.ask) {
      case 'ways': {
        const { axle, side, reading, value, tolerance, at, pairs } = question;
        const miss = tolerance === undefined ? '' : ` ± ${this.read(reading, tolerance).number}`;
        const whose = side === 'left' || side === 'right' ? `${axle} ${side}` : axle;
        const what = `${whose} ${readingName(reading)} to ${this.value(reading, value)}${miss}`;
        return listOf([what, this.at(at), pairs === false ? 'each part by itself' : '']);
      }
      case 'influence':
        return listOf([`${question.axle}: one step of every part on ${readingNames(question.readings)}`, this.at(question.at)]);
      case 'map': {
        const { axle, x, y, reading, wheel, value, where, at } = question;
        const across = [x, y].map((one) => ('adjuster' in one ? partName(this.document, axle, one.adjuster) : one.motion));
        const what = `${[axle, wheel ?? ''].filter((word) => word !== '').join(' ')} ${readingName(reading)} over ${list(across)}`;
        const marked = value === undefined ? '' : `marked at ${this.value(reading, value)}`;
        const limit = where?.range ? `where ${readingName(where.reading)} is ${this.range(where.reading, where.range)}` : '';
        return listOf([what, marked, limit, this.at(at)]);
      }
      case 'sweep': {
        const { axle, readings, over, positions, at } = question;
        const path = over ? this.over(over) : `over ${positions?.length ?? 0} positions that are written down`;
        return listOf([`${axle ?? 'whole car'}: ${readingNames(readings)} ${path}`, this.at(at)]);
      }
      case 'compare': {
        const { axle, against, motion, readings, at } = question;
        const whom = against ? `beside ${list(against)}` : 'beside what the bench compares with';
        const curves = motion === undefined ? '' : `${readingNames(readings)} over ${motion}`;
        return listOf([`${axle} ${whom}`, curves, this.at(at)]);
      }
      case 'gauges':
        return `${question.axle} ${GAUGES[question.gauge]}`;
      default:
        return this.reach(question);
    }
  }

  say(question: KeptQuestionDocument): string {
    const setup = 'setup' in question && question.setup !== undefined ? `from ${question.setup}` : '';
    const toe = 'setToe' in question ? question.setToe : undefined;
    const set = toe === true ? 'toe set after' : typeof toe === 'number' ? `toe set to ${this.value('toe', toe)} after` : '';
    return capital(listOf([this.body(question), setup, set]));
  }
}

/** A question that the car file keeps, as a sentence: "Front camber to −3.00° ± 0.05, from Wet". */
export const questionWords = (document: CarDocument, question: KeptQuestionDocument, units: ShownUnits): string =>
  new QuestionWords(document, units).say(question);
