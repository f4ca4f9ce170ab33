import type { AdjusterDocument, AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { cleanSetting, realSettings, stepScaleOf } from '../adjusters/stepScale';
import { mattersOf } from '../car/tolerances';
import { fail, succeed, type Result } from '../core/result';
import { singularValues } from '../core/linear';
import { toDegrees, toRadians } from '../core/angle';
import type { Failure } from '../corner/failure';
import { readingsOfCar } from '../readings/readings';
import type { Position } from '../readings/rows';
import { assembleCar } from '../setup/assembleCar';
import { settingOf, withSetting, type Sides } from '../setup/setupEdits';
import { carNumberNames, carNumbers, changesBetween, type CarNumber, type Numbers } from './carNumbers';
import { answerStudy, roundOf, type Study } from './study';
import { withToeReset, type AskedToe } from './toeReset';

export interface InfluenceQuestion {
  readonly setup: SetupDocument;
  readonly axles: readonly AxleName[];
  /** which wheels an adjuster is turned on */
  readonly side: Sides;
  readonly toeReset: AskedToe;
  readonly at: Position;
  /** locked adjusters too */
  readonly withLocked: boolean;
}

/** What one step of one adjuster does. Changes by dotted name, in contract units. */
export interface InfluenceRow {
  readonly axle: AxleName;
  readonly adjuster: string;
  readonly side: Sides;
  /** in the file's unit */
  readonly step: number;
  readonly unit: 'mm' | 'in' | 'deg' | 'turn';
  /** by one step up from the setup, and one down; null past the end of the range or where it cannot be reached */
  readonly more: Numbers | null;
  readonly less: Numbers | null;
  /** a bushing that is not fitted: what each of its marks would do */
  readonly fit?: readonly { readonly clock: number; readonly changes: Numbers | null }[];
  /** one step up does not undo one step down, to a tenth of the larger */
  readonly curved: boolean;
  /** "more", "less" or "fit.90" -> why it is null */
  readonly why: Readonly<Record<string, string>>;
}

export interface Influence {
  readonly rows: readonly InfluenceRow[];
  /** adjusters of one axle whose steps do the same to the readings that matter, to within 5° */
  readonly alike: readonly { readonly axle: AxleName; readonly adjusters: readonly [string, string]; readonly angle: number }[];
  /** how many readings the adjusters can set independently of each other */
  readonly independent: number;
  /** of the steps, each reading in units of what matters */
  readonly singularValues: readonly number[];
}

/** Directions nearer than this do the same thing [degrees]. */
const ALIKE_DEG = 5;
/** Two equal steps just over 5° apart still count as two: σ₂/σ₁ = tan 2.5°. */
const INDEPENDENT = Math.tan(toRadians(ALIKE_DEG / 2));
const CURVED = 0.1;

/**
 * What one step of every adjuster does to every reading: exact re-solves one step each way, differences of whole rows.
 * @returns the failure of the setup itself where it cannot be put together; a step that cannot be reached is a row with `why`
 */
export const influence = (mechanism: CarMechanism, question: InfluenceQuestion): Result<Influence, Failure> =>
  answerStudy(influenceStudy(mechanism, question));

/** One chunk an adjuster. */
export function influenceStudy(mechanism: CarMechanism, question: InfluenceQuestion): Study<Influence> {
  const { document } = mechanism;
  const names = carNumberNames(document);
  const setup = withToeReset(document, question.setup, question.axles, question.toeReset);
  const read = (tried: SetupDocument): Result<Numbers, Failure> => {
    const car = assembleCar(mechanism, tried);
    if (!car.ok) return car;
    const rows = readingsOfCar(car.value, question.at);
    for (const axle of question.axles) {
      const row = rows[axle];
      if (row !== null && !row.ok) return fail(row.failure);
    }
    return succeed(carNumbers(names, rows));
  };
  const now = read(setup);
  const adjusters = question.axles.flatMap((axle) =>
    Object.entries(document[axle]?.adjusters ?? {})
      .filter(([, adjuster]) => question.withLocked || adjuster.locked === undefined)
      .map(([name, adjuster]) => ({ axle, name, adjuster })),
  );
  return {
    failure: now.ok ? null : now.failure,
    round: () =>
      roundOf<InfluenceRow, Influence>({
        doing: 'turning every part one step',
        chunks: adjusters.length,
        run: (chunk) => {
          const { axle, name, adjuster } = adjusters[chunk];
          return rowOf(mechanism, { ...question, setup }, axle, name, adjuster, now.ok ? now.value : {}, read, names);
        },
        merge: (rows) => ({ answer: { rows, ...together(mechanism, names, rows) } }),
      }),
  };
}

const unitOf = (adjuster: AdjusterDocument, mechanism: CarMechanism): InfluenceRow['unit'] => {
  if (adjuster.kind === 'slide') return mechanism.document.units?.length ?? 'mm';
  return adjuster.kind === 'turnbuckle' || adjuster.kind === 'perch' ? 'turn' : 'deg';
};

function rowOf(
  mechanism: CarMechanism,
  { setup, side }: InfluenceQuestion,
  axle: AxleName,
  name: string,
  adjuster: AdjusterDocument,
  now: Numbers,
  read: (setup: SetupDocument) => Result<Numbers, Failure>,
  names: readonly CarNumber[],
): InfluenceRow {
  const scale = stepScaleOf(adjuster);
  const why: Record<string, string> = {};
  const tried = (key: string, changed: SetupDocument): Numbers | null => {
    const then = read(changed);
    if (then.ok) return changesBetween(now, then.value);
    why[key] = then.failure.message;
    return null;
  };
  const head = { axle, adjuster: name, side, step: scale.step, unit: unitOf(adjuster, mechanism) };
  const sides = side === 'both' ? (['left', 'right'] as const) : [side];
  const standing = sides.map((one) => settingOf(setup, axle, name, one));
  if (mechanism[axle]?.toeAdjuster?.name === name && setup[axle]?.setToe !== undefined) {
    const reason = 'the toe reset turns it';
    return { ...head, more: null, less: null, curved: false, why: { more: reason, less: reason } };
  }
  if (adjuster.kind === 'offset-bushing' && standing.every((setting) => setting === null)) {
    const fit = realSettings(scale).map((clock) => ({
      clock,
      changes: tried(`fit.${clock}`, withSetting(setup, axle, name, side, clock)),
    }));
    return { ...head, more: null, less: null, fit, curved: false, why };
  }
  /** each side goes on from where it stands; null past the end */
  const stepped = (steps: 1 | -1): SetupDocument | null => {
    let changed: SetupDocument = setup;
    const settings = standing.map((setting) => within(scale, (setting ?? 0) + steps * scale.step));
    if (settings.some((setting) => setting === null)) return null;
    const [first] = settings;
    if (side === 'both' && settings.every((setting) => setting === first))
      return withSetting(setup, axle, name, 'both', first ?? null);
    sides.forEach((one, index) => (changed = withSetting(changed, axle, name, one, settings[index] ?? null)));
    return changed;
  };
  const oneStep = (key: 'more' | 'less', steps: 1 | -1): Numbers | null => {
    const changed = stepped(steps);
    if (changed !== null) return tried(key, changed);
    why[key] = `the range ends at ${steps > 0 ? scale.max : scale.min}`;
    return null;
  };
  const more = oneStep('more', 1);
  const less = oneStep('less', -1);
  return { ...head, more, less, curved: isCurved(mechanism, names, more, less), why };
}

/** The setting where it is inside the range, gone round where the clock does; null outside. */
function within({ min, max, isRound }: ReturnType<typeof stepScaleOf>, setting: number): number | null {
  if (isRound) return cleanSetting(((setting % max) + max) % max);
  return setting < min - 1e-9 || setting > max + 1e-9 ? null : Math.min(max, Math.max(min, cleanSetting(setting)));
}

function isCurved({ document }: CarMechanism, names: readonly CarNumber[], more: Numbers | null, less: Numbers | null): boolean {
  if (more === null || less === null) return false;
  return names.some(({ name, entry }) => {
    const matters = mattersOf(document, entry.key);
    const [up, down] = [more[name], less[name]];
    if (matters === undefined || typeof up !== 'number' || typeof down !== 'number') return false;
    const larger = Math.max(Math.abs(up), Math.abs(down));
    return larger > matters && Math.abs(up + down) > CURVED * larger;
  });
}

/** (more − less) ÷ 2 in units of what matters; the one there is at the end of a range. Null where it moves nothing that matters. */
function directionOf({ document }: CarMechanism, names: readonly CarNumber[], row: InfluenceRow): readonly number[] | null {
  if (row.more === null && row.less === null) return null;
  const direction = names.flatMap(({ name, entry }) => {
    const matters = mattersOf(document, entry.key);
    if (matters === undefined) return [];
    const up = row.more === null ? null : (row.more[name] ?? 0);
    const down = row.less === null ? null : (row.less[name] ?? 0);
    const step = up === null ? -(down ?? 0) : down === null ? up : 0.5 * (up - down);
    return [step / matters];
  });
  return direction.some((part) => part !== 0) ? direction : null;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);

function together(
  mechanism: CarMechanism,
  names: readonly CarNumber[],
  rows: readonly InfluenceRow[],
): Pick<Influence, 'alike' | 'independent' | 'singularValues'> {
  const directed = rows.flatMap((row) => {
    const direction = directionOf(mechanism, names, row);
    return direction === null ? [] : [{ row, direction }];
  });
  const alike = directed.flatMap(({ row, direction }, index) =>
    directed.slice(index + 1).flatMap((other) => {
      if (other.row.axle !== row.axle) return [];
      const cosine =
        Math.abs(dot(direction, other.direction)) / Math.sqrt(dot(direction, direction) * dot(other.direction, other.direction));
      const angle = toDegrees(Math.acos(Math.min(1, cosine)));
      return angle < ALIKE_DEG ? [{ axle: row.axle, adjusters: [row.adjuster, other.row.adjuster] as const, angle }] : [];
    }),
  );
  if (directed.length === 0) return { alike, independent: 0, singularValues: [] };
  const { values } = singularValues(directed.map(({ direction }) => direction));
  const [largest = 0] = values;
  return { alike, independent: values.filter((value) => value > INDEPENDENT * largest).length, singularValues: values };
}
