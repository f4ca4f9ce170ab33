import { findReading, toDegrees, type SideName } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { placeMany } from '../compute/placeSetup';
import { standingRow } from '../compute/standing';
import { jointFan } from '../fitup/joints/jointFan';
import type { BenchState } from '../state/benchStore';
import { chosenUnits } from '../state/chosenUnits';
import { overlaysOf, scopeOf, type PointRef, type ViewName } from '../state/viewing';
import { lengthWords } from '../units/lengthWords';
import { formatNumber } from '../units/format';
import { shownQuantity, shownReading, withUnit } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { groundFrame } from './groundFrame';
import type { AxleContent, Envelope, JointTilt, OverlayContent, WheelWords } from './overlayContent';
import { keysOfAdjuster, pointOfAdjuster } from './partKeys';
import type { Point } from './points';
import { reachOf } from './reachOf';
import type { StagedAxle, Stage } from './stage';

/** A reading with its unit; null where it has no value. @param signed - a plus before what is over zero */
const readingText = (key: string, value: unknown, units: ShownUnits, signed = false): string | null => {
  const entry = findReading(key);
  if (!entry || typeof value !== 'number') return null;
  const reading = shownReading(entry, units);
  return withUnit(signed ? reading.formatChange(value) : reading.format(value), reading.unit);
};

const NO_WORDS: WheelWords = { trail: null, scrub: null, over: null };

/** The two lines over a wheel of the axle's view: how far it has travelled; camber and toe. */
const overWheel = (state: BenchState, side: SideName): readonly [string, string] | null => {
  const row = state.shown?.row;
  const readings = row?.[side];
  const standing = state.history && standingRow(state.history.present, state.axle);
  if (!row || !readings || !standing) return null;
  const moved = row.placed.travel[side] - standing.placed.travel[side];
  const units = chosenUnits(state);
  const travel =
    Math.abs(moved) < 0.05 ? 'standing' : `${moved > 0 ? 'bump' : 'droop'} ${lengthWords(Math.abs(moved), 1, units)}`;
  const { camber, toe } = readings;
  const angles = [readingText('camber', camber, units), readingText('toe', toe, units, true)];
  return [`${side === 'left' ? 'Left' : 'Right'}, ${travel}`, angles.includes(null) ? '' : angles.join(', toe ')];
};

const wordsOf = (state: BenchState, side: SideName, view: ViewName): WheelWords => {
  const readings = state.shown?.row[side];
  if (!readings) return NO_WORDS;
  const scope = scopeOf(state.preferences);
  const units = chosenUnits(state);
  return {
    trail: readingText('mechanicalTrail', readings['mechanicalTrail'], units),
    scrub: readingText('scrubRadius', readings['scrubRadius'], units),
    over: view === 'front' && scope === 'axle' ? overWheel(state, side) : null,
  };
};

const pathOf = (state: BenchState, staged: StagedAxle, { axle, side, point }: PointRef): readonly Point[] => {
  const bench = state.history?.present;
  if (!bench) return [];
  const reach = reachOf(bench, axle);
  const [poses = []] = placeMany(bench.document, bench.setup, axle, reach.path, reach.straight);
  const { toGround } = staged.model.frame();
  return poses.flatMap((placed) => {
    const at = placed?.[side].points[point];
    return at ? [toGround(at)] : [];
  });
};

const envelopesOf = (state: BenchState, stage: Stage): readonly Envelope[] => {
  const bench = state.history?.present;
  if (!bench || !overlaysOf(state.preferences).includes('envelope')) return [];
  return stage.axles().flatMap(({ name }) => {
    const reach = reachOf(bench, name);
    const poses = placeMany(bench.document, bench.setup, name, reach.ends, reach.locks).flat();
    return stage
      .sides()
      .map((side) => ({ axle: name, side, corners: poses.flatMap((placed) => (placed ? [placed[side]] : [])) }));
  });
};

/** How every joint of the file stands on the wheels that are shown; of a body that turned in a way not known here, nothing. */
const tiltsOf = (state: BenchState, stage: Stage): readonly JointTilt[] => {
  const document = state.history?.present.document;
  if (!document?.joints || !overlaysOf(state.preferences).includes('jointTilt')) return [];
  const { format, unit } = shownQuantity({ quantity: 'angle', decimals: 1 }, chosenUnits(state));
  return stage.axles().flatMap(({ name, placed }) =>
    stage.sides().flatMap((side) =>
      Object.entries(document.joints ?? {}).flatMap(([point, joint]) => {
        if ((joint.axle ?? name) !== name) return [];
        const fan = jointFan(document, { point, axle: name, side }, placed[side]);
        if (fan === null) return [];
        const [now, rated] = [fan.tilt, fan.rated].map((angle) => withUnit(format(toDegrees(angle)), unit));
        const words = `tilt ${now} ${fan.tilt > fan.rated ? 'over the' : 'of'} ${rated} rated`;
        return [{ axle: name, fan, words }];
      }),
    ),
  );
};

export interface ViewSeen {
  readonly view: ViewName;
  readonly outlines: ReadonlyMap<string, Readonly<Record<SideName, boolean>>>;
  readonly hovered: PointRef | null;
  /** in the ground's frame; far off where the lines of sight are parallel */
  readonly eye: Point;
  /** length of the arms that a point is dragged by [mm] */
  readonly arm: number;
}

/** What one view writes over the solids, of the answer that is shown; null before there is one. */
export const overlayContent = (state: BenchState, stage: Stage, seen: ViewSeen): OverlayContent | null => {
  const { history, axle: axleName, held, viewing, position } = state;
  const axle = history?.present.document[axleName];
  const axles = stage.axles();
  if (!axle || axles.length === 0) return null;
  const { chosen, pick } = viewing;
  const overlays = overlaysOf(state.preferences);
  const adjuster = held === null ? undefined : axle.adjusters?.[held];
  const staged = axles.find(({ name }) => name === chosen?.axle);
  const isShown = chosen !== null && staged !== undefined && stage.sides().includes(chosen.side);
  const contents = axles.map(({ name, axle: itsAxle, model, placed, compared }): AxleContent => ({
    name,
    axle: itsAxle,
    placed,
    frame: model.frame(),
    compared: compared && { placed: compared, frame: groundFrame(compared.ground) },
    outlines: seen.outlines.get(name) ?? { left: false, right: false },
    wheelRadius: model.wheelRadius,
    tyreWidth: model.tyreWidth,
    words:
      name === axleName
        ? { left: wordsOf(state, 'left', seen.view), right: wordsOf(state, 'right', seen.view) }
        : { left: NO_WORDS, right: NO_WORDS },
  }));
  const { rollDeg } = position;
  const units = chosenUnits(state);
  return {
    view: seen.view,
    scope: scopeOf(state.preferences),
    sides: stage.sides(),
    overlays,
    axles: contents,
    schematic: viewing.layout.length > 1,
    roll: rollDeg === 0 ? null : `roll ${formatNumber(Math.abs(rollDeg), 2)}°, ${rollDeg > 0 ? 'left' : 'right'} side up`,
    held: adjuster && held !== null ? { label: adjuster.label ?? nameOfKey(held), point: pointOfAdjuster(axle, adjuster) } : null,
    chosen: isShown ? { ref: chosen, path: overlays.includes('path') ? pathOf(state, staged, chosen) : [] } : null,
    hovered: seen.hovered,
    eye: seen.eye,
    tape: viewing.tape,
    lengthWords: (mm, decimals) => lengthWords(mm, decimals, units),
    lengthUnit: units.length,
    handles: isShown && viewing.mayMove ? seen.arm : null,
    aim: pick?.kind === 'direction' ? { from: pick.from, direction: pick.direction, reach: 1.6 * seen.arm } : null,
    range: viewing.range && { ...viewing.range, reach: seen.arm },
    envelopes: envelopesOf(state, stage),
    tilts: tiltsOf(state, stage),
  };
};

/** The solids that are under the hand. */
export const heldKeys = ({ history, axle, held }: BenchState): readonly string[] =>
  keysOfAdjuster(held === null ? undefined : history?.present.document[axle]?.adjusters?.[held]);
