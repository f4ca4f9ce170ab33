import {
  findSetup,
  settingOf,
  setupNames,
  withSetting,
  type AxleName,
  type CarDocument,
  type SetupDocument,
} from '../../geometry/index';

export { settingOf, withAxleValue, withSetting, type Sides } from '../../geometry/index';

/** The setup of that name; one that the document has not is a car with nothing set. */
export const setupNamed = (document: CarDocument, name: string): SetupDocument =>
  setupNames(document).includes(name) ? findSetup(document, name) : {};

/** Whether a setup gives left and right of an adjuster numbers of their own. */
export const isApart = (setup: SetupDocument | undefined, axle: AxleName, adjuster: string): boolean =>
  Object.hasOwn(setup?.[axle]?.left ?? {}, adjuster) || Object.hasOwn(setup?.[axle]?.right ?? {}, adjuster);

/** A setup with left and right of an adjuster given as two numbers, where they stand now. */
export const withSidesApart = (setup: SetupDocument, axle: AxleName, adjuster: string): SetupDocument => {
  const left = settingOf(setup, axle, adjuster, 'left');
  const right = settingOf(setup, axle, adjuster, 'right');
  return withSetting(withSetting(setup, axle, adjuster, 'left', left), axle, adjuster, 'right', right);
};

/** A document in which one setup is put in, or put in another's place. */
export const withSetup = (document: CarDocument, name: string, setup: SetupDocument): CarDocument => ({
  ...document,
  setups: { ...document.setups, [name]: setup },
});

/** What a setup hands on to one that is begun from it: its notes tell of itself, and would be wrong at the first turn. */
export const handedOn = ({ notes: _, ...rest }: SetupDocument): SetupDocument => rest;

const TRIAL = /^Trial (\d+)$/;

/** "Trial 1", or the number after the highest that a setup has. */
export const freeTrialName = (taken: readonly string[]): string =>
  `Trial ${Math.max(0, ...taken.map((name) => Number(TRIAL.exec(name)?.[1] ?? 0))) + 1}`;
