import { CATALOGUE, setupNames } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import type { WindowTools } from '../shell/benchContext';
import { PAGES } from '../shell/pages';
import { chooseAgainst, chooseSetup, redoStep, setRideHeight, setToe, undoStep } from '../state/actions/editSetup';
import { chooseAxle, choosePage, chooseTheme, chooseView, holdAdjuster, moveTo, standStill } from '../state/actions/lookAt';
import { openSample } from '../state/actions/openCar';
import { chooseCar } from '../state/actions/chooseCar';
import { saveCar, saveCarAs } from '../state/actions/saveCar';
import { prefer } from '../state/actions/prefer';
import { UNIT_PREFERENCES } from '../state/chosenUnits';
import { benchOf, type Bench, type BenchState, type Theme, type ViewName } from '../state/benchStore';
import type { Command } from './command';
import { goTo } from './goTo';

const AXLES = ['front', 'rear'] as const;
const VIEWS: Readonly<Record<ViewName, string>> = {
  corner: 'from the corner',
  front: 'from the front, or from behind at the rear axle',
  side: 'from the side',
  top: 'from above',
  wheel: 'from the wheel',
  axis: 'along the steering axis',
};
const THEMES: Readonly<Record<Theme, string>> = { light: 'light', dark: 'dark', system: 'as the system has it' };

const UNIT_WORDS = {
  mm: 'lengths in mm',
  in: 'lengths in inches',
  degrees: 'angles in decimal degrees',
  minutes: 'angles in degrees and minutes',
  angle: 'toe as an angle',
  rim: 'toe in length across the rim',
  newton: 'forces in N, rates in N/mm',
  pound: 'forces in lb, rates in lb/in',
} as const;

type Group = (tools: WindowTools, state: BenchState, bench: Bench) => readonly Command[];

const pages = ({ store }: WindowTools): readonly Command[] =>
  PAGES.map(({ name, label }) => ({
    id: `page.${name}`,
    label: `Go to ${label}`,
    where: 'Page',
    run: () => choosePage(store, name),
  }));

const themes = ({ store }: WindowTools): readonly Command[] =>
  Object.entries(THEMES).map(([theme, words]) => ({
    id: `theme.${theme}`,
    label: `Colours: ${words}`,
    where: 'Window',
    words: ['theme'],
    run: () => chooseTheme(store, theme as Theme),
  }));

const units = ({ store }: WindowTools): readonly Command[] =>
  Object.values(UNIT_PREFERENCES).flatMap(({ name, words }) =>
    words.map((word) => ({
      id: `${name}.${word}`,
      label: `Units: ${UNIT_WORDS[word]}`,
      where: 'Window',
      run: () => prefer(store, name, word),
    })),
  );

const samples = ({ store, files }: WindowTools, state: BenchState): readonly Command[] =>
  state.samples.map((name) => ({
    id: `sample.${name}`,
    label: `Open the sample ${nameOfKey(name)}`,
    where: 'File',
    run: () => void openSample(store, files, name),
  }));

const steps: Group = ({ store }, { history }) => {
  const [last, next] = [history?.past.at(-1)?.name, history?.future.at(-1)?.name];
  return [
    ...(last === undefined
      ? []
      : [{ id: 'undo', label: `Undo: ${last}`, where: 'Edit', keys: 'Ctrl Z', run: () => undoStep(store) }]),
    ...(next === undefined
      ? []
      : [{ id: 'redo', label: `Redo: ${next}`, where: 'Edit', keys: 'Ctrl Shift Z', run: () => redoStep(store) }]),
  ];
};

const axles: Group = ({ store }, _state, { document }) =>
  AXLES.filter((axle) => document[axle]).map((axle) => ({
    id: `axle.${axle}`,
    label: `Show the ${axle} axle`,
    where: 'Bench, axle',
    run: () => chooseAxle(store, axle),
  }));

const setups: Group = ({ store }, _state, { document }) =>
  setupNames(document).flatMap((name) => [
    { id: `setup.${name}`, label: `Put ${name} on the bench`, where: 'Bench, setup', run: () => chooseSetup(store, name) },
    { id: `against.${name}`, label: `Compare with ${name}`, where: 'Bench, setup', run: () => chooseAgainst(store, name) },
  ]);

const adjusters: Group = ({ store }, _state, { document }) =>
  AXLES.flatMap((axle) =>
    Object.entries(document[axle]?.adjusters ?? {}).map(([name, { label, kind }]) => ({
      id: `hold.${axle}.${name}`,
      label: `Go to ${label ?? nameOfKey(name)}, ${axle}`,
      where: 'Bench, adjuster',
      words: [kind, name],
      run: () => {
        choosePage(store, 'bench');
        chooseAxle(store, axle);
        holdAdjuster(store, name);
        goTo('.held input');
      },
    })),
  );

const axleValues: Group = ({ store }, { axle }) => [
  { id: 'toe.field', label: `Set toe, ${axle}`, where: 'Bench, axle', run: () => goTo('input[aria-label^="Set toe"]') },
  {
    id: 'height.field',
    label: `Set ride height, ${axle}`,
    where: 'Bench, axle',
    run: () => goTo('input[aria-label^="Ride height"]'),
  },
  { id: 'toe.clear', label: `Leave toe as the adjusters make it, ${axle}`, where: 'Bench, axle', run: () => setToe(store, null) },
  { id: 'height.clear', label: `Take the ride height out, ${axle}`, where: 'Bench, axle', run: () => setRideHeight(store, null) },
];

const readings: Group = ({ store }) =>
  CATALOGUE.map(({ key, name, group }) => ({
    id: `reading.${key}`,
    label: `Go to ${name.toLowerCase()}`,
    where: `Bench, reading, ${group}`,
    words: [key],
    run: () => {
      choosePage(store, 'bench');
      goTo(`[data-reading="${key}"]`);
    },
  }));

const views: Group = ({ store }) =>
  Object.entries(VIEWS).map(([view, words]) => ({
    id: `view.${view}`,
    label: `Look ${words}`,
    where: 'Bench, view',
    run: () => chooseView(store, view as ViewName),
  }));

const motions: Group = ({ store }) => [
  { id: 'zero', label: 'Ride height, straight ahead', where: 'Bench, motion', keys: 'Home', run: () => standStill(store) },
  { id: 'bump.10', label: 'Bump 10 mm', where: 'Bench, motion', run: () => moveTo(store, { travel: 10 }) },
  { id: 'droop.10', label: 'Droop 10 mm', where: 'Bench, motion', run: () => moveTo(store, { travel: -10 }) },
];

const filing = ({ store, files }: WindowTools, state: BenchState): readonly Command[] => [
  { id: 'file.open', label: 'Open a car file', where: 'File', keys: 'Ctrl O', run: () => void chooseCar(store, files) },
  ...(state.file
    ? [
        { id: 'file.save', label: 'Save', where: 'File', keys: 'Ctrl S', run: () => void saveCar(store, files) },
        { id: 'file.saveAs', label: 'Save as', where: 'File', keys: 'Ctrl Shift S', run: () => void saveCarAs(store, files) },
      ]
    : []),
];

const ALWAYS = [filing, pages, themes, units, samples];
const WITH_CAR: readonly Group[] = [steps, axles, setups, adjusters, axleValues, readings, views, motions];

/** Everything that the window can do now, in the order in which an empty search shows it. */
export const windowCommands = (tools: WindowTools): readonly Command[] => {
  const state = tools.store.getState();
  const bench = benchOf(state);
  return [
    ...(bench ? WITH_CAR.flatMap((group) => group(tools, state, bench)) : []),
    ...ALWAYS.flatMap((group) => group(tools, state)),
  ];
};
