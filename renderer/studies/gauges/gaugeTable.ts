import {
  acrossRim,
  bumpSteerGauge,
  stringGauge,
  sweepReadings,
  swingGauge,
  toDegrees,
  toRadians,
  type AssembledCar,
  type AxleName,
} from '../../../geometry/index';
import type { PlainTable } from '../../lengths/lengthTables';
import { formatNumber, formatSigned } from '../../units/format';
import { shownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { bumpsOf, type GaugeForm } from './gaugeForm';

/** One dial, tape or scale of an instrument. */
export interface GaugeColumn {
  readonly head: string;
  /** null: of the axle */
  readonly side: 'left' | 'right' | null;
  readonly unit: string;
  readonly format: (value: number) => string;
  readonly toShown: (value: number) => number;
  /** what the instrument is read for */
  readonly isResult: boolean;
}

export interface GaugeRow {
  /** [mm] */
  readonly bump: number;
  /** mm and degrees, in the order of the columns */
  readonly values: readonly (number | null)[];
  /** why there are none; null where there are */
  readonly why: string | null;
}

export interface GaugeTable {
  readonly columns: readonly GaugeColumn[];
  readonly rows: readonly GaugeRow[];
  /** how the instrument is set up, and what plus means */
  readonly words: readonly string[];
}

const SIDES = ['left', 'right'] as const;
const MM_PER_THOU = 0.0254;

interface Written {
  readonly unit: string;
  readonly format: (value: number) => string;
  readonly toShown: (value: number) => number;
}

const dialOf = (dials: GaugeForm['dials']): Written =>
  dials === 'mm'
    ? { unit: 'mm', format: (value) => formatSigned(value, 3), toShown: (value) => value }
    : { unit: '0.001 in', format: (value) => formatSigned(value / MM_PER_THOU, 1), toShown: (value) => value / MM_PER_THOU };

const lengthOf = (units: ShownUnits): Written => {
  const shown = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  return { unit: shown.unit, format: shown.format, toShown: shown.toShown };
};
const angleOf = (units: ShownUnits): Written => {
  const shown = shownQuantity({ quantity: 'angle', decimals: 2 }, { ...units, toe: 'angle' });
  return { unit: shown.unit || '°', format: shown.format, toShown: shown.toShown };
};

/** The same columns for either wheel. */
const bothSides = (
  heads: readonly { readonly head: string; readonly as: Written; readonly isResult?: boolean }[],
): readonly GaugeColumn[] =>
  SIDES.flatMap((side) => heads.map(({ head, as, isResult = false }) => ({ head, side, isResult, ...as })));

/** What is read off which car, where. */
interface Asked {
  readonly form: GaugeForm;
  readonly car: AssembledCar;
  readonly axle: AxleName;
  readonly bumps: readonly number[];
  readonly units: ShownUnits;
}

/** What an instrument shows on a car, bump by bump. */
export const gaugeTable = (form: GaugeForm, car: AssembledCar, axle: AxleName, units: ShownUnits): GaugeTable => {
  const asked: Asked = { form, car, axle, bumps: bumpsOf(form), units };
  switch (form.gauge) {
    case 'bumpSteer':
      return bumpSteerTable(asked);
    case 'swing':
      return swingTable(asked);
    case 'rim':
      return rimTable(asked);
    case 'strings':
      return stringTable(asked);
    case 'camber':
    case 'floor':
      return camberTable(asked);
  }
};

const failedRows = (bumps: readonly number[], why: string): readonly GaugeRow[] =>
  bumps.map((bump) => ({ bump, values: [], why }));

const bumpSteerTable = ({ form, car, axle, bumps }: Asked): GaugeTable => {
  const as = dialOf(form.dials);
  const columns = bothSides([
    { head: 'front dial', as },
    { head: 'rear dial', as },
    { head: 'rear − front', as, isResult: true },
  ]);
  const words = [
    'Two dials on a plate that is bolted to the hub, parallel to the wheel. They stand on the floor at hub height, half their distance ahead of the hub and half behind, and are set to zero where the car stands.',
    'Plus: the plate came outboard. Rear − front plus: the wheel toed in.',
  ];
  const made = bumpSteerGauge(car, axle, { spacing: form.spacing.value ?? 1, bumps });
  if (!made.ok) return { columns, words, rows: failedRows(bumps, made.failure.message) };
  const rows = made.value.map(({ bump, dials }): GaugeRow => {
    if (!dials.ok) return { bump, values: [], why: dials.failure.message };
    const { value } = dials;
    return { bump, why: null, values: SIDES.flatMap((side) => [value[side].front, value[side].rear, value[side].difference]) };
  });
  return { columns, rows, words };
};

const swingTable = ({ form, car, axle, bumps, units }: Asked): GaugeTable => {
  const as = angleOf(units);
  const fine: Written = { ...as, format: (value) => formatSigned(value, 3) };
  const swing = form.swing.value ?? 20;
  const columns = bothSides([
    { head: 'camber, turned out', as },
    { head: 'camber, turned in', as },
    { head: 'caster by swing', as, isResult: true },
    { head: 'caster of the axis', as },
    { head: 'gauge − axis', as: fine },
  ]);
  const words = [
    `Camber with the wheel’s front turned ${formatNumber(swing, 1)}° out and in, its centre held at its height. Caster by swing: (out − in) / (2 · sin ${formatNumber(swing, 1)}°).`,
    'The gauge does not read the axis to the last hundredth: the wheel turns about a leaning axis, so equal angles on the floor are not equal turns about it, and the division takes caster for a small angle; where the links let the axis move as they steer, it moves on the way too.',
  ];
  const rows = bumps.map((bump): GaugeRow => {
    const made = swingGauge(car, axle, { swing: toRadians(swing), travel: bump });
    if (!made.ok) return { bump, values: [], why: made.failure.message };
    const { value } = made;
    const why =
      value.left === null && value.right === null
        ? car[axle]?.left.corner.isSteered === true
          ? `the rack does not turn the wheels ${formatNumber(swing, 1)}° both ways here`
          : 'this axle is not steered'
        : null;
    return {
      bump,
      why,
      values: SIDES.flatMap((side) => {
        const wheel = value[side];
        if (wheel === null) return [null, null, null, null, null];
        const { outward, inward, bySwing, caster } = wheel;
        const degrees = (angle: number): number => toDegrees(angle);
        return [
          degrees(outward),
          degrees(inward),
          degrees(bySwing),
          caster === null ? null : degrees(caster),
          caster === null ? null : degrees(bySwing - caster),
        ];
      }),
    };
  });
  return { columns, rows, words };
};

/** Toe or camber of both wheels at each bump [rad]; a bump out of reach says why. */
const anglesAt = (car: AssembledCar, axle: AxleName, bumps: readonly number[], key: 'toe' | 'camber') =>
  sweepReadings(
    car,
    axle,
    bumps.map((travel) => ({ travel })),
    [key],
  ).map((row) =>
    row.ok
      ? { why: null, left: row.value.left[key] ?? null, right: row.value.right[key] ?? null }
      : { why: row.failure.message, left: null, right: null },
  );

const rimTable = ({ form, car, axle, bumps, units }: Asked): GaugeTable => {
  const as = lengthOf(units);
  const diameter = form.diameter.value ?? 1;
  const columns: GaugeColumn[] = [
    ...bothSides([{ head: 'rim', as, isResult: true }]),
    { head: 'both together', side: null, isResult: true, ...as },
  ];
  const rows = anglesAt(car, axle, bumps, 'toe').map(({ why, left, right }, index): GaugeRow => {
    const across = [left, right].map((toe) => (toe === null ? null : acrossRim(toe, diameter)));
    const [l = null, r = null] = across;
    return { bump: bumps[index] ?? 0, why, values: [l, r, l === null || r === null ? null : l + r] };
  });
  return {
    columns,
    rows,
    words: [
      'How much nearer to the middle of the car the rim’s front edge is than its rear edge, at hub height: D · sin of the toe. Plus: toe-in.',
    ],
  };
};

const stringTable = ({ form, car, axle, bumps, units }: Asked): GaugeTable => {
  const as = lengthOf(units);
  const columns = bothSides([
    { head: 'string to front edge', as },
    { head: 'string to rear edge', as },
    { head: 'front − rear', as, isResult: true },
  ]);
  const rows = bumps.map((bump): GaugeRow => {
    const made = stringGauge(car, axle, {
      offset: form.offset.value ?? 0,
      diameter: form.diameter.value ?? 1,
      lip: form.lip.value ?? 0,
      bump,
    });
    if (!made.ok) return { bump, values: [], why: made.failure.message };
    const { value } = made;
    return {
      bump,
      why: null,
      values: SIDES.flatMap((side) => [value[side].front, value[side].rear, value[side].front - value[side].rear]),
    };
  });
  return {
    columns,
    rows,
    words: [
      'Strings along both sides, parallel to the car’s centre line and as far from it on either side, at hub height. Front − rear is D · sin of the toe. Plus: toe-in.',
    ],
  };
};

const camberTable = ({ form, car, axle, bumps, units }: Asked): GaugeTable => {
  const columns = bothSides([
    { head: 'camber', as: angleOf(units), isResult: true },
    { head: 'top − bottom from a plumb line', as: lengthOf(units) },
  ]);
  const diameter = form.diameter.value ?? 1;
  const rows = anglesAt(car, axle, bumps, 'camber').map(({ why, left, right }, index): GaugeRow => ({
    bump: bumps[index] ?? 0,
    why,
    values: [left, right].flatMap((camber) =>
      camber === null ? [null, null] : [toDegrees(camber), acrossRim(camber, diameter)],
    ),
  }));
  return {
    columns,
    rows,
    words: [
      'A gauge on the wheel, the floor level. The plumb line hangs outboard of the rim: plus where the top stands farther out than the bottom, D · sin of the camber.',
    ],
  };
};

/** The table as it is copied and saved: what the dials show, in full. */
export const gaugePlainTable = (
  { columns, rows }: GaugeTable,
  bumpHead: string,
  bumpShown: (bump: number) => number,
): PlainTable => ({
  heads: [bumpHead, ...columns.map(({ head, side, unit }) => `${side === null ? '' : `${side} `}${head} [${unit}]`), 'reason'],
  rows: rows.map(({ bump, values, why }) => [
    bumpShown(bump),
    ...columns.map(({ toShown }, index) => {
      const value = values[index] ?? null;
      return value === null ? null : toShown(value);
    }),
    why ?? '',
  ]),
});
