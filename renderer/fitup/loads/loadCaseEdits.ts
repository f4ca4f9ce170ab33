import type { AxleName, CarDocument, LoadCase, SideName, WheelForces } from '../../../geometry/index';

type Cases = NonNullable<CarDocument['loads']>;
type CaseDocument = Cases[string];
type AxleLoads = NonNullable<CaseDocument['front']>;
type WheelLoad = NonNullable<AxleLoads['both']>;

/** What is typed of one wheel: N, and N·m about the ground's normal. */
export type ForceKey = 'Fx' | 'Fy' | 'Fz' | 'Mz';

export const INVENTED = 'Invented: no figure of this car. Put your own in.';

/** As the file has it: what is 0 is left out; N·m instead of the engine's N·mm. */
const wheelOf = ({ Fx, Fy, Fz, Mz, driven }: WheelForces): WheelLoad => ({
  ...(Fx === 0 ? {} : { Fx }),
  ...(Fy === 0 ? {} : { Fy }),
  ...(Fz === 0 ? {} : { Fz }),
  ...(Mz === 0 ? {} : { Mz: Mz / 1000 }),
  ...(driven ? { driven } : {}),
});

/** Of the other side of the car: Fy and Mz go the other way. The order stays, so that two wheels can be told alike. */
const mirrored = (wheel: WheelLoad): WheelLoad =>
  Object.fromEntries(
    Object.entries(wheel).map(([key, value]) => [
      key,
      (key === 'Fy' || key === 'Mz') && typeof value === 'number' ? 0 - value : value,
    ]),
  );

const axleOf = (wheels: { readonly left: WheelForces; readonly right: WheelForces }): AxleLoads => {
  const [left, right] = [wheelOf(wheels.left), wheelOf(wheels.right)];
  return JSON.stringify(mirrored(right)) === JSON.stringify(left) ? { both: left } : { left, right };
};

/** The forces of a case as the file gives forces, whatever they were made of. */
export const forcesOf = ({ front, rear }: Pick<LoadCase, 'front' | 'rear'>): Pick<CaseDocument, 'front' | 'rear'> => ({
  ...(front ? { front: axleOf(front) } : {}),
  ...(rear ? { rear: axleOf(rear) } : {}),
});

/** A case as the file would have it. */
const documentOf = (one: LoadCase): CaseDocument => ({
  ...(one.invented ? { notes: INVENTED } : {}),
  ...(one.g === null ? forcesOf(one) : { g: one.g }),
});

/** The cases as they stand in the file, or would if the program's own were taken into it. */
export const casesInFile = (document: CarDocument, cases: readonly LoadCase[]): Cases =>
  document.loads && Object.keys(document.loads).length > 0
    ? document.loads
    : Object.fromEntries(cases.map((one) => [one.name, documentOf(one)]));

const replaced = (cases: Cases, name: string, changed: CaseDocument): Cases => ({ ...cases, [name]: changed });

/** The case with figures of its own: it is no longer one that the program made up. */
const withFigures = (cases: Cases, name: string, { notes, ...rest }: CaseDocument): Cases =>
  replaced(cases, name, notes === undefined || notes === INVENTED ? rest : { notes, ...rest });

/** The case by accelerations. @param g - [lateral, longitudinal], + to the left, + forward */
export const withG = (cases: Cases, name: string, g: readonly [number, number]): Cases => {
  const { front: _front, rear: _rear, ...rest } = cases[name] ?? {};
  return withFigures(cases, name, { ...rest, g });
};

/** The case by the forces that stand on its wheels now. */
export const withForces = (cases: Cases, now: LoadCase): Cases => {
  const { g: _g, ...rest } = cases[now.name] ?? {};
  return replaced(cases, now.name, { ...rest, ...forcesOf(now) });
};

/** What an axle's entry gives one wheel, in that wheel's own directions. */
const wheelIn = (axle: AxleLoads | undefined, side: SideName): WheelLoad => {
  const own = axle?.[side];
  if (own) return own;
  const both = axle?.both ?? {};
  return side === 'left' ? both : mirrored(both);
};

const withWheel = (cases: Cases, name: string, axle: AxleName, side: SideName, wheel: WheelLoad): Cases => {
  const before = cases[name] ?? {};
  const of = before[axle];
  const isShared = of?.both !== undefined && of[side] === undefined;
  const next: AxleLoads = isShared ? { ...of, both: side === 'left' ? wheel : mirrored(wheel) } : { ...of, [side]: wheel };
  return withFigures(cases, name, { ...before, [axle]: next });
};

/** One force of a wheel; where both wheels are given as one the other follows, mirrored. */
export const withForce = (cases: Cases, name: string, axle: AxleName, side: SideName, key: ForceKey, value: number): Cases => {
  const { [key]: _old, ...rest } = wheelIn(cases[name]?.[axle], side);
  return withWheel(cases, name, axle, side, value === 0 ? rest : { ...rest, [key]: value });
};

/** Whether Fx comes through a shaft. */
export const withDriven = (cases: Cases, name: string, axle: AxleName, side: SideName, driven: boolean): Cases => {
  const { driven: _old, ...rest } = wheelIn(cases[name]?.[axle], side);
  return withWheel(cases, name, axle, side, driven ? { ...rest, driven } : rest);
};

export const areWheelsAlike = (cases: Cases, name: string, axle: AxleName): boolean => {
  const of = cases[name]?.[axle];
  return of === undefined || (of.both !== undefined && of.left === undefined && of.right === undefined);
};

/** Both wheels as one, from the wheel that is looked at, or each on its own as it stands. */
export const withAlike = (cases: Cases, name: string, axle: AxleName, side: SideName, alike: boolean): Cases => {
  const before = cases[name] ?? {};
  const own = wheelIn(before[axle], side);
  const next: AxleLoads = alike
    ? { both: side === 'left' ? own : mirrored(own) }
    : { left: wheelIn(before[axle], 'left'), right: wheelIn(before[axle], 'right') };
  return replaced(cases, name, { ...before, [axle]: next });
};

export const withNotes = (cases: Cases, name: string, notes: string): Cases => {
  const { notes: _old, ...rest } = cases[name] ?? {};
  return replaced(cases, name, notes === '' ? rest : { notes, ...rest });
};

/** In its place under another name. */
export const renamedCase = (cases: Cases, from: string, to: string): Cases =>
  Object.fromEntries(Object.entries(cases).map(([name, one]) => [name === from ? to : name, one]));

export const withoutCase = (cases: Cases, name: string): Cases | undefined => {
  const left = Object.entries(cases).filter(([other]) => other !== name);
  return left.length === 0 ? undefined : Object.fromEntries(left);
};

/** A case behind the others, standing still until it is given figures. */
export const withNewCase = (cases: Cases, name: string): Cases => ({ ...cases, [name]: { g: [0, 0] } });

/** The same figures under another name, right behind the case that they are of. */
export const withCopy = (cases: Cases, from: string, name: string): Cases =>
  Object.fromEntries(
    Object.entries(cases).flatMap(([own, one]) =>
      own === from
        ? [
            [own, one],
            [name, one],
          ]
        : [[own, one]],
    ),
  );

/** "Braking 2" of "Braking": the first number that is free. */
export const copyName = (cases: Cases, of: string): string => {
  const stem = of.replace(/ \d+$/, '');
  for (let number = 2; ; number += 1) if (!Object.hasOwn(cases, `${stem} ${number}`)) return `${stem} ${number}`;
};

/** A name that no case has. */
export const freeCaseName = (cases: Cases): string => {
  for (let number = Object.keys(cases).length + 1; ; number += 1)
    if (!Object.hasOwn(cases, `Case ${number}`)) return `Case ${number}`;
};
