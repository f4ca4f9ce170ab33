import type { AdjusterDocument, AxleName, SetupDocument } from '../../car/document';
import type { CarMechanism } from '../../car/mechanism';
import { realSettings, stepScaleOf } from '../../adjusters/stepScale';
import { SOLVED } from '../../corner/motion';
import { startTrack, trackCorner } from '../../corner/solveCorner';
import type { Position } from '../../readings/rows';
import { readingsOfCar } from '../../readings/readings';
import { assembleCar, type AssembledCar } from '../../setup/assembleCar';
import { settingOf, withSetting } from '../../setup/setupEdits';
import { carNumberNames, carNumbers, changesBetween, type CarNumber, type Numbers } from '../../studies/carNumbers';
import { fitUpCorners } from '../corners';
import { narrowEnvelope, type EnvelopeEnds } from '../envelope';
import type { PartMeshes } from '../pieces';
import { atDesign, writeRelative } from '../placement';
import { gapBetween } from '../shapes/gapBetween';
import { fieldOf, withPieces, type ClearanceCorner, type PairField } from './pairCorner';
import { clearanceOf, findWorst, type Worst } from './search';

/**
 * One thing that would bring a pair to its margin, and what it costs.
 * - `rack`, `travel`: a stop, in mm of rack or of wheel travel from design, in all setups
 * - `adjuster`: a setting on a real step, in the file's unit, on both wheels in the setup of the worst position
 */
export interface Remedy {
  readonly by: 'rack' | 'travel' | 'adjuster';
  readonly adjuster: string | null;
  /** the one setup that an adjuster is moved in; null: it is for all */
  readonly setup: string | null;
  readonly from: number | null;
  readonly to: number;
  /** the pair's worst then, over the envelopes that the remedy is for [mm] */
  readonly clearance: number;
  /** how much less that could be between the positions that were tried [mm]: where it leaves less than the margin, it is not proved */
  readonly bound: number;
  /** of the other setups those in which the pair is short as well, and stays so, with its worst there [mm] */
  readonly stillShort: readonly { readonly setup: string; readonly clearance: number }[];
  /**
   * What it changes, by dotted name, in contract units: of a rack stop the lock, at the stop against the end that it had; of a
   * travel stop nothing; of a setting every reading, standing.
   */
  readonly changes: Numbers;
}

/** Stops are looked for to this [mm]. */
const STOP_MM = 0.5;
/** Steps beyond the first that is enough where the worst was, since the worst may then be elsewhere. */
const FURTHER = 5;
/** How often a stop that is not enough is drawn in further. */
const MOST_DRAWN_IN = 5;

/** A rack position [mm] as the other wheel has it in the mirror. */
export const turnedOver = (rack: number): number => -rack || 0;

interface StopQuestion {
  /** where the worst position is, along the way of the stop [mm] */
  readonly at: number;
  /** positions that stand at a stop: travel and rack */
  readonly along: (envelope: PairField['envelope'], stop: number) => readonly (readonly [number, number])[];
  readonly ends: (envelope: PairField['envelope'], stop: number) => EnvelopeEnds;
}

/** Readings that say how much lock there is. */
const LOCK: ReadonlySet<string> = new Set(['steerAngle', 'turningCircle']);

const STANDING: Position = { travel: 0, rack: 0, roll: 0 };

/** What would clear a pair whose worst is known. */
export class Remedies {
  private readonly names: readonly CarNumber[];

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly setups: ReadonlyMap<string, SetupDocument>,
    private readonly meshes: PartMeshes,
  ) {
    this.names = carNumberNames(mechanism.document);
  }

  /** @param fields - the pair, in all setups */
  of(fields: readonly PairField[], worst: Worst): Remedy[] {
    const { corner } = fields[worst.field];
    return [
      this.rackStop(fields, worst),
      this.travelStop(fields, worst),
      ...withOthers(this.settings(corner, fields[worst.field], worst), fields, fields[worst.field]),
    ].filter((remedy) => remedy !== null);
  }

  /**
   * The same for the mirror image of a pair on the other wheel: a stop of the rack is then the other one, and the lock is read
   * where that is; travel stops and settings on both wheels are the same.
   * @param field - of the worst position
   */
  mirrored({ corner }: PairField, found: readonly Remedy[]): Remedy[] {
    return found.map((remedy) => {
      if (remedy.by !== 'rack') return remedy;
      const from = turnedOver(remedy.from!);
      const to = turnedOver(remedy.to);
      return { ...remedy, from, to, changes: this.lockLost(corner, from, to) };
    });
  }

  private rackStop(fields: readonly PairField[], { rack, field }: Worst): Remedy | null {
    if (rack === 0) return null;
    const isRight = rack > 0;
    const found = this.stop(fields, {
      at: rack,
      along: ({ travels }, stop) => travels.map((travel) => [travel, stop] as const),
      ends: ({ open, solid, rackMin, rackMax }, stop) => ({
        travel: [open, solid],
        rack: isRight ? [rackMin, stop] : [stop, rackMax],
      }),
    });
    if (found === null) return null;
    const { envelope, corner } = fields[field];
    const from = isRight ? envelope.rackMax : envelope.rackMin;
    const changes = this.lockLost(corner, from, found.to);
    return { by: 'rack', adjuster: null, setup: null, from, ...found, stillShort: [], changes };
  }

  private travelStop(fields: readonly PairField[], { travel, field }: Worst): Remedy | null {
    if (travel === 0) return null;
    const isBump = travel > 0;
    const found = this.stop(fields, {
      at: travel,
      along: ({ racks }, stop) => racks.map((rack) => [stop, rack] as const),
      ends: ({ open, solid, rackMin, rackMax }, stop) => ({
        travel: isBump ? [open, Math.min(solid, stop)] : [Math.max(open, stop), solid],
        rack: [rackMin, rackMax],
      }),
    });
    if (found === null) return null;
    const { envelope } = fields[field];
    const from = isBump ? envelope.solid : envelope.open;
    return { by: 'travel', adjuster: null, setup: null, from, ...found, stillShort: [], changes: {} };
  }

  /**
   * The farthest stop between the worst position and the middle that leaves the margin; null where the middle does not. Found on the
   * line where the stop would be, then proved over what is left of the envelope, and drawn in further where that is not enough.
   */
  private stop(
    fields: readonly PairField[],
    { at, along, ends }: StopQuestion,
  ): Pick<Remedy, 'to' | 'clearance' | 'bound'> | null {
    const { needs } = fields[0];
    const isFree = (stop: number): boolean =>
      fields.every((field) => along(field.envelope, stop).every(([travel, rack]) => gapAt(field, travel, rack) >= needs));
    if (!isFree(0)) return null;
    let [good, bad] = [0, at];
    while (Math.abs(bad - good) > STOP_MM) {
      const middle = 0.5 * (good + bad);
      if (isFree(middle)) good = middle;
      else bad = middle;
    }
    // a stop is cut to a whole half millimetre, on the safe side
    let to = Math.sign(at) * Math.floor(Math.abs(good) / STOP_MM) * STOP_MM || 0;
    for (let drawnIn = 0; drawnIn < MOST_DRAWN_IN; drawnIn += 1) {
      const { clearance, bound } = leastOver(fields.map((field) => this.drawnIn(field, ends(field.envelope, to))));
      if (clearance >= needs) return { to, clearance, bound };
      if (to === 0) return null;
      to = Math.sign(at) * Math.max(0, Math.abs(to) - STOP_MM * (1 << drawnIn)) || 0;
    }
    return null;
  }

  private drawnIn(field: PairField, ends: EnvelopeEnds): PairField {
    const envelope = narrowEnvelope(field.envelope, field.side, ends);
    const corner = withPieces(this.mechanism, field.corner, envelope, this.meshes);
    return fieldOf(this.mechanism, corner, namesOf(field))!;
  }

  /** Of every adjuster that is not locked the setting nearest to the present one that leaves the margin, on both wheels. */
  private settings(corner: ClearanceCorner, field: PairField, worst: Worst): (Remedy | null)[] {
    const axle = corner.axle.axle;
    const described = this.mechanism.document[axle];
    const setup = this.setups.get(corner.setup)!;
    return Object.entries(described?.adjusters ?? {})
      .filter(
        ([name, { locked }]) => locked === undefined && !(described?.toeAdjuster === name && setup[axle]?.setToe !== undefined),
      )
      .map(([name, adjuster]) => this.setting(corner, field, axle, name, adjuster, worst));
  }

  private setting(
    corner: ClearanceCorner,
    field: PairField,
    axle: AxleName,
    name: string,
    adjuster: AdjusterDocument,
    worst: Worst,
  ): Remedy | null {
    const setup = this.setups.get(corner.setup)!;
    const now = settingOf(setup, axle, name, field.envelope.side);
    const from = now ?? 0;
    const isAway = (setting: number): number => Math.abs(setting - from);
    const others = realSettings(stepScaleOf(adjuster))
      .filter((setting) => setting !== now)
      .sort((a, b) => isAway(a) - isAway(b));
    const isRound = stepScaleOf(adjuster).isRound;
    const trial = (setting: number): SetupDocument => withSetting(setup, axle, name, 'both', setting);
    const tries = isRound
      ? others
      : this.worthTrying(others, from, (setting) => this.gapAtWorst(field, trial(setting), worst), field);
    for (const setting of tries) {
      if (!((this.gapAtWorst(field, trial(setting), worst) ?? -Infinity) >= field.needs)) continue;
      const tried = this.inSetup(corner, field, trial(setting));
      if (tried === null || !(tried.clearance >= field.needs)) continue;
      const changes = changesBetween(this.numbers(corner.car, STANDING), this.numbers(tried.car, STANDING));
      const { clearance, bound } = tried;
      return {
        by: 'adjuster',
        adjuster: name,
        setup: corner.setup,
        from: now,
        to: setting,
        clearance,
        bound,
        stillShort: [],
        changes,
      };
    }
    return null;
  }

  /**
   * Of a scale the first steps each way that are enough at the worst position, looked for by halving: what a cam gains at its end
   * says nothing of what it gains in the middle. The last one of a way too.
   */
  private worthTrying(
    others: readonly number[],
    from: number,
    gapOf: (setting: number) => number | null,
    { needs }: PairField,
  ): readonly number[] {
    const start = gapOf(from);
    if (start === null) return [];
    return [1, -1].flatMap((sense) => {
      const way = others.filter((setting) => Math.sign(setting - from) === sense);
      const [step] = way;
      if (step === undefined || !((gapOf(step) ?? -Infinity) > start)) return [];
      let [low, high] = [-1, way.length - 1];
      if (!((gapOf(way[high]) ?? -Infinity) >= needs)) return [];
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if ((gapOf(way[middle]) ?? -Infinity) >= needs) high = middle;
        else low = middle;
      }
      return [...new Set([...way.slice(high, high + FURTHER), ...way.slice(-1)])];
    });
  }

  /** The pair's gap at the worst position with another setup on the corner; null where the car cannot stand so. */
  private gapAtWorst(field: PairField, setup: SetupDocument, { travel, rack }: Worst): number | null {
    const car = assembleCar(this.mechanism, setup);
    const axle = field.envelope.axle;
    const assembled = car.ok ? car.value[axle] : null;
    if (!car.ok || assembled === null || assembled.toeReset?.inRange === false) return null;
    const corner = { ...field.corner, car: car.value, axle: assembled.mechanism, side: assembled[field.envelope.side] };
    const there = fieldOf(this.mechanism, withPieces(this.mechanism, corner, field.envelope, this.meshes), namesOf(field));
    return there === null ? null : gapAt(there, travel, rack);
  }

  /** The pair's worst with another setup on the corner; null where the car cannot stand so. */
  private inSetup(
    corner: ClearanceCorner,
    field: PairField,
    setup: SetupDocument,
  ): (Left & { readonly car: AssembledCar }) | null {
    const car = assembleCar(this.mechanism, setup);
    const axle = corner.axle.axle;
    if (!car.ok || car.value[axle]?.toeReset?.inRange === false) return null;
    const stood = fitUpCorners([{ name: corner.setup, car: car.value }], [axle]).find(
      ({ side }) => side.mechanism.side === field.envelope.side,
    );
    if (stood === undefined || stood.envelope === null) return null;
    const there = withPieces(this.mechanism, stood, stood.envelope, this.meshes);
    const changed = fieldOf(this.mechanism, there, namesOf(field));
    return changed === null ? null : { ...leastOver([changed]), car: car.value };
  }

  /**
   * A rack stop leaves every other reading as it is: how far the wheels of the axle then steer, and how wide the car turns.
   * @param from - the end that the rack had, @param to - the stop [mm]
   */
  private lockLost({ car, axle: { axle } }: ClearanceCorner, from: number, to: number): Numbers {
    const names = this.names.filter((name) => name.axle === axle && LOCK.has(name.entry.key));
    const at = (rack: number): Numbers => carNumbers(names, readingsOfCar(car, { ...STANDING, rack }));
    return changesBetween(at(from), at(to));
  }

  private numbers(car: AssembledCar, at: Position): Numbers {
    return carNumbers(this.names, readingsOfCar(car, at));
  }
}

type Left = Pick<Remedy, 'clearance' | 'bound'>;

/** The worst over some fields; −∞ where nothing of it is known, so that it clears nothing. */
function leastOver(fields: readonly PairField[]): Left {
  const worst = findWorst(fields, fields[0].needs);
  return worst === null ? { clearance: -Infinity, bound: 0 } : { clearance: clearanceOf(worst), bound: worst.bound };
}

/** What is moved in one setup leaves the others as they are: in which of them the pair is short too. */
function withOthers(found: readonly (Remedy | null)[], fields: readonly PairField[], own: PairField): (Remedy | null)[] {
  if (found.every((remedy) => remedy === null)) return [];
  const stillShort = fields.flatMap((field) => {
    if (field === own) return [];
    const worst = findWorst([field], field.needs);
    if (worst === null || clearanceOf(worst) >= field.needs) return [];
    return [{ setup: field.envelope.setup, clearance: clearanceOf(worst) }];
  });
  return found.map((remedy) => (remedy === null ? null : { ...remedy, stillShort }));
}

const namesOf = ({ first, second }: PairField): readonly [string, string] => [first.name, second.name];

/** The gap of a pair at one position; −∞ where it cannot be reached, so that it clears nothing. */
function gapAt({ side, first, second, solids, counts }: PairField, travel: number, rack: number): number {
  const track = startTrack(side.corner);
  for (let step = 1; step <= STEPS_THERE; step += 1) {
    const share = step / STEPS_THERE;
    if (trackCorner(side.corner, track, travel * share, rack * share) !== SOLVED) return -Infinity;
  }
  const [a, b, relative] = [atDesign(), atDesign(), atDesign()];
  if (!first.follow(track.motion, rack, a) || !second.follow(track.motion, rack, b)) return -Infinity;
  writeRelative(a, b, relative);
  const gap = gapBetween(solids[0], solids[1], relative);
  if (!counts(gap)) return Infinity;
  return gap.isCutOnly ? Math.min(0, gap.distance) : gap.distance;
}

/** The way from design to a position is gone in so many steps, so that no other branch is caught. */
const STEPS_THERE = 8;
