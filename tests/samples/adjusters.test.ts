import { describe, expect, it } from 'vitest';
import { setupNames, type AdjusterDocument } from '../../geometry/index';
import { AXLES, numberOf, readAt, SAMPLES, sampleNamed, standing } from './samples';

/** Whole multiples of the step inside the range; at most so many, ends included. */
const MOST = 49;

function settingsOf(adjuster: AdjusterDocument): number[] {
  switch (adjuster.kind) {
    case 'eccentric-bolt':
    case 'clamp-eccentric':
      return multiples(-90, 90, adjuster.mark);
    case 'offset-bushing':
      return multiples(0, 360, adjuster.index);
    case 'slide':
    case 'turnbuckle':
    case 'perch':
      return multiples(adjuster.range[0], adjuster.range[1], adjuster.step);
  }
}

function multiples(from: number, to: number, step: number): number[] {
  const count = Math.round((to - from) / step);
  const every = Math.ceil(count / (MOST - 1));
  const all = Array.from({ length: count + 1 }, (_, i) => from + i * step);
  return all.filter((_, i) => i % every === 0 || i === count);
}

const cases = SAMPLES.flatMap((sample) =>
  AXLES.flatMap((axle) => Object.entries(sample.document[axle]?.adjusters ?? {}).map(([name, adjuster]) => ({ sample, car: sample.name, axle, name, adjuster }))),
);

describe('adjusters of the samples', () => {
  it.each(cases)('$car $axle $name stands at ride height over its whole range', ({ sample, axle, name, adjuster }) => {
    for (const setting of settingsOf(adjuster)) {
      const row = readAt(standing(sample, { [axle]: { both: { [name]: setting }, rideHeight: 0 } }), axle);
      expect(row.left['camber'], `${setting}`).toBeTypeOf('number');
      // one number does the same to both wheels
      expect(row.right['camber'], `${setting}`).toBe(row.left['camber']);
    }
  });

  it('carry no torque: that is for the part’s maker to say', () => {
    for (const { car, name, adjuster } of cases) expect(adjuster.torque, `${car} ${name}`).toBeUndefined();
  });

  it('the hatch has all six kinds', () => {
    const { front, rear } = sampleNamed('saltmarsh-hatch').document;
    const kinds = [front, rear].flatMap((axle) => Object.values(axle?.adjusters ?? {}).map(({ kind }) => kind));
    expect([...new Set(kinds)].sort()).toEqual(['clamp-eccentric', 'eccentric-bolt', 'offset-bushing', 'perch', 'slide', 'turnbuckle']);
  });

  it('every reset of toe in a setup stays in the range of its adjuster', () => {
    for (const sample of SAMPLES) {
      for (const setup of setupNames(sample.document)) {
        const car = standing(sample, setup);
        for (const axle of AXLES) expect(car[axle]?.toeReset?.inRange ?? true, `${sample.name} ${setup} ${axle}`).toBe(true);
      }
    }
  });
});

/** Change of camber or toe of the left-hand rear wheel by a setting, per mm that the setting moves [arcmin/mm]. */
function arcminPerMm(car: string, adjuster: string, setting: number, movesMm: number, reading: 'camber' | 'toe'): number {
  const sample = sampleNamed(car);
  // after a change of camber a shop sets toe back; the tables give camber alone
  const setToe = reading === 'camber' ? { setToe: sample.document.rear!.wheel.toe } : {};
  const at = (value: number): number =>
    numberOf(readAt(standing(sample, { rear: { both: { [adjuster]: value }, ...setToe } }), 'rear'), 'left', reading);
  return ((at(setting) - at(0)) * 60) / movesMm;
}

/**
 * Service data of two production multi-link rear axles, change of one wheel per mm of link movement: Mazda MX-5 (ND, 2016),
 * cam of the lower link, camber 19.4 arcmin; Mazda CX-5 (2025), cam of the toe link, toe 116/7 = 16.6 arcmin.
 * The samples are other cars: the same within a factor of 2.
 */
const CAMBER_PER_MM = 19.4;
const TOE_PER_MM = 116 / 7;

describe('cams and rods against published service data', () => {
  it.each([
    { car: 'saltmarsh-hatch', adjuster: 'camberBolt', moves: 2.5 },
    { car: 'marram-coupe', adjuster: 'armCam', moves: 3 },
  ])('$car: camber by $adjuster', ({ car, adjuster, moves }) => {
    const change = arcminPerMm(car, adjuster, 30, moves, 'camber');
    expect(-change).toBeGreaterThan(CAMBER_PER_MM / 2);
    expect(-change).toBeLessThan(CAMBER_PER_MM * 2);
  });

  it.each([
    { car: 'saltmarsh-hatch', adjuster: 'toeRod', setting: 1, moves: 2.5 },
    { car: 'marram-coupe', adjuster: 'toeCam', setting: 30, moves: 3 },
  ])('$car: toe by $adjuster', ({ car, adjuster, setting, moves }) => {
    const change = arcminPerMm(car, adjuster, setting, moves, 'toe');
    expect(-change).toBeGreaterThan(TOE_PER_MM / 2);
    expect(-change).toBeLessThan(TOE_PER_MM * 2);
  });
});
