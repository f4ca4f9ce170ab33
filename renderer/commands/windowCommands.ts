import { setupNames } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { steerWays } from '../compute/steerScale';
import { PLAY_KIND, PLAY_LABELS } from '../motion/playChoices';
import { RIDE_KINDS } from '../motion/ride';
import { STEER_AS, STEER_WAYS } from '../motion/steerChoices';
import type { WindowTools } from '../shell/benchContext';
import { chooseAgainst, chooseSetup, redoStep, setRideHeight, setToe, undoStep } from '../state/actions/editSetup';
import { chooseAxle, choosePage, holdAdjuster, moveTo, standStill } from '../state/actions/lookAt';
import { prefer } from '../state/actions/prefer';
import { copySetup, makeSetup } from '../state/actions/setups';
import { benchOf } from '../state/benchStore';
import { freeTrialName } from '../state/settings';
import type { Command, CommandGroup, CommandMaker } from './command';
import { earlier, filing } from './fileCommands';
import { fitUp } from './fitUpCommands';
import { goTo, press } from './goTo';
import { points, pointsPage } from './pointsCommands';
import { curveReadings, curves, pages, readings, samples, studies, themes, units, views } from './lookCommands';

const AXLES = ['front', 'rear'] as const;

const steps: CommandGroup = ({ store }, { history }) => {
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

const axles: CommandGroup = ({ store }, _state, { document }) =>
  AXLES.filter((axle) => document[axle]).map((axle) => ({
    id: `axle.${axle}`,
    label: `Show the ${axle} axle`,
    where: 'Bench, axle',
    run: () => chooseAxle(store, axle),
  }));

const setups: CommandGroup = ({ store }, _state, { document, setup }) => [
  {
    id: 'setups',
    label: 'Setups…',
    where: 'Bench, setup',
    words: ['notes', 'rename', 'delete'],
    run: () => press('.setupsbutton'),
  },
  { id: 'setup.copy', label: `Copy the setup ${setup}`, where: 'Bench, setup', run: () => copySetup(store, setup) },
  {
    id: 'setup.new',
    label: 'New setup, as drawn',
    where: 'Bench, setup',
    run: () => makeSetup(store, freeTrialName(setupNames(document))),
  },
  ...setupNames(document).flatMap((name) => [
    { id: `setup.${name}`, label: `Put ${name} on the bench`, where: 'Bench, setup', run: () => chooseSetup(store, name) },
    { id: `against.${name}`, label: `Compare with ${name}`, where: 'Bench, setup', run: () => chooseAgainst(store, name) },
  ]),
  {
    id: 'against.file',
    label: 'Compare with another file…',
    where: 'Bench, setup',
    run: () => press('input[aria-label="Car file to compare with"]'),
  },
];

const adjusters: CommandGroup = ({ store }, _state, { document }) =>
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

/** Of the part under the hand: one number for both sides, or one each. */
const held: CommandGroup = () =>
  (['Same on both sides', 'Left and right apart'] as const).map((label, place) => ({
    id: `held.${place === 0 ? 'together' : 'apart'}`,
    label: `${label}: the part in hand`,
    where: 'Bench, adjuster',
    run: () => press(`.held [aria-label$=": sides"] button:nth-child(${place + 1})`, '.adjusters'),
  }));

const axleValues: CommandGroup = ({ store }, { axle }) => [
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

const table: CommandGroup = () => [
  {
    id: 'readings.choose',
    label: 'Choose readings…',
    where: 'Bench, readings',
    words: ['order', 'hide', 'groups'],
    run: () => press('.choosebutton', '.choosebutton'),
  },
  {
    id: 'readings.copy',
    label: 'Copy readings',
    where: 'Bench, readings',
    run: () => press('[aria-label="Copy readings"]', '.tablefoot'),
  },
  {
    id: 'readings.csv',
    label: 'Save readings as CSV',
    where: 'Bench, readings',
    run: () => press('[aria-label="Save readings as CSV"]', '.tablefoot'),
  },
  ...(['readings', 'lengths'] as const).map((name, place) => ({
    id: `column.${name}`,
    label: `Show ${name} in the right-hand column`,
    where: 'Bench, readings',
    run: () => press(`.columntabs button:nth-child(${place + 1})`, '.columntabs'),
  })),
  {
    id: 'tape',
    label: 'Tape between two points',
    where: 'Bench, lengths',
    words: ['measure', 'distance', 'length', 'ruler'],
    run: () => goTo('.tapeends select', '.columntabs button:nth-child(2)'),
  },
];

const motions: CommandGroup = ({ store }, { axle }, { document }) => {
  const ways = steerWays(document, axle);
  const isSteered = document[axle]?.steering !== undefined;
  return [
    { id: 'zero', label: 'Ride height, straight ahead', where: 'Bench, motion', keys: 'Home', run: () => standStill(store) },
    { id: 'play', label: 'Play or stop', where: 'Bench, motion', keys: 'Space', run: () => press('.play', '.play') },
    ...RIDE_KINDS.filter((kind) => kind !== 'steer' || isSteered).map((kind) => ({
      id: `play.${kind}`,
      label: `Play ${PLAY_LABELS[kind].toLowerCase()}`,
      where: 'Bench, motion',
      run: () => {
        prefer(store, PLAY_KIND, kind);
        press('.play[aria-pressed="false"]', '.play');
      },
    })),
    { id: 'bump.10', label: 'Bump 10 mm', where: 'Bench, motion', run: () => moveTo(store, { travel: 10 }) },
    { id: 'droop.10', label: 'Droop 10 mm', where: 'Bench, motion', run: () => moveTo(store, { travel: -10 }) },
    // a narrow window has one of them at a time, behind the buttons of their names
    ...(['Bump', 'Roll', 'Steer'] as const)
      .map((name, place) => ({
        id: `motion.${name.toLowerCase()}`,
        label: `Set ${name.toLowerCase()}`,
        where: 'Bench, motion',
        run: () =>
          goTo(
            `.motion [role="group"][aria-label="${name}"] input[role="spinbutton"]`,
            `.motion [aria-label="Motion shown"] button:nth-child(${place + 1})[aria-pressed="false"]`,
          ),
      }))
      .filter(({ id }) => id !== 'motion.steer' || isSteered),
    ...(isSteered ? ways : []).map((way) => ({
      id: `steerAs.${way}`,
      label: `Steer as ${STEER_WAYS[way].label}`,
      where: 'Bench, motion',
      run: () => prefer(store, STEER_AS, way),
    })),
  ];
};

/** What can be done with the sheet while it is on the screen. */
const sheet: CommandGroup = (_tools, { page }) =>
  page === 'sheet'
    ? [
        { id: 'sheet.print', label: 'Print the sheet', where: 'Sheet', keys: 'Ctrl P', run: () => press('.printsheet') },
        { id: 'sheet.pdf', label: 'Save the sheet as PDF', where: 'Sheet', run: () => press('[aria-label="Save as PDF"]') },
        { id: 'sheet.html', label: 'Save the sheet as HTML', where: 'Sheet', run: () => press('[aria-label="Save as HTML"]') },
      ]
    : [];

const withCar =
  (group: CommandGroup): CommandMaker =>
  (tools, state) => {
    const bench = benchOf(state);
    return bench ? group(tools, state, bench) : [];
  };

/** What is on the bench alone is done there, wherever one is: from another page there would be nothing to press. */
const onBench =
  (group: CommandGroup): CommandGroup =>
  (tools, state, bench) =>
    group(tools, state, bench).map((command) => ({
      ...command,
      run: () => {
        choosePage(tools.store, 'bench');
        command.run();
      },
    }));

/** What one does most stands first; what one looks for by its name, and there is much of, comes last. */
const GROUPS: readonly CommandMaker[] = [
  withCar(steps),
  withCar(sheet),
  filing,
  ...[...[adjusters, held, axleValues, motions].map(onBench), setups, axles, ...[curves, table, views].map(onBench)].map(withCar),
  pages,
  ...[studies, pointsPage, fitUp].map(withCar),
  units,
  themes,
  earlier,
  samples,
  ...[readings, curveReadings, points].map(withCar),
];

/** Everything that the window can do now, in the order in which an empty search shows it. */
export const windowCommands = (tools: WindowTools): readonly Command[] => {
  const state = tools.store.getState();
  return GROUPS.flatMap((group) => group(tools, state));
};
