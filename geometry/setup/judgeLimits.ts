import type { AxleName, LimitDocument, SideName } from '../car/document';
import type { Adjuster } from '../car/mechanism';
import { CATALOGUE } from '../readings/catalogue';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import type { ReadingEntry } from '../readings/readingEntry';
import { readingsOfCar, sweepReadings, type SomeReadings } from '../readings/readings';
import type { WholeCarReadings } from '../readings/rows';
import type { Result } from '../core/result';
import type { Failure } from '../corner/failure';
import type { AssembledCar } from './assembleCar';
import { settingInFile } from './settings';

/** One limit of the file, held against a setup. Readings in mm and degrees, settings in the file's own unit. */
export interface LimitJudgement {
  /** "front.left.camber", "rear.both.track", "front.left.rearBush" */
  readonly name: string;
  /** null where there is no value to judge */
  readonly value: number | null;
  /** how much is left to the nearer end; negative where it is broken */
  readonly spare: number | null;
  readonly ok: boolean;
  readonly limit: LimitDocument;
}

/**
 * Holds every limit of the file against a setup: standing, rack 0, no roll, after the toe reset.
 * A limit whose reading has no value is judged broken with value null: what cannot be seen is not called fine.
 */
export function judgeLimits(car: AssembledCar): readonly LimitJudgement[] {
  const limits = car.mechanism.document.limits ?? [];
  if (limits.length === 0) return [];
  const rows = readingsFor(car, limits);
  return limits.flatMap((limit) => judgeLimit(car, rows, limit));
}

/** The readings that limits ask for, where the car stands. */
interface LimitedReadings {
  readonly front: Result<SomeReadings, Failure> | null;
  readonly rear: Result<SomeReadings, Failure> | null;
  readonly wholeCar: Partial<WholeCarReadings>;
}

function readingsFor(car: AssembledCar, limits: readonly LimitDocument[]): LimitedReadings {
  const keys = limits.flatMap(({ reading }) => (reading === undefined ? [] : [reading]));
  if (keys.some((key) => CATALOGUE.find((entry) => entry.key === key)?.of === 'car')) return readingsOfCar(car);
  const [front, rear] = (['front', 'rear'] as const).map((axle) =>
    car[axle] === null || keys.length === 0 ? null : sweepReadings(car, axle, [{}], keys, false)[0],
  );
  return { front, rear, wholeCar: {} };
}

function judgeLimit(car: AssembledCar, rows: LimitedReadings, limit: LimitDocument): LimitJudgement[] {
  if (limit.setting !== undefined) return judgeSetting(car, limit, limit.setting);
  const entry = CATALOGUE.find((candidate) => candidate.key === limit.reading);
  if (entry === undefined) return [];
  const axles = limit.axle === undefined ? (['front', 'rear'] as const).filter((axle) => car[axle] !== null) : [limit.axle];
  // a reading in mm is limited in the file's unit of length
  const scale = entry.quantity === 'length' ? car.mechanism.mmPerUnit : 1;
  if (entry.of === 'car') {
    return [
      judged(
        `wholeCar.${entry.key}`,
        plain(entry, (rows.wholeCar as unknown as Record<string, ReadingValue>)[entry.key]),
        limit,
        scale,
      ),
    ];
  }
  return axles.flatMap((axle) => judgeAxle(rows, axle, entry, limit, scale));
}

function judgeAxle(
  rows: LimitedReadings,
  axle: AxleName,
  entry: ReadingEntry,
  limit: LimitDocument,
  scale: number,
): LimitJudgement[] {
  const row = rows[axle];
  const read = (owner: 'left' | 'right' | 'both'): number | null =>
    row === null || !row.ok ? null : plain(entry, (row.value[owner] as unknown as Record<string, ReadingValue>)[entry.key]);
  if (entry.of === 'axle') return [judged(`${axle}.both.${entry.key}`, read('both'), limit, scale)];
  if (limit.difference === true) {
    const [left, right] = [read('left'), read('right')];
    return [judged(`${axle}.difference.${entry.key}`, left === null || right === null ? null : left - right, limit, scale)];
  }
  return sidesOf(limit).map((side) => judged(`${axle}.${side}.${entry.key}`, read(side), limit, scale));
}

const sidesOf = (limit: LimitDocument): readonly SideName[] =>
  limit.side === 'left' || limit.side === 'right' ? [limit.side] : ['left', 'right'];

const plain = (entry: ReadingEntry, value: ReadingValue | undefined): number | null => {
  const converted = valueInContractUnits(value ?? null, entry.quantity);
  return typeof converted === 'number' ? converted : null;
};

function judgeSetting(car: AssembledCar, limit: LimitDocument, name: string): LimitJudgement[] {
  const axles = (['front', 'rear'] as const).filter(
    (axle) => (limit.axle === undefined || limit.axle === axle) && car[axle]?.mechanism.adjusters.some((a) => a.name === name),
  );
  return axles.flatMap((axle) => {
    const adjuster = car[axle]!.mechanism.adjusters.find((a) => a.name === name)!;
    const value = (side: SideName): number | null => settingNow(car, axle, side, adjuster);
    if (limit.difference === true) {
      const [left, right] = [value('left'), value('right')];
      return [judged(`${axle}.difference.${name}`, left === null || right === null ? null : left - right, limit, 1)];
    }
    return sidesOf(limit).map((side) => judged(`${axle}.${side}.${name}`, value(side), limit, 1));
  });
}

/** A setting as it stands, a toe reset included; nothing set is 0, but a bushing that is not fitted has no clock. */
function settingNow(car: AssembledCar, axle: AxleName, side: SideName, adjuster: Adjuster): number | null {
  const assembled = car[axle]!;
  if (assembled.toeReset?.adjuster === adjuster.name) return assembled.toeReset[side];
  const setting = assembled[side].settings[adjuster.name];
  if (setting === null || setting === undefined) return adjuster.kind === 'offset-bushing' ? null : 0;
  return settingInFile(adjuster, setting, car.mechanism.mmPerUnit);
}

/** @param scale - mm per unit of the limit's own numbers */
function judged(name: string, value: number | null, limit: LimitDocument, scale: number): LimitJudgement {
  if (value === null) return { name, value, spare: null, ok: limit.setting !== undefined, limit };
  const overMin = limit.min === undefined ? Infinity : value - limit.min * scale;
  const underMax = limit.max === undefined ? Infinity : limit.max * scale - value;
  const spare = Math.min(overMin, underMax);
  return { name, value, spare: Number.isFinite(spare) ? spare : null, ok: spare >= -1e-9, limit };
}
