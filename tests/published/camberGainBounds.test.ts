import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CarDocument } from '../../geometry/index';
import { rowAt, stand } from './ask';
import { expectWithin } from './near';

// P14. Mazda RX-8 (2005-2011), Mazda MX-5 ND 2016: rear five-link axles, camber against height from wheel centre to fender edge
// (manufacturer service data). A SMALLER height is bump; camber in arcmin, heights in mm, 10 mm (ND 9 mm) apart. No coordinates are
// published, so these can only bound results. Tolerances of the case: 0.5 arcmin, slopes ±2 deg/m from rounding.
const TABLES = [
  ['RX-8 2008, standard height', 10, [-64, -47, -32, -20, -10]],
  ['RX-8 2008, sport', 10, [-82, -62, -45, -31, -18]],
  ['RX-8 2005, standard height', 10, [-90, -72, -56, -43, -33]],
  ['RX-8 2005, sport', 10, [-104, -84, -67, -52, -40]],
  ['MX-5 ND', 9, [-83, -69, -57, -46, -37]],
] as const;
const SLOPE_ROUNDING = 2;

/** Camber gains from bump to rebound [deg per m of bump]. */
const gainsOf = (step: number, camber: readonly number[]): number[] =>
  camber.slice(1).map((value, i) => ((camber[i] - value) / 60 / step) * 1000);
const gains = TABLES.flatMap(([, step, camber]) => gainsOf(step, camber));
const [most, least] = [Math.min(...gains) - SLOPE_ROUNDING, Math.max(...gains) + SLOPE_ROUNDING];

const folder = new URL('../../samples/', import.meta.url);
const rears = readdirSync(folder)
  .filter((name) => name.endsWith('.jounce.json'))
  .map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as CarDocument] as const)
  .filter(([, { rear }]) => rear?.layout === 'multi-link');

describe('P14 camber against height of production five-link rear axles', () => {
  it('gives the gains that the catalogue of check values lists', () => {
    gainsOf(10, TABLES[0][2]).forEach((gain, i) => expectWithin(gain, [-28.3, -25.0, -20.0, -16.7][i], 0.05));
    gainsOf(9, TABLES[4][2]).forEach((gain, i) => expectWithin(gain, [-25.9, -22.2, -20.4, -16.7][i], 0.05));
  });

  it('has a sample to bound', () => expect(rears).not.toEqual([]));

  it.each(rears)('%s stays within the published gains over 40 mm, more in bump than in rebound', (_name, document) => {
    const car = stand({ front: document.front, rear: document.rear, body: document.body });
    const own = [20, 10, 0, -10, -20].map((travel) => 1000 * rowAt(car, 'rear', { travel }).left.camberGain);
    for (const gain of own) {
      expect(gain).toBeGreaterThan(most);
      expect(gain).toBeLessThan(least);
    }
    expect(own).toEqual([...own].sort((a, b) => a - b));
  });
});
