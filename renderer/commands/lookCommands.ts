import { CATALOGUE, numberNamesOf } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import type { CurveOver } from '../compute/curves';
import { chosenPlots, CURVES_OVER, CURVES_SHOWN, MOST_PLOTS, nextPlot } from '../curves/curveChoices';
import { readingOfNumber } from '../curves/plotContent';
import { inSentence } from '../readings/inSentence';
import { PAGES } from '../shell/pages';
import { STUDIES } from '../studies/studies';
import { choosePage, chooseStudy, chooseTheme, chooseView } from '../state/actions/lookAt';
import { openSample } from '../state/actions/openCar';
import { prefer } from '../state/actions/prefer';
import { chooseScope, switchOverlay, switchProjection } from '../state/actions/viewing';
import type { Theme, ViewName } from '../state/benchStore';
import { UNIT_PREFERENCES } from '../state/chosenUnits';
import { OVERLAYS, SCOPES } from '../viewport/viewNames';
import type { CommandGroup, CommandMaker } from './command';
import { goTo, press } from './goTo';

const VIEWS: Readonly<Record<ViewName, string>> = {
  corner: 'from the corner',
  front: 'from the front, or from behind at the rear axle',
  side: 'from the side',
  top: 'from above',
  wheel: 'from the wheel',
  axis: 'along the steering axis',
};
const curveName = (number: string): string => inSentence(readingOfNumber(number)?.name ?? number);

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

export const pages: CommandMaker = ({ store }) =>
  PAGES.map(({ name, label }) => ({
    id: `page.${name}`,
    label: `Go to ${label}`,
    where: 'Page',
    run: () => choosePage(store, name),
  }));

export const studies: CommandGroup = ({ store }) =>
  STUDIES.map(({ name, label, sentence }) => ({
    id: `study.${name}`,
    label: `${label}: ${sentence}`,
    where: 'Studies',
    words: ['study', 'question', 'ask'],
    run: () => {
      chooseStudy(store, name);
      goTo(`.study[data-study="${name}"] :is(select, input, button)`);
    },
  }));

export const themes: CommandMaker = ({ store }) =>
  Object.entries(THEMES).map(([theme, words]) => ({
    id: `theme.${theme}`,
    label: `Colours: ${words}`,
    where: 'Window',
    words: ['theme'],
    run: () => chooseTheme(store, theme as Theme),
  }));

export const units: CommandMaker = ({ store }) =>
  Object.values(UNIT_PREFERENCES).flatMap(({ name, words }) =>
    words.map((word) => ({
      id: `${name}.${word}`,
      label: `Units: ${UNIT_WORDS[word]}`,
      where: 'Window',
      run: () => prefer(store, name, word),
    })),
  );

export const samples: CommandMaker = ({ store, files }, state) =>
  state.samples.map((name) => ({
    id: `sample.${name}`,
    label: `Open the sample ${nameOfKey(name)}`,
    where: 'File',
    run: () => void openSample(store, files, name),
  }));

export const views: CommandGroup = ({ store }) => [
  ...Object.entries(VIEWS).map(([view, words]) => ({
    id: `view.${view}`,
    label: `Look ${words}`,
    where: 'Bench, view',
    run: () => chooseView(store, view as ViewName),
  })),
  ...SCOPES.map(({ name, label }) => ({
    id: `scope.${name}`,
    label: `Show in the view: ${label.toLowerCase()}`,
    where: 'Bench, view',
    run: () => chooseScope(store, name),
  })),
  ...OVERLAYS.map(({ name, label }) => ({
    id: `overlay.${name}`,
    label: `Show or hide: ${label.toLowerCase()}`,
    where: 'Bench, view',
    words: ['overlay', 'switch'],
    run: () => switchOverlay(store, name),
  })),
  {
    id: 'projection',
    label: 'Switch between perspective and parallel',
    where: 'Bench, view',
    run: () => switchProjection(store),
  },
  ...[
    { id: 'point.choose', label: 'Choose a point…', words: ['pickup'] },
    { id: 'picture.save', label: 'Save the picture, or a drawing with dimensions…', words: ['png', 'svg', 'print', 'export'] },
  ].map((command) => ({
    ...command,
    where: 'Bench, view',
    run: () => press('.showplace > .button[aria-expanded="false"]', '.showplace'),
  })),
];

const OVERS: readonly CurveOver[] = ['bump', 'roll', 'steer'];

export const curves: CommandGroup = ({ store }, state, { document }) => [
  ...OVERS.filter((over) => over !== 'steer' || document[state.axle]?.steering !== undefined).map((over) => ({
    id: `curves.${over}`,
    label: `Curves over ${over}`,
    where: 'Bench, curves',
    run: () => prefer(store, CURVES_OVER, over),
  })),
  {
    id: 'curves.more',
    label: 'One more curve',
    where: 'Bench, curves',
    run: () => {
      const shown = chosenPlots(store.getState().preferences);
      if (shown.length < MOST_PLOTS) prefer(store, CURVES_SHOWN, [...shown, nextPlot(shown)]);
    },
  },
  ...chosenPlots(state.preferences).map((number, place, all) => ({
    id: `curves.menu.${place}`,
    label: `Save or take away the curve of ${curveName(number)}…`,
    where: `Bench, curve ${place + 1} of ${all.length}`,
    words: ['csv', 'png', 'svg', 'picture', 'table'],
    run: () => press(`.plotbox:nth-child(${place + 1}) .plotmore`, '.plotbox'),
  })),
];

/** A reading takes the last plot's place, unless a plot shows it already. */
export const curveReadings: CommandGroup = ({ store }) =>
  CATALOGUE.flatMap((entry) =>
    numberNamesOf(entry).map((number) => ({
      id: `curve.${number}`,
      label: `Curve of ${curveName(number)}`,
      where: 'Bench, curves',
      run: () => {
        choosePage(store, 'bench');
        const shown = chosenPlots(store.getState().preferences);
        if (!shown.includes(number)) prefer(store, CURVES_SHOWN, [...shown.slice(0, -1), number]);
        const place = shown.includes(number) ? shown.indexOf(number) : shown.length - 1;
        goTo(`.plotbox:nth-child(${place + 1}) .plot`);
      },
    })),
  );

export const readings: CommandGroup = ({ store }) =>
  CATALOGUE.map(({ key, name, group }) => ({
    id: `reading.${key}`,
    label: `Go to ${inSentence(name)}`,
    where: `Bench, reading, ${group}`,
    words: [key],
    run: () => {
      choosePage(store, 'bench');
      goTo(`[data-reading="${key}"]`);
    },
  }));
