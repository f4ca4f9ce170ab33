import { describe, expect, test, vi } from 'vitest';
import { CATALOGUE, setupNames } from '../../../geometry/index';
import { judgeCommand, markTyped } from '../../../renderer/commands/command';
import { windowCommands } from '../../../renderer/commands/windowCommands';
import { chosenPlots } from '../../../renderer/curves/curveChoices';
import { fetchedFiles } from '../../../renderer/files/fetchedFiles';
import { chooseSetup, turnAdjuster } from '../../../renderer/state/actions/editSetup';
import { chooseAxle } from '../../../renderer/state/actions/lookAt';
import { createBenchStore } from '../../../renderer/state/benchStore';
import { openedBench } from '../carUnderTest';

const NO_KEEPER = {
  keepNow: () => Promise.resolve(false),
  keepAtOnce: () => undefined,
  dropSoon: () => undefined,
  stop: () => undefined,
};
const commandsOf = (store = openedBench()) => windowCommands({ store, files: fetchedFiles, keeper: NO_KEEPER });

describe('the command list', () => {
  test('reaches every page, axle, setup, adjuster of both axles, reading and view, each under a name of its own', () => {
    const store = openedBench();
    const commands = commandsOf(store);
    const ids = commands.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const document = store.getState().history?.present.document;
    if (!document) throw new Error('a car is open');
    expect(ids).toEqual(
      expect.arrayContaining([
        ...CATALOGUE.map(({ key }) => `reading.${key}`),
        ...setupNames(document).flatMap((name) => [`setup.${name}`, `against.${name}`]),
        ...(['front', 'rear'] as const).flatMap((axle) =>
          Object.keys(document[axle]?.adjusters ?? {}).map((name) => `hold.${axle}.${name}`),
        ),
        'page.bench',
        'axle.rear',
        'view.top',
        'theme.dark',
        'zero',
        'setups',
        'readings.choose',
        'curve.camber',
        'curves.roll',
        'play.combined',
        'steerAs.rack',
        'scope.axle',
        'overlay.ghost',
        'units.length.in',
        'fitup.clearance',
        'fitup.loads',
        'fitup.parts',
        'points.car',
        'points.coordinates',
        'point.rear.wheelCentre',
        'held.apart',
        'picture.save',
      ]),
    );
    expect(commands.every(({ label, where }) => label.trim() !== '' && where.trim() !== '')).toBe(true);
  });

  test('what is on the bench alone goes there first; recent files and kept copies are opened', () => {
    const store = openedBench();
    const recent = [{ id: null, name: 'wet.jounce.json', folder: null, usedAt: 1 }];
    const copies = [{ id: 'kept', title: 'Wet car', keptAt: 1 }] as unknown as ReturnType<
      typeof store.getState
    >['files']['copies'];
    store.setState({ page: 'studies', files: { ...store.getState().files, recent, copies } });
    const commands = commandsOf(store);
    vi.stubGlobal('requestAnimationFrame', () => 0);
    vi.stubGlobal('performance', { now: () => 0 });
    commands.find(({ id }) => id === 'readings.choose')?.run();
    expect(store.getState().page).toBe('bench');
    commands.find(({ id }) => id === 'point.rear.wheelCentre')?.run();
    vi.unstubAllGlobals();
    expect(store.getState()).toMatchObject({ page: 'points', axle: 'rear', viewing: { chosen: { point: 'wheelCentre' } } });
    const labels = commands.filter(({ id }) => /^(recent|copy)\./.test(id)).map(({ label }) => label);
    expect(labels).toEqual(['Open wet again', expect.stringMatching(/^Kept copy of Wet car, /)]);
  });

  test('what one does most comes before what one looks for by its name', () => {
    const ids = commandsOf().map(({ id }) => id);
    const first = (start: string) => ids.findIndex((id) => id.startsWith(start));
    const order = [
      'file.save',
      'file.open',
      'hold.',
      'play',
      'setups',
      'curves.',
      'readings.choose',
      'view.',
      'reading.',
      'curve.',
    ];
    expect(order.map(first)).toEqual([...order.map(first)].sort((a, b) => a - b));
    expect(first('file.save')).toBe(0);
  });

  test('an axle that is not steered has no steer to play or to read otherwise', () => {
    const store = openedBench();
    chooseAxle(store, 'rear');
    const ids = commandsOf(store).map(({ id }) => id);
    expect(ids.filter((id) => /^(play\.steer|curves\.steer|steerAs)/.test(id))).toEqual([]);
    expect(ids).toContain('play.combined');
  });

  test('a reading takes the last plot’s place, once', () => {
    const store = openedBench();
    vi.stubGlobal('requestAnimationFrame', () => 0);
    const run = (id: string) =>
      commandsOf(store)
        .find((one) => one.id === id)
        ?.run();
    run('curve.caster');
    run('curve.toe');
    expect(chosenPlots(store.getState().preferences)).toEqual(['toe', 'camber', 'caster']);
    run('curves.more');
    expect(chosenPlots(store.getState().preferences)).toHaveLength(4);
    vi.unstubAllGlobals();
  });

  test('undo is in it by the name of the step, and only when there is one', () => {
    const store = openedBench();
    expect(commandsOf(store).find(({ id }) => id === 'undo')).toBeUndefined();
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
    const undo = commandsOf(store).find(({ id }) => id === 'undo');
    expect(undo?.label).toBe('Undo: Turn plate across');
    undo?.run();
    expect(store.getState().history?.past).toEqual([]);
  });

  test('a command does what the panel would', () => {
    const store = openedBench();
    const names = setupNames(store.getState().history!.present.document);
    chooseSetup(store, names[0] ?? '');
    commandsOf(store)
      .find(({ id }) => id === `setup.${names[1]}`)
      ?.run();
    expect(store.getState().history?.present.setup).toBe(names[1]);
  });

  test('without a car it still opens one', () => {
    const store = createBenchStore();
    store.setState({ samples: ['chalkboard'] });
    expect(commandsOf(store).map(({ id }) => id)).toEqual(expect.arrayContaining(['sample.chalkboard', 'theme.light']));
    expect(commandsOf(store).some(({ id }) => id.startsWith('hold.'))).toBe(false);
  });
});

test('what was typed is told from the rest of the label, whatever its case', () => {
  expect(markTyped('Go to camber gain', 'CAMB')).toEqual([
    { text: 'Go to ', typed: false },
    { text: 'camb', typed: true },
    { text: 'er gain', typed: false },
  ]);
  expect(markTyped('Zero', 'x')).toEqual([{ text: 'Zero', typed: false }]);
  expect(markTyped('Zero', ' ')).toEqual([{ text: 'Zero', typed: false }]);
});

test('a label that begins with what was typed comes first; every word must be there, no strewn letters', () => {
  const order = ['Camber', 'Go to camber gain', 'Decambering', 'Go to gain of camber'].map((label) =>
    judgeCommand(label, [], label === 'Go to gain of camber' ? 'camber gain' : 'camb'),
  );
  expect(order).toEqual([...order].sort((a, b) => b - a));
  expect(judgeCommand('Go to Rear bush', ['Bench, adjuster'], 'bench bush')).toBeGreaterThan(0);
  expect(judgeCommand('Go to Rear bush, front', ['Bench, adjuster'], 'no such thing')).toBe(0);
});
