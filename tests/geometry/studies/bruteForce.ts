import {
  assembleCar,
  inContractUnits,
  judgeLimits,
  readingsOfAxle,
  toMechanism,
  toRadians,
  type AxleName,
  type CarDocument,
  type Position,
  type QuestionDocument,
  type SetupDocument,
  type WantedDocument,
} from '../../../geometry/index';

/** The whole product of steps, tried one by one through the library's plain face: what a search has to find. */
export interface Brute {
  readonly settings: readonly (number | null)[];
  readonly score: number;
  /** every wanted reading at each of its places, then where toe resets end */
  readonly read: readonly number[];
}

/** Multiples of the step in the range, as the contract of the car file counts them. */
export const settingsOf = (document: CarDocument, axle: AxleName, name: string): (number | null)[] => {
  const adjuster = document[axle]?.adjusters?.[name];
  if (!adjuster) throw new Error(`no ${name}`);
  const all: number[] = [];
  const add = (min: number, max: number, step: number): void => {
    for (let k = -2000; k <= 2000; k += 1)
      if (k * step >= min - 1e-9 && k * step <= max + 1e-9) all.push(Number((k * step).toFixed(9)));
  };
  if (adjuster.kind === 'offset-bushing') add(0, 360 - adjuster.index, adjuster.index);
  else if ('mark' in adjuster) add(-90, 90, adjuster.mark);
  else add(adjuster.range[0], adjuster.range[1], adjuster.step);
  return all;
};

const positionsOf = ({ at = {}, over }: WantedDocument): readonly Position[] => {
  if (!over) {
    const travel = typeof at.travel === 'object' ? { left: at.travel[0], right: at.travel[1] } : (at.travel ?? 0);
    return [{ travel, rack: at.rack ?? 0, roll: toRadians(at.roll ?? 0) }];
  }
  return Array.from({ length: over.steps }, (_, i) => {
    const input = over.from + ((over.to - over.from) * i) / (over.steps - 1);
    return over.motion === 'bump' ? { travel: input } : over.motion === 'steer' ? { rack: input } : { roll: toRadians(input) };
  });
};

export const bruteForce = (document: CarDocument, setup: SetupDocument, question: QuestionDocument): readonly Brute[] => {
  const mechanism = toMechanism(document);
  const lists = question.may.map((may) => {
    if (!('adjuster' in may)) throw new Error('adjusters only');
    const given = setup[may.axle]?.both?.[may.adjuster];
    const isBushing = document[may.axle]?.adjusters?.[may.adjuster]?.kind === 'offset-bushing';
    const real = settingsOf(document, may.axle, may.adjuster);
    return { ...may, values: isBushing && (given === undefined || given === null) ? [null, ...real] : real };
  });
  const found: Brute[] = [];
  const walk = (index: number, made: SetupDocument, chosen: readonly (number | null)[]): void => {
    const list = lists[index];
    if (list) {
      for (const value of list.values) {
        const entries = made[list.axle] ?? {};
        walk(index + 1, { ...made, [list.axle]: { ...entries, both: { ...entries.both, [list.adjuster]: value } } }, [
          ...chosen,
          value,
        ]);
      }
      return;
    }
    const scored = scoreOf(mechanism, made, question);
    if (scored !== null) found.push({ settings: chosen, ...scored });
  };
  walk(0, setup, []);
  const kept = distinctOf(
    lists.map(({ values }) => values),
    found,
    (chosen) =>
      chosen.reduce<readonly [number, number]>(
        ([moved, far], value, index) => {
          const { axle, adjuster } = lists[index];
          const steps = stepsFrom(document, axle, adjuster, setup[axle]?.both?.[adjuster] ?? null, value);
          return [moved + (steps > 1e-9 ? 1 : 0), far + steps];
        },
        [0, 0],
      ),
  );
  return kept;
};

type Far = readonly [moved: number, steps: number];

/** Of combinations that differ only in parts which nowhere change what was read the one nearest to the setup; best first. */
function distinctOf(
  lists: readonly (readonly (number | null)[])[],
  found: readonly Brute[],
  far: (settings: Brute['settings']) => Far,
): readonly Brute[] {
  const byKey = new Map(found.map((one) => [JSON.stringify(one.settings), one]));
  const isSame = (a: readonly number[], b: readonly number[]): boolean =>
    a.every((value, index) => Math.abs(value - b[index]) <= 1e-6);
  const isIdle = lists.map((values, at) =>
    found.every(({ settings, read }) =>
      values.every((value) => {
        const other = byKey.get(JSON.stringify(settings.map((own, index) => (index === at ? value : own))));
        return other === undefined || isSame(read, other.read);
      }),
    ),
  );
  const before = (a: Brute, b: Brute): number => {
    if (Math.abs(a.score - b.score) > 1e-9 * Math.min(a.score, b.score)) return a.score - b.score;
    const [one, other] = [far(a.settings), far(b.settings)];
    return one[0] - other[0] || (Math.abs(one[1] - other[1]) < 1e-9 ? 0 : one[1] - other[1]);
  };
  const seen = new Set<string>();
  // a stable sort: what is equal in everything stays in the order it was tried in
  return [...found].sort(before).filter(({ settings }) => {
    const key = JSON.stringify(settings.filter((_, index) => !isIdle[index]));
    return !seen.has(key) && seen.add(key) !== undefined;
  });
}

/** How many of its own steps a part is turned; a bushing is fitted in one, and its clock goes round. */
function stepsFrom(document: CarDocument, axle: AxleName, name: string, from: number | null, to: number | null): number {
  const adjuster = document[axle]?.adjusters?.[name];
  if (!adjuster) throw new Error(`no ${name}`);
  if (adjuster.kind !== 'offset-bushing')
    return Math.abs((to ?? 0) - (from ?? 0)) / ('mark' in adjuster ? adjuster.mark : adjuster.step);
  if (from === null || to === null) return from === to ? 0 : 1;
  const apart = Math.abs(to - from);
  return Math.min(apart, 360 - apart) / adjuster.index;
}

const scoreOf = (
  mechanism: ReturnType<typeof toMechanism>,
  setup: SetupDocument,
  question: QuestionDocument,
): Pick<Brute, 'score' | 'read'> | null => {
  const car = assembleCar(mechanism, setup);
  if (!car.ok) return null;
  if ([car.value.front, car.value.rear].some((axle) => axle?.toeReset?.inRange === false)) return null;
  const axles = new Set([...question.may.map(({ axle }) => axle), ...question.wanted.map(({ axle }) => axle)]);
  if (judgeLimits(car.value).some(({ ok, name }) => !ok && axles.has(name.split('.')[0] as AxleName))) return null;
  let score = 0;
  const all: number[] = [];
  for (const wanted of question.wanted) {
    let sum = 0;
    let count = 0;
    const read = (position: Position, owner: 'left' | 'right' | 'both'): number | null => {
      const row = readingsOfAxle(car.value, wanted.axle ?? 'front', position);
      const value = row.ok ? inContractUnits(row.value)[owner][wanted.reading] : null;
      return typeof value === 'number' ? value : null;
    };
    const isAxle = wanted.reading === 'rollCentreHeight' || wanted.reading === 'track' || wanted.reading === 'totalToe';
    for (const owner of isAxle ? (['both'] as const) : (['left', 'right'] as const)) {
      if (!isAxle && (wanted.side === 'left' || wanted.side === 'right') && wanted.side !== owner) continue;
      const zero = wanted.change ? read({}, owner) : 0;
      for (const position of positionsOf(wanted)) {
        const value = read(position, owner);
        if (value === null || zero === null) return null;
        const [low, high] = wanted.range ?? [wanted.value ?? 0, wanted.value ?? 0];
        const miss = Math.max(0, (low ?? -Infinity) - (value - zero), value - zero - (high ?? Infinity));
        sum += (miss / wanted.tolerance) ** 2;
        count += 1;
        all.push(value - zero);
      }
    }
    score += sum / count;
  }
  const resets = [car.value.front, car.value.rear].flatMap((axle) => {
    const reset = axle?.toeReset;
    return reset ? [reset.left, reset.right] : [];
  });
  return { score, read: [...all, ...resets] };
};
