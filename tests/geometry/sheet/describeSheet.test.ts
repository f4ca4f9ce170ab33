import { describe, expect, test } from 'vitest';
import {
  describeSheet,
  findReading,
  findSetup,
  fitterWords,
  readingsOfAxle,
  assembleCar,
  setupNames,
  STANDARD_UNITS,
  toDegrees,
  toMechanism,
  WHOLE_SHEET,
  type CarDocument,
  type Radians,
} from '../../../geometry/index';
import { SHEET_CAUTIONS } from '../../../geometry/sheet/cautions';
import { dayWords } from '../../../geometry/sheet/describeSheet';
import { SAMPLES, sampleNamed } from '../../samples/samples';
import { sectionsOf, sheetOf, sheetQuestion } from './sheets';

const hatch = sampleNamed('saltmarsh-hatch').document;
const chalk = sampleNamed('chalkboard').document;

const rowNamed = (document: CarDocument, setup: string, axle: 'front' | 'rear', name: string, more = {}) => {
  const section = sectionsOf(sheetOf(document, setup, more), 'settings').find((one) => one.axle === axle);
  const row = section?.rows.find((one) => one.name === name);
  if (!row) throw new Error(`no row ${name}`);
  return row;
};

const changesOf = (setup: string, from: string, document = hatch) => {
  const onCar = { name: from, setup: findSetup(document, from) };
  return sectionsOf(sheetOf(document, setup, { onCar }), 'changes')[0]!;
};

const stepNamed = (title: string, changes: ReturnType<typeof changesOf>) =>
  changes.steps.find((step) => step.title === title)?.items.map(({ text }) => text) ?? [];

test('a bar that goes back into the hole that it is drawn in is no change', () => {
  const file = { ...hatch, setups: { ...hatch.setups, Named: { front: { barHole: 'middle' }, rear: { barHole: 'stiff' } } } };
  const bars = stepNamed('Bars back on', changesOf('Named', 'Baseline', file as CarDocument));
  expect(bars).toEqual(['Bar: hole stiff (was hole middle)', 'Links hooked up while the car stands on its wheels']);
  expect(rowNamed(hatch, 'Baseline', 'front', 'Anti-roll bar').left.words).toBe('hole middle');
});

describe('the settings', () => {
  test('of every setup of every sample, every adjuster has a row with its own words', () => {
    for (const { document } of SAMPLES)
      for (const setup of setupNames(document)) {
        const sheet = sheetOf(document, setup);
        for (const section of sectionsOf(sheet, 'settings')) {
          const adjusters = Object.values(document[section.axle]?.adjusters ?? {});
          expect(section.rows.length).toBeGreaterThanOrEqual(adjusters.length);
          for (const row of section.rows) {
            expect(row.left.words).not.toBe('');
            expect(row.right.words).not.toBe('');
          }
        }
      }
  });

  test('the words are those of the bench', () => {
    const adjuster = hatch.front!.adjusters!['plateAcross']!;
    const row = rowNamed(hatch, 'Sprint', 'front', 'Top plate, across');
    const { short, detail } = fitterWords(adjuster, -8, 1, STANDARD_UNITS, undefined, 'left');
    expect(row.left).toMatchObject({ words: short, detail });
    expect(short).toBe('8 mm inboard');
  });

  test('a clock of the right-hand side is mirrored and seen from the same place', () => {
    const row = rowNamed(hatch, 'Trial 3', 'front', 'Rear bushing');
    expect(row.left.words).toBe('hole at 11 o’clock');
    expect(row.right.words).toBe('hole at 1 o’clock');
    expect(row.left.detail).toContain('seen from below');
    expect(row.right.detail).toContain('seen from below');
    expect(row.left.drawing).not.toEqual(row.right.drawing);
  });

  test('clocks of the file are the same number on both sides, along the axis', () => {
    const row = rowNamed(hatch, 'Trial 3', 'front', 'Rear bushing', { clock: 'file' });
    expect(row.left.words).toBe(row.right.words);
    expect(row.left.detail).toContain('330°');
    expect(row.left.detail).toContain('along its axis');
    expect(row.left.drawing).toEqual(row.right.drawing);
  });

  test('left and right may differ', () => {
    const row = rowNamed(hatch, 'Trial 3', 'front', 'Tie-rod end shims');
    expect([row.left.words, row.left.detail]).toEqual(['2.5 mm down', 'shims 2 + 0.5']);
    expect([row.right.words, row.right.detail]).toEqual(['2 mm down', 'shims 2']);
  });

  test('a bushing that is not fitted is concentric, not at 12', () => {
    expect(rowNamed(hatch, 'Baseline', 'front', 'Rear bushing').left.words).toBe('concentric');
    const at12 = structuredClone(hatch) as CarDocument & { setups: Record<string, { front: { both: Record<string, number> } }> };
    at12.setups['Baseline'] = { front: { both: { rearBush: 0 } } };
    const row = rowNamed(at12, 'Baseline', 'front', 'Rear bushing');
    expect(row.left.words).toBe('hole at 12 o’clock');
    expect(row.isPlain).toBe(false);
  });

  test('what the rules lock says why', () => {
    const row = rowNamed(hatch, 'Sprint', 'front', 'Front arm bolt');
    expect(row.locked).toBe(hatch.front!.adjusters!['armBolt']!.locked);
    expect(row.left.words).toBe('at zero');
  });

  test('what toe is set with stands where the reset leaves it, and says that it is about so', () => {
    const row = rowNamed(hatch, 'Sprint', 'front', 'Tie rod');
    const car = assembleCar(toMechanism(hatch), findSetup(hatch, 'Sprint'));
    if (!car.ok) throw new Error('no car');
    const turns = car.value.front!.toeReset!.left;
    expect(row.left.words).toBe(`about ${fitterWords(hatch.front!.adjusters!['tieRod']!, turns, 1, STANDARD_UNITS).short}`);
    expect(row.left.detail).toBe('then set toe with it');
  });

  test('a torque is what somebody typed, or a line to write on', () => {
    expect(rowNamed(hatch, 'Sprint', 'front', 'Clamp bolt').torque).toBeNull();
    const typed = structuredClone(hatch) as unknown as { front: { adjusters: Record<string, { torque?: string }> } };
    typed.front.adjusters['clampBolt']!.torque = '90 N·m, new bolt';
    expect(rowNamed(typed as unknown as CarDocument, 'Sprint', 'front', 'Clamp bolt').torque).toBe('90 N·m, new bolt');
  });

  test('an axle alone, and no drawings', () => {
    const sheet = sheetOf(hatch, 'Sprint', { axles: ['rear'], parts: { ...WHOLE_SHEET, drawings: false } });
    const settings = sectionsOf(sheet, 'settings');
    expect(settings.map(({ axle }) => axle)).toEqual(['rear']);
    expect(settings[0]!.rows.every(({ left, right }) => left.drawing === null && right.drawing === null)).toBe(true);
    expect(sectionsOf(sheet, 'targets')[0]!.rows.some(({ name }) => name.includes('front'))).toBe(false);
  });

  test('a car with one axle has one', () => {
    const { rear: _, ...single } = chalk;
    const document = { ...single, setups: { Plain: {} }, onCar: 'Plain' } as unknown as CarDocument;
    expect(sectionsOf(sheetOf(document, 'Plain'), 'settings').map(({ axle }) => axle)).toEqual(['front']);
  });
});

describe('what to change', () => {
  test('follows the order that needs the least doing over', () => {
    const titles = changesOf('Sprint', 'Trial 3').steps.map(({ title }) => title);
    expect(titles).toEqual([
      'Pressures and fuel',
      'Springs, heights and weights',
      'Caster',
      'Camber',
      'Bump steer',
      'Heights again',
      'Toe, last of all',
      'Lock nuts and bolts',
      'Bars back on',
    ]);
  });

  test('says what is wanted and what was, of each axle, and leaves out what stays', () => {
    const items = changesOf('Sprint', 'Trial 3').steps.flatMap((step) =>
      step.items.map((item) => ({ ...item, step: step.title })),
    );
    expect(items).toContainEqual({
      step: 'Camber',
      axle: 'front',
      text: 'Top plate, across: 8 mm inboard (was 6 mm inboard)',
    });
    expect(items).toContainEqual({
      step: 'Camber',
      axle: 'rear',
      text: expect.stringContaining('concentric (was left hole at 4'),
    });
    expect(items).toContainEqual({ step: 'Bump steer', axle: 'front', text: expect.stringContaining('Tie-rod end shims') });
    expect(items).toContainEqual({
      step: 'Springs, heights and weights',
      axle: 'rear',
      text: 'Springs: 100.0 N/mm (was 90.0 N/mm)',
    });
    expect(items.some(({ text }) => text.includes('Rack shims') || text.includes('Front arm bolt'))).toBe(false);
  });

  test('a part goes where it changes most: the file of another car, in which a rod at the rear is for toe', () => {
    const marram = sampleNamed('marram-coupe').document;
    const { steps } = changesOf('Track day', 'As built', marram);
    const of = (name: string) => steps.find(({ items }) => items.some(({ text }) => text.startsWith(name)))?.title;
    expect(of('Track-rod cam')).toBe('Camber');
    expect(of('Tension-rod bushing')).toBe('Caster');
    expect(of('Rack shims')).toBe('Bump steer');
    expect(of('Each wheel')).toBe('Toe, last of all');
  });

  test('nothing differs: it says so', () => {
    const changes = changesOf('Trial 3', 'Trial 3');
    expect(changes.steps).toEqual([]);
    // a slide at zero stands where one that is not set stands; a bushing with its hole at 12 does not stand as a concentric one
    const setups = {
      Plain: {},
      Zero: { front: { both: { plateAcross: 0, clampBolt: 0 } } },
      Twelve: { front: { both: { rearBush: 0 } } },
    };
    const car = { ...hatch, setups, onCar: 'Plain', questions: {}, measurements: [] } as CarDocument;
    expect(changesOf('Zero', 'Plain', car).steps).toEqual([]);
    expect(changesOf('Twelve', 'Plain', car).steps.length).toBeGreaterThan(0);
    expect(changes.note).toContain('nothing');
  });

  test('nobody says what is on the car: there is no list', () => {
    const { onCar: _, ...rest } = hatch;
    expect(sectionsOf(sheetOf(rest as CarDocument, 'Sprint'), 'changes')).toEqual([]);
  });

  test('what sets the toe is said by how far it is turned from where it stands, and where that leaves it', () => {
    const key = hatch.front!.toeAdjuster!;
    const turned = {
      ...hatch,
      setups: { Now: { front: { both: { [key]: -0.5 } } }, Next: { front: { both: { plateAcross: -6 }, setToe: 0.05 } } },
      onCar: 'Now',
    } as CarDocument;
    const car = assembleCar(toMechanism(turned), findSetup(turned, 'Next'));
    if (!car.ok) throw new Error('no car');
    const { left, right } = car.value.front!.toeReset!;
    const say = (turns: number): string => `${Math.abs(turns).toFixed(2)} turn${Math.abs(turns) > 1 ? 's' : ''}`;
    const { steps } = changesOf('Next', 'Now', turned);
    const text = steps.find(({ title }) => title === 'Toe, last of all')!.items[0]!.text;
    for (const [side, turns] of Object.entries({ left, right })) {
      expect(text, side).toContain(say(Math.round((turns + 0.5) * 100) / 100));
      expect(text, side).toContain(say(turns));
    }
    expect(text).toMatch(/about .+, to .+ \(was ½ turn shorter\)$/);
  });

  test('toe that nobody sets comes by itself, and is said', () => {
    const turned = {
      ...hatch,
      setups: { Plain: {}, Turned: { front: { both: { plateAcross: -3 } } } },
      onCar: 'Plain',
    } as CarDocument;
    const { steps } = changesOf('Turned', 'Plain', turned);
    expect(steps.find(({ title }) => title === 'Toe, last of all')?.items[0]?.text).toContain('by itself');
  });
});

describe('targets', () => {
  const rows = sectionsOf(sheetOf(hatch, 'Sprint'), 'targets')[0]!.rows;
  const named = (start: string) => rows.find(({ name }) => name.startsWith(start))!;

  test('are the readings of the engine where the car stands', () => {
    const car = assembleCar(toMechanism(hatch), findSetup(hatch, 'Sprint'));
    if (!car.ok) throw new Error('no car');
    const row = readingsOfAxle(car.value, 'front');
    if (!row.ok) throw new Error('no row');
    const camber = toDegrees(row.value.left.camber as Radians).toFixed(findReading('camber')!.decimals);
    expect(named('Camber, front').value).toMatchObject({ left: camber.replace('-', '−') });
    expect(named('Track, front').value).toBe(row.value.both.track.toFixed(1).replace(/(\d)(\d{3}\.)/, '$1,$2'));
  });

  test('have the tolerances of the file and what the rules allow, with where it stands', () => {
    expect(named('Camber, front').tolerance).toBe('± 0.10');
    expect(named('Camber, front').rule).toBe('−4.00 … 0.00 (sample rules 5.2); L − R −0.30 … 0.30 (sample rules 5.3)');
    expect(named('Front height').rule).toContain('≥ 145.0');
    expect(named('Caster').tolerance).toBe('± 0.15');
    expect(rows.some(({ name }) => name.startsWith('Caster, rear'))).toBe(false);
  });

  test('a broken rule is marked, and stands among what to look out for', () => {
    const set = structuredClone(findSetup(hatch, 'Sprint')) as { front: { both: Record<string, number> } };
    set.front.both['clampBolt'] = 90;
    set.front.both['plateAcross'] = -12;
    const document = {
      ...hatch,
      limits: [{ reading: 'camber', axle: 'front', min: -3, max: 0, source: 'rule 9' }],
    } as CarDocument;
    const sheet = sheetOf(document, 'Sprint', { setup: { name: 'Sprint', setup: set } });
    const camber = sectionsOf(sheet, 'targets')[0]!.rows.find(({ name }) => name.startsWith('Camber, front'))!;
    expect(camber.isBroken).toBe(true);
    const { faults } = sectionsOf(sheet, 'cautions')[0]!;
    expect(faults.length).toBe(2);
    expect(faults[0]).toMatch(/^Camber, front, left is \d\.\d+° past the rule \(rule 9\)\.$/);
  });

  test('in inches and minutes where the reader has them', () => {
    const units = { length: 'in', angle: 'minutes', toe: 'angle', force: 'pound' } as const;
    const inches = sectionsOf(sheetOf(hatch, 'Sprint', { units }), 'targets')[0]!.rows;
    expect(inches.find(({ name }) => name.startsWith('Track, front'))).toMatchObject({
      unit: 'in',
      value: expect.stringMatching(/^61\./),
    });
    expect(inches.find(({ name }) => name.startsWith('Camber, front'))?.value).toMatchObject({ left: '−2°24′' });
  });
});

describe('the rest of the sheet', () => {
  test('says what it makes, and nothing that is not known', () => {
    const labels = sectionsOf(sheetOf(hatch, 'Sprint'), 'figures')[0]!.figures.map(({ label }) => label);
    expect(labels).toContain('Roll centre height, front');
    expect(labels).toContain('Bump steer ±40 mm, front');
    expect(labels).toContain('Kingpin inclination, front');
    expect(labels).not.toContain('Kingpin inclination, rear');
    const { spring: _, ...front } = chalk.front!;
    const bare = { ...chalk, front } as CarDocument;
    const known = sectionsOf(sheetOf(bare, 'As drawn'), 'figures')[0]!.figures.map(({ label }) => label);
    expect(known).not.toContain('Wheel rate, front');
  });

  test('pressures as recorded; weights are left to be written in', () => {
    const corners = sectionsOf(sheetOf(hatch, 'Trial 3'), 'corners')[0]!;
    expect(corners.rows[0]).toEqual({ name: 'Pressure cold', unit: 'bar', values: ['1.9', '1.9', '1.8', '1.8'] });
    expect(corners.rows[1]).toEqual({ name: 'Corner weight', unit: 'kg', values: ['', '', '', ''] });
    expect(corners.note).toContain('62.0 % front');
    const rear = sectionsOf(sheetOf(hatch, 'Trial 3', { axles: ['rear'] }), 'corners')[0]!;
    expect(rear.rows[0]!.values).toEqual(['1.8', '1.8']);
  });

  test('toe read at the rim says across what', () => {
    const units = { length: 'in', angle: 'degrees', toe: 'rim', force: 'newton' } as const;
    const across = /, across 19\.17\d? in at the rim$/;
    const targets = sectionsOf(sheetOf(hatch, 'Sprint', { units }), 'targets')[0]!.rows;
    expect(
      targets.filter(({ name }) => /^Toe, (front|rear), each wheel/.test(name)).map(({ name }) => across.test(name)),
    ).toEqual([true, true]);
    const settings = sectionsOf(sheetOf(hatch, 'Sprint', { units }), 'settings').flatMap(({ rows }) => rows);
    expect(settings.filter(({ name }) => name.startsWith('Toe, each wheel')).map(({ name }) => across.test(name))).toContain(
      true,
    );
    const degrees = sectionsOf(sheetOf(hatch, 'Sprint'), 'targets')[0]!.rows;
    expect(degrees.some(({ name }) => name.includes('at the rim'))).toBe(false);
  });

  test('what a setup has of its own wheel is in the units of the reader', () => {
    const front = { ...hatch.setups!['Baseline']!.front, wheel: { camber: -1.25, toe: 0.2, loadedRadius: 300 } };
    const own = { ...hatch, setups: { ...hatch.setups, Own: { front } } } as CarDocument;
    const wheel = (more = {}) => rowNamed(own, 'Own', 'front', 'Wheel', more).left.words;
    expect(wheel()).toBe('camber −1.25°, toe +0.200° toe-in, loaded radius 300 mm');
    const units = { length: 'in', angle: 'minutes', toe: 'angle', force: 'pound' } as const;
    expect(wheel({ units })).toBe('camber −1°15′, toe +0°12.0′ toe-in, loaded radius 11.811 in');
  });

  test('notes keep their lines', () => {
    const noted = {
      ...hatch,
      setups: { ...hatch.setups, Sprint: { ...hatch.setups!['Sprint'], notes: 'first\r\n\n  - second\n- third  ' } },
    } as CarDocument;
    expect(sectionsOf(sheetOf(noted, 'Sprint'), 'notes')[0]!.lines.slice(0, 3)).toEqual(['first', '- second', '- third']);
  });

  test('what is not wanted is not there', () => {
    const nothing = { drawings: false, boxes: false, rules: false, makes: false, changes: false, curves: false };
    const sheet = sheetOf(hatch, 'Baseline', { parts: nothing });
    expect(sheet.sections.map(({ kind }) => kind)).toEqual(['settings', 'settings', 'targets', 'cautions']);
  });

  test('every caution is on every sheet', () => {
    const nothing = { drawings: false, boxes: false, rules: false, makes: false, changes: false, curves: false };
    for (const { document } of SAMPLES)
      for (const parts of [WHOLE_SHEET, nothing])
        expect(sectionsOf(sheetOf(document, setupNames(document)[0]!, { parts }), 'cautions')[0]!.lines).toEqual(SHEET_CAUTIONS);
    const all = SHEET_CAUTIONS.join(' ');
    for (const word of [
      'full droop',
      'hose',
      'captive',
      'clamp force',
      'first run',
      'used once',
      'Witness',
      'Long pins',
      'studs',
      'legal',
      'rigid',
      'engineer',
    ])
      expect(all).toContain(word);
  });

  test('the head says car, setup, what is on it, revision, day and file', () => {
    const sheet = sheetOf(hatch, 'Sprint');
    expect(sheet.car).toBe('Saltmarsh hatch');
    expect(sheet.head.map(({ label, value }) => `${label}: ${value}`)).toEqual([
      'Setup: Sprint',
      'On the car now: Trial 3',
      'Revision: C',
      'Date: 16 May 2026',
      'Car file: a-car.jounce.json',
    ]);
    expect(dayWords('some day')).toBe('some day');
  });

  test('a setup that cannot be put together has no sheet, and says why', () => {
    const question = sheetQuestion(hatch, 'Sprint');
    const impossible = { ...question, setup: { name: 'No', setup: { front: { setToe: 80 } } } };
    const answer = describeSheet(toMechanism(hatch), impossible);
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.failure.message).not.toBe('');
  });
});
