import { describe, expect, test } from 'vitest';
import { assembleCar, findSetup, placeAxle, readingsOfAxle, toMechanism, type AxleName } from '../../../../geometry/index';
import { carDrawing, type DrawnAxle, type DrawnView } from '../../../../renderer/viewport/drawing/carDrawing';
import { drawingOf } from '../../../../renderer/viewport/drawing/drawingOf';
import { named, path, wordsBox } from '../../../../renderer/viewport/drawing/sheet';
import { placeWords } from '../../../../renderer/viewport/drawing/wordPlaces';
import { chooseAxle, moveTo } from '../../../../renderer/state/actions/lookAt';
import { prefer } from '../../../../renderer/state/actions/prefer';
import { STANDARD_UNITS, type ShownUnits } from '../../../../renderer/units/unitChoice';
import { carDocument, openedBench } from '../../carUnderTest';

const document = carDocument('car-23');
const assembled = assembleCar(toMechanism(document), findSetup(document, 'Baseline') ?? {});
if (!assembled.ok) throw new Error('stands');
const car = assembled.value;

const drawn = (name: AxleName): DrawnAxle => {
  const placed = placeAxle(car, name, {});
  if (!placed.ok) throw new Error('closes');
  return { name, placed: placed.value, tyreRadius: 322, tyreWidth: 235 };
};
const drawIn = (units: ShownUnits, view: DrawnView, ...axles: readonly AxleName[]): string =>
  carDrawing({ title: 'Car <23> & "Baseline"', position: 'Standing', view, units, axles: axles.map(drawn) });
const draw = (view: DrawnView, ...axles: readonly AxleName[]): string => drawIn(STANDARD_UNITS, view, ...axles);
const INCHES: ShownUnits = { ...STANDARD_UNITS, length: 'in' };

const DRAWN_CARS = ['car-21', 'car-22', 'car-23', 'car-24'];

/** The room of every word in a drawing: letters no wider than those of the program's own typeface. */
const textBoxes = (svg: string) =>
  [...svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)" text-anchor="(\w+)" font-size="([\d.]+)">([^<]+)</g)].map(
    ([, x, y, anchor, size, text = '']) => {
      const wide = text.length * Number(size) * 0.55;
      const x0 = Number(x) - (anchor === 'start' ? 0 : anchor === 'end' ? wide : wide / 2);
      return { text, x0, x1: x0 + wide, y0: Number(y) - 0.75 * Number(size), y1: Number(y) + 0.22 * Number(size) };
    },
  );

const texts = (svg: string): readonly string[] => [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text ?? '');
const numberAfter = (svg: string, name: string): number =>
  Number(
    texts(svg)
      .find((text) => text.startsWith(`${name} `))
      ?.slice(name.length + 1)
      .replace(',', '')
      .replace('−', '-'),
  );

test('the outline of a tyre is round on paper: no corner of it turns by more than three degrees', () => {
  const outline = /<path d="M([^"]*)Z" stroke-width="0.35"/.exec(draw('side', 'front'))?.[1] ?? '';
  const points = outline.split('L').map((pair) => pair.split(' ').map(Number));
  const headings = points.map(([x = NaN, y = NaN], index) => {
    const [toX = NaN, toY = NaN] = points[(index + 1) % points.length] ?? [];
    return [Math.atan2(toY - y, toX - x), Math.hypot(toX - x, toY - y)] as const;
  });
  // places are written to a thousandth of a millimetre: a shorter piece has no direction
  const long = headings.filter(([, length]) => length > 0.2).map(([heading]) => heading);
  const turns = long.map((heading, index) => {
    const turn = ((long[(index + 1) % long.length] ?? NaN) - heading) * (180 / Math.PI);
    return Math.abs(((turn + 540) % 360) - 180);
  });
  expect(long.length).toBeGreaterThan(100);
  expect(Math.max(...turns)).toBeLessThan(3);
});

describe('a drawing with dimensions', () => {
  const row = readingsOfAxle(car, 'front', {});
  if (!row.ok) throw new Error('closes');
  const { both, left } = row.value;

  test('writes the numbers of the readings', () => {
    const front = draw('front', 'front');
    expect(numberAfter(front, 'track')).toBeCloseTo(both.track ?? NaN, 1);
    expect(numberAfter(front, 'half')).toBeCloseTo(left.halfTrack ?? NaN, 1);
    expect(numberAfter(front, 'roll centre')).toBeCloseTo(both.rollCentreHeight ?? NaN, 1);
    // Steering straight ahead with next to no toe: along the car is along the wheel.
    expect(numberAfter(draw('side', 'front'), 'trail along the car')).toBeCloseTo(Math.abs(left.mechanicalTrail ?? NaN), 0);
  });

  test('is true to scale: the track on the sheet times the scale is the track', () => {
    const front = draw('front', 'front');
    const scale = Number(/Scale 1:([\d.]+)/.exec(front)?.[1]);
    expect(front).toContain('width="420mm" height="297mm" viewBox="0 0 420 297"');
    // The line of the dimension that is named "track": the last one before its words.
    const before = front.slice(0, front.indexOf('>track '));
    const line = [...before.matchAll(/<path d="M([\d.]+) ([\d.]+)L([\d.]+) \2" stroke-width="0.18"/g)].at(-1);
    expect((Number(line?.[3]) - Number(line?.[1])) * scale).toBeCloseTo(both.track ?? NaN, 0);
  });

  test('has a bar that is as long as it says', () => {
    const front = draw('front', 'front');
    const scale = Number(/Scale 1:([\d.]+)/.exec(front)?.[1]);
    const bar = [...front.matchAll(/<path d="M14 283L([\d.]+) 283"/g)].at(-1);
    const said = texts(front).find((text) => /^[\d,]+ mm$/.test(text));
    expect((Number(bar?.[1]) - 14) * scale).toBeCloseTo(Number(said?.replace(' mm', '').replace(',', '')), 6);
  });

  test('in inches says so, has the same drawing at the same scale, and a bar of whole inches', () => {
    for (const view of ['front', 'side', 'top'] as const) {
      const [mm, inches] = [draw(view, 'front'), drawIn(INCHES, view, 'front')];
      expect(mm).toContain('lengths in mm.');
      expect(inches).toContain('lengths in inches.');
      expect(inches).not.toMatch(/ mm[<,.]/);
      const wheels = (svg: string) => [...svg.matchAll(/<path d="([^"]*Z)" stroke-width="0.35"/g)].map(([, d]) => d);
      expect(wheels(inches)).toEqual(wheels(mm));
      expect(wheels(inches).length).toBeGreaterThan(0);
    }
    const front = drawIn(INCHES, 'front', 'front');
    expect(numberAfter(front, 'track')).toBeCloseTo((both.track ?? NaN) / 25.4, 3);
    expect(numberAfter(front, 'roll centre')).toBeCloseTo((both.rollCentreHeight ?? NaN) / 25.4, 3);
    const scale = Number(/Scale 1:([\d.]+)/.exec(front)?.[1]);
    const bar = [...front.matchAll(/<path d="M14 283L([\d.]+) 283"/g)].at(-1);
    const said = texts(front).find((text) => /^[\d,.]+ in$/.test(text));
    expect(((Number(bar?.[1]) - 14) * scale) / 25.4).toBeCloseTo(Number(said?.replace(' in', '')), 2);
  });

  test('of the bench is in the units that the window reads in', () => {
    const store = openedBench();
    moveTo(store, { travel: 25.4, rollDeg: 0.5 });
    expect(drawingOf(store.getState(), 'front')).toMatch(/At bump \+25\.4 mm, roll \+0\.50°\..*lengths in mm\./);
    prefer(store, 'units.length', 'in');
    prefer(store, 'units.angle', 'minutes');
    expect(drawingOf(store.getState(), 'front')).toMatch(/At bump \+1\.000 in, roll \+0°30′\..*lengths in inches\./);
  });

  test('of both axles has the wheelbase, and keeps inside the sheet', () => {
    for (const view of ['side', 'top'] as const) {
      const svg = draw(view, 'front', 'rear');
      const [front, rear] = [drawn('front'), drawn('rear')];
      const wheelbase = front.placed.left.contactCentre[0] - rear.placed.left.contactCentre[0];
      expect(numberAfter(svg, 'wheelbase, left')).toBeCloseTo(wheelbase, 0);
      for (const [, x, y] of svg.matchAll(/M([\d.-]+) ([\d.-]+)/g)) {
        expect(Number(x) >= 0 && Number(x) <= 420).toBe(true);
        expect(Number(y) >= 0 && Number(y) <= 297).toBe(true);
      }
    }
  });

  test.each(DRAWN_CARS)(
    'of %s: every word stands clear of the others and on the sheet, in every view and at every position',
    (name) => {
      const store = openedBench(name);
      for (const scope of ['axle', 'car'])
        for (const axle of ['front', 'rear'] as const)
          for (const position of [
            { travel: 0, rollDeg: 0, rack: 0 },
            { travel: 30, rollDeg: 1, rack: 8 },
            { travel: -25, rollDeg: -2, rack: 0 },
          ])
            for (const view of ['front', 'side', 'top'] as const) {
              prefer(store, 'view.shown', scope);
              chooseAxle(store, axle);
              moveTo(store, position);
              const svg = drawingOf(store.getState(), view) ?? '';
              const boxes = textBoxes(svg);
              const where = `${axle} ${scope} ${view} ${JSON.stringify(position)}`;
              expect(boxes.length, where).toBeGreaterThan(6);
              const met = boxes.flatMap((box, index) =>
                boxes
                  .slice(index + 1)
                  .filter((other) => box.x0 < other.x1 && other.x0 < box.x1 && box.y0 < other.y1 && other.y0 < box.y1)
                  .map((other) => `${box.text} on ${other.text}`),
              );
              expect(met, where).toEqual([]);
              expect(
                boxes.filter(({ x0, x1, y0, y1 }) => x0 < 0 || x1 > 420 || y0 < 0 || y1 > 297),
                where,
              ).toEqual([]);
            }
    },
  );

  test('leaves out no words for want of room', () => {
    const names = (svg: string) => texts(svg).map((text) => text.replace(/ [\d,.]+$/, ''));
    expect(names(draw('side', 'front', 'rear'))).toEqual(
      expect.arrayContaining(['wheelbase, left', 'front roll centre', 'rear roll centre', 'centre', 'trail along the car']),
    );
    // a crowd about one point, some of it where nothing fits beside it
    const crowd = Array.from({ length: 40 }, (_, index) => named(`number ${index}`, [200, 150]));
    const area = { x0: 120, x1: 280, y0: 80, y1: 220 };
    const placed = [...placeWords(crowd, [], area).values()];
    const boxes = placed.map(({ text, place }) => wordsBox(text, place));
    expect(placed).toHaveLength(40);
    for (const [index, box] of boxes.entries())
      for (const other of boxes.slice(index + 1))
        expect(box.x0 >= other.x1 || other.x0 >= box.x1 || box.y0 >= other.y1 || other.y0 >= box.y1).toBe(true);
    expect(placed.some(({ leader }) => leader !== null)).toBe(true);
  });

  test('has words beside a line, not on it, where there is room', () => {
    const across = path('link', [
      [100, 145],
      [300, 145],
    ]);
    const [words] = [named('instant centre', [200, 150])];
    const found = placeWords([words], [across], { x0: 0, x1: 420, y0: 0, y1: 297 }).get(words);
    const box = found && wordsBox(found.text, found.place);
    expect(box && (box.y0 >= 145 || box.y1 <= 145)).toBe(true);
    expect(found?.leader).toBeNull();
  });

  test('takes any name for a title', () => {
    expect(draw('top', 'rear')).toContain('Car &lt;23&gt; &amp; &quot;Baseline&quot;');
    expect(draw('front', 'rear')).not.toMatch(/NaN|undefined|Infinity/);
  });
});
