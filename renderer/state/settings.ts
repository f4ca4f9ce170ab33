import {
  findSetup,
  setupNames,
  type AxleName,
  type CarDocument,
  type SetupAxleDocument,
  type SetupDocument,
} from '../../geometry/index';

export type Sides = 'both' | 'left' | 'right';

/** The setup of that name; one that the document has not is a car with nothing set. */
export const setupNamed = (document: CarDocument, name: string): SetupDocument =>
  setupNames(document).includes(name) ? findSetup(document, name) : {};

/** The number of one adjuster on one side in a setup; null where nothing is set (zero, or a concentric bushing). */
export const settingOf = (
  setup: SetupDocument | undefined,
  axle: AxleName,
  adjuster: string,
  side: 'left' | 'right',
): number | null => {
  const entries = setup?.[axle];
  const own = entries?.[side];
  if (own && Object.hasOwn(own, adjuster)) return own[adjuster] ?? null;
  return entries?.both?.[adjuster] ?? null;
};

/** Whether a setup gives left and right of an adjuster numbers of their own. */
export const isApart = (setup: SetupDocument | undefined, axle: AxleName, adjuster: string): boolean =>
  Object.hasOwn(setup?.[axle]?.left ?? {}, adjuster) || Object.hasOwn(setup?.[axle]?.right ?? {}, adjuster);

const without = <Value>(record: Readonly<Record<string, Value>>, key: string): Readonly<Record<string, Value>> | undefined => {
  const rest = Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
  return Object.keys(rest).length > 0 ? rest : undefined;
};

/** The same entries with empty sides left out, so that a setting put back leaves no trace in the file. */
const tidy = (entries: SetupAxleDocument): SetupAxleDocument =>
  Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined));

/** A setup with one adjuster set; `both` takes the sides' own numbers away. */
export const withSetting = (
  setup: SetupDocument,
  axle: AxleName,
  adjuster: string,
  sides: Sides,
  value: number | null,
): SetupDocument => {
  const entries = setup[axle] ?? {};
  const changed = { ...entries, [sides]: { ...entries[sides], [adjuster]: value } };
  if (sides === 'both')
    for (const side of ['left', 'right'] as const)
      if (changed[side]) Object.assign(changed, { [side]: without(changed[side], adjuster) });
  return { ...setup, [axle]: tidy(changed) };
};

/** A setup with left and right of an adjuster given as two numbers, where they stand now. */
export const withSidesApart = (setup: SetupDocument, axle: AxleName, adjuster: string): SetupDocument => {
  const left = settingOf(setup, axle, adjuster, 'left');
  const right = settingOf(setup, axle, adjuster, 'right');
  return withSetting(withSetting(setup, axle, adjuster, 'left', left), axle, adjuster, 'right', right);
};

/** A setup with a height or toe of the axle given, or taken out with null. */
export const withAxleValue = (
  setup: SetupDocument,
  axle: AxleName,
  key: 'setToe' | 'rideHeight',
  value: number | null,
): SetupDocument => ({ ...setup, [axle]: tidy({ ...setup[axle], [key]: value ?? undefined }) });

/** A document in which one setup is put in, or put in another's place. */
export const withSetup = (document: CarDocument, name: string, setup: SetupDocument): CarDocument => ({
  ...document,
  setups: { ...document.setups, [name]: setup },
});

const TRIAL = /^Trial (\d+)$/;

/** "Trial 1", or the number after the highest that a setup has. */
export const freeTrialName = (taken: readonly string[]): string =>
  `Trial ${Math.max(0, ...taken.map((name) => Number(TRIAL.exec(name)?.[1] ?? 0))) + 1}`;
