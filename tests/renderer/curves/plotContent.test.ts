import { describe, expect, test } from 'vitest';
import { sweepSetup } from '../../../renderer/compute/curves';
import { curveCsv } from '../../../renderer/curves/curveCsv';
import { chosenOver, chosenPlots, nextPlot, plotsThatFit } from '../../../renderer/curves/curveChoices';
import { comparedValues, spokenValues } from '../../../renderer/curves/cursorWords';
import { linesThatFit } from '../../../renderer/curves/linesThatFit';
import { measuredSets } from '../../../renderer/curves/measuredPoints';
import { cursorValues, plotContent, readingOfNumber } from '../../../renderer/curves/plotContent';
import { chooseAgainst } from '../../../renderer/state/actions/editSetup';
import { moveTo } from '../../../renderer/state/actions/lookAt';
import { shownQuantity } from '../../../renderer/units/shownQuantity';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { carDocument, openedBench } from '../carUnderTest';

const document = carDocument('car-23');
const held = { travel: 0, rollDeg: 0, rack: 0 };
const angle = shownQuantity({ quantity: 'angle', decimals: 3 }, STANDARD_UNITS);
const length = shownQuantity({ quantity: 'length', decimals: 1 }, STANDARD_UNITS);

const swept = (setup: string) => {
  const answer = sweepSetup(document, setup, 'front', { over: 'bump', from: -60, to: 60, held }, [
    'camber',
    'rollCentreHeight',
    'contactCentre.y',
    'antiDive',
  ]);
  if (!answer.ok) throw new Error(answer.failure.message);
  return answer.value;
};

const camberPlot = () => {
  const content = plotContent({
    number: 'camber',
    shown: angle,
    motion: length,
    own: swept('Trial'),
    compared: swept('Baseline'),
    document,
    axle: 'front',
    over: 'bump',
    setups: ['Trial', 'Baseline'],
  });
  if (!content) throw new Error('camber is a reading');
  return content;
};

describe('a plot', () => {
  test('has both sides of both setups, and at the cursor the numbers of the table', () => {
    const { own, compared, name, unit, why } = camberPlot();
    expect([name, unit, why]).toEqual(['Camber', '°', null]);
    expect(own?.right).not.toBeNull();
    expect(compared?.left.values).toHaveLength(61);
    const store = openedBench('car-23');
    chooseAgainst(store, 'Trial');
    moveTo(store, { travel: own?.inputs[45] ?? 0 });
    const { shown } = store.getState();
    if (!shown) throw new Error('it stands');
    const values = cursorValues(shown, 'camber');
    expect(values?.left).toBe(shown.row.left['camber']);
    expect(values?.left).toBeCloseTo(compared?.left.values[45] ?? NaN, 9);
    expect(values?.comparedRight).toBeCloseTo(own?.right?.values[45] ?? NaN, 9);
  });

  test('an axle reading has one line; a name that there is not has no plot', () => {
    const question = {
      shown: length,
      motion: length,
      own: swept('Trial'),
      compared: null,
      document,
      axle: 'front',
      over: 'bump',
      setups: [],
    } as const;
    expect(plotContent({ ...question, number: 'rollCentreHeight' })?.own?.right).toBeNull();
    expect(plotContent({ ...question, number: 'contactCentre.y' })?.name).toMatch(/, y$/);
    expect(plotContent({ ...question, number: 'nonsense' })).toBeNull();
    expect(readingOfNumber('wheelCentre')).toBeUndefined();
  });

  test('a reading without any value says why', () => {
    const { body, masses, ...bare } = document;
    expect([body, masses]).toBeDefined();
    const answer = sweepSetup(bare, 'Baseline', 'front', { over: 'bump', from: -60, to: 60, held }, [
      'camber',
      'rollCentreHeight',
      'contactCentre.y',
      'antiDive',
    ]);
    if (!answer.ok) throw new Error(answer.failure.message);
    const content = plotContent({
      number: 'antiDive',
      shown: angle,
      motion: length,
      own: answer.value,
      compared: null,
      document: bare,
      axle: 'front',
      over: 'bump',
      setups: [],
    });
    expect(content?.why).toBeTruthy();
  });
});

describe('the values at the cursor', () => {
  const write = (value: number | null): string => (value === null ? '–' : value.toFixed(1));
  const values = { left: 1, right: 2, comparedLeft: 3.04, comparedRight: 3 };

  test('of what is compared say whose they are, and are one where both sides read the same', () => {
    expect(comparedValues(values, true, write)).toEqual([{ side: 'LR', text: '3.0' }]);
    expect(comparedValues({ ...values, comparedRight: -3.04 }, true, write)).toEqual([
      { side: 'L', text: '3.0' },
      { side: 'R', text: '-3.0' },
    ]);
    expect(comparedValues({ ...values, comparedRight: null }, true, write)[1]).toEqual({ side: 'R', text: '–' });
    expect(comparedValues({ ...values, comparedRight: null }, false, write)).toEqual([{ side: null, text: '3.0' }]);
  });

  test('are spoken with their sides', () => {
    expect(spokenValues(values, 'Trial', true, write)).toBe('left 1.0, right 2.0; Trial: left 3.0, right 3.0');
    expect(spokenValues(values, null, true, write)).toBe('left 1.0, right 2.0');
    expect(spokenValues({ ...values, right: null }, 'Trial', false, write)).toBe('1.0; Trial: 3.0');
  });
});

test('a legend is laid into lines that fit, broken between its parts, and a long part between its words', () => {
  const fits = (line: string): boolean => line.length <= 21;
  expect(linesThatFit(['left: solid', 'right: dashed', 'Trial'], fits)).toEqual(['left: solid', 'right: dashed · Trial']);
  expect(linesThatFit(['one', 'dotted: a name of many words'], fits)).toEqual(['one', 'dotted: a name of', 'many words']);
  expect(linesThatFit(['unbreakable-and-far-too-long'], fits)).toEqual(['unbreakable-and-far-too-long']);
  expect(linesThatFit([], fits)).toEqual([]);
});

describe('measured points', () => {
  const measured = {
    ...document,
    units: { length: 'in' as const },
    measurements: [
      {
        name: 'gauge',
        axle: 'front',
        side: 'left',
        setup: 'Trial',
        input: 'travel',
        reading: 'trackChange',
        sigma: 0.01,
        rows: [[1, 0.1]],
      },
      { name: 'other setup', axle: 'front', setup: 'Turns', input: 'travel', reading: 'trackChange', rows: [[1, 0.1]] },
      { name: 'over rack', axle: 'front', input: 'rack', reading: 'trackChange', rows: [[1, 0.1]] },
      { name: 'angle', axle: 'front', input: 'travel', reading: 'camber', rows: [[1, -2]] },
    ],
  } as const;
  const entryOf = (key: string) => {
    const named = readingOfNumber(key);
    if (!named) throw new Error(key);
    return named.entry;
  };

  test('stand in mm and degrees, and only those of this motion and these setups', () => {
    const sets = measuredSets(measured, 'front', entryOf('trackChange'), 'trackChange', 'bump', ['Trial', 'Baseline']);
    expect(sets.map(({ name }) => name)).toEqual(['gauge']);
    const [point] = sets[0]?.points ?? [];
    expect(point?.input).toBeCloseTo(25.4, 12);
    expect(point?.value).toBeCloseTo(2.54, 12);
    expect(point?.sigma).toBeCloseTo(0.254, 12);
    expect(point?.side).toBe('left');
    const [camber] = measuredSets(measured, 'front', entryOf('camber'), 'camber', 'bump', []);
    expect(camber?.points[0]).toEqual({ input: 25.4, value: -2, sigma: null, side: 'both' });
  });
});

describe('CSV', () => {
  test('has both sides of both setups, full precision, and why a cell is empty', () => {
    const { own, compared } = camberPlot();
    if (!own || !compared) throw new Error('both stand');
    const gap = {
      ...own.left,
      values: own.left.values.map((value, at) => (at === 2 ? NaN : value)),
      why: () => 'rod, too short',
    };
    const csv = curveCsv({
      input: 'bump [mm]',
      reading: 'Camber [°]',
      setups: [
        { name: 'Trial "2"', lines: { ...own, left: gap } },
        { name: 'Baseline', lines: compared },
      ],
    });
    const lines = csv.split('\r\n');
    expect(lines[0]).toBe(
      'bump [mm],"Camber [°], left, Trial ""2""","Camber [°], right, Trial ""2""","Camber [°], left, Baseline","Camber [°], right, Baseline",reason',
    );
    expect(lines).toHaveLength(63);
    expect(lines[3]).toMatch(/^-56,,-?\d.*,"rod, too short"$/);
    expect(Number(lines[1]?.split(',')[1])).toBe(own.left.values[0]);
  });

  test('a name cannot become a formula in a spreadsheet', () => {
    const { own } = camberPlot();
    if (!own) throw new Error('it stands');
    const csv = curveCsv({ input: '=1+1', reading: 'Camber', setups: [{ name: 'x', lines: own }] });
    expect(csv.startsWith("'=1+1,")).toBe(true);
  });
});

describe('choices', () => {
  test('steer gives way to bump where the axle is not steered', () => {
    expect(chosenOver({ 'curves.over': 'steer' }, false)).toBe('bump');
    expect(chosenOver({ 'curves.over': 'steer' }, true)).toBe('steer');
    expect(chosenOver({ 'curves.over': 7 }, true)).toBe('bump');
  });
  test('plots that are no readings are dropped; there is always one', () => {
    expect(chosenPlots({})).toEqual(['toe', 'camber', 'rollCentreHeight']);
    expect(chosenPlots({ 'curves.shown': 'camber,nonsense,track' })).toEqual(['camber', 'track']);
    expect(chosenPlots({ 'curves.shown': '' }).length).toBeGreaterThan(0);
    expect(nextPlot(['toe', 'camber'])).toBe('rollCentreHeight');
  });
  test('the third plot gives way first', () => expect([560, 559, 300, 20].map(plotsThatFit)).toEqual([3, 3, 1, 1]));
});
