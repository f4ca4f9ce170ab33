import type { Vector } from '../../../geometry/index';
import { formatNumber } from '../../units/format';
import { shownQuantity, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { FINE, inBrackets, POINT, vec, withoutNoughts, type Step } from './writing';

/**
 * What a number on the way is: `turn` is an angle in rad per length, `swing` one in degrees per length, `rate` a force per length,
 * `moment` one per degree. Masses are in kg whatever is chosen.
 */
export type Kind = 'plain' | 'mass' | 'length' | 'angle' | 'turn' | 'swing' | 'rate' | 'force' | 'moment' | 'slope';

/** Standard gravity [m/s²] (3rd CGPM, 1901). */
const G = '9.80665';
/** International inch [mm]. */
const INCH = '25.4';
/** International pound-force [N], and the N/m in one lb/in: exact to the digits that count. Source: NIST SP 811, appendix B.8. */
const POUND = '4.4482216';
const NEWTON_PER_METRE = { newton: '1000', pound: '175.12684' } as const;

/**
 * Writes numbers, given in mm, degrees, N and what is made of them, in the units chosen. Where a formula joins lengths and forces
 * whose units do not belong together, the factor between them is written out: each of these begins or ends with its sign.
 */
export interface UnitWriter {
  /** with as many decimals as it needs, at most so many of the number in mm, degrees, N; in brackets where it has a sign */
  readonly write: (value: number, kind: Kind, decimals: number) => string;
  /** [mm] decimals of the number in mm, three where nothing is said */
  readonly point: (at: Vector, decimals?: number) => string;
  /** a unit vector, or velocities per length of travel */
  readonly direction: (along: Vector) => string;
  readonly step: (name: string, expression: string, value: number, kind: Kind, decimals: number) => Step;
  readonly lengthUnit: 'mm' | 'in';
  /** how rates of angles are read: what one in degrees per mm is multiplied by, and "°/10 mm" */
  readonly over: { readonly factor: number; readonly unit: string };
  /** a pose so much either side [mm], in words, and the whole step between the two as it is written */
  readonly aside: { readonly mm: number; readonly words: string; readonly span: string };
  /** toe as it is read: an angle, or a length across the rim */
  readonly toe: (angle: string) => string;
  /** behind a force per length times a length: makes a force */
  readonly rateByLength: string;
  /** behind a force over a length: makes a force per length */
  readonly forceOverLength: string;
  /** behind a force per length times a length squared, or a force times a length: makes a moment */
  readonly rateByArea: string;
  readonly forceByLength: string;
  /** before a moment over a length: makes a force */
  readonly momentOverLength: string;
  /** behind a mass: makes its weight */
  readonly weight: string;
  /** before a force per length: makes N/m */
  readonly perMetre: string;
}

interface Scale {
  readonly unit: string;
  readonly text: (value: number, decimals: number) => string;
}

const factorsOf = ({ length, force }: ShownUnits) => {
  const [inches, pounds] = [length === 'in', force === 'pound'];
  const fits = inches === pounds;
  const foot = pounds ? ' / 12' : ' / 1000';
  const across = inches ? ` · ${INCH}` : ` / ${INCH}`;
  const back = inches ? ` / ${INCH}` : ` · ${INCH}`;
  return {
    rateByLength: fits ? '' : across,
    forceOverLength: fits ? '' : back,
    rateByArea: `${fits ? '' : `${across}²`}${foot}`,
    forceByLength: `${fits ? '' : across}${foot}`,
    momentOverLength: `${pounds ? '12' : '1000'}${fits ? '' : back} · `,
    weight: ` · ${G}${pounds ? ` / ${POUND}` : ''}`,
    perMetre: `${NEWTON_PER_METRE[force]} · `,
  };
};

export const unitWriter = (units: ShownUnits): UnitWriter => {
  const quantity = (shown: (decimals: number) => ShownQuantity, unit = shown(0).unit): Scale => ({
    unit,
    text: (value, decimals) => shown(decimals).format(value),
  });
  const plain = (unit: string, factor = 1): Scale => ({
    unit,
    text: (value, decimals) => formatNumber(value * factor, decimals),
  });
  const lengths = shownQuantity({ quantity: 'length', decimals: 0 }, units);
  const lengthUnit = units.length;
  const perLength = lengths.fromShown(1);
  const swings = shownQuantity({ quantity: 'anglePerLength', decimals: 0 }, units);
  const scales: Readonly<Record<Kind, Scale>> = {
    plain: plain(''),
    slope: plain('°/°'),
    mass: plain('kg'),
    length: quantity((decimals) => shownQuantity({ quantity: 'length', decimals }, units)),
    angle: quantity((decimals) => shownQuantity({ quantity: 'angle', decimals }, units), units.angle === 'minutes' ? '' : '°'),
    turn: plain(`rad/${lengthUnit}`, perLength),
    swing: plain(`°/${lengthUnit}`, perLength),
    rate: quantity((decimals) => shownQuantity({ quantity: 'forcePerLength', decimals }, units)),
    force: quantity((decimals) => shownQuantity({ quantity: 'force', decimals }, units)),
    moment: quantity((decimals) => shownQuantity({ quantity: 'momentPerAngle', decimals }, units)),
  };
  const write = (value: number, kind: Kind, decimals: number): string =>
    inBrackets(withoutNoughts(scales[kind].text(value, decimals)));
  const diameter = units.toe === 'rim' ? units.toeDiameter : null;
  return {
    write,
    point: (at, decimals = POINT) => vec(at.map(lengths.toShown), lengthUnit === 'in' ? decimals + 2 : decimals),
    // Inches are read more finely than millimetres, and minutes than degrees: their directions need a digit more.
    direction: (along) => vec(along, lengthUnit === 'in' || units.angle === 'minutes' ? FINE + 1 : FINE),
    step: (name, expression, value, kind, decimals) => ({
      name,
      expression,
      value: scales[kind].text(value, decimals),
      unit: scales[kind].unit,
    }),
    lengthUnit,
    over: { factor: swings.toShown(1), unit: swings.unit },
    aside:
      lengthUnit === 'in' ? { mm: 0.02 * perLength, words: '0.02 in', span: '0.04' } : { mm: 0.5, words: '0.5 mm', span: '1' },
    toe: (angle) => (diameter === null ? angle : `${write(diameter, 'length', POINT)} · sin(${angle})`),
    ...factorsOf(units),
  };
};
