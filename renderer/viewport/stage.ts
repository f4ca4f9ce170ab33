import { Group } from 'three';
import type { AxleDocument, AxleName, CarDocument, PlacedAxle, SideName } from '../../geometry/index';
import { placeSetup } from '../compute/placeSetup';
import { comparedWith, type BenchState } from '../state/benchStore';
import { chosenUnits } from '../state/chosenUnits';
import { scopeOf, type Scope } from '../state/viewing';
import { mmPerFileUnit } from '../units/fileLength';
import { buildAxleModel, type AxleModel } from './axleModel';
import type { Point } from './camera';
import { buildGround, type GroundModel, type RuleUnit } from './ground';
import type { Materials } from './materials';
import { wheelCircle } from './wheelCircle';
import { heldKeys } from './sceneContent';
import type { Subject } from './views';

/** An axle that is shown: its model, and where its parts are. */
export interface StagedAxle {
  readonly name: AxleName;
  readonly axle: AxleDocument;
  readonly model: AxleModel;
  readonly placed: PlacedAxle;
  /** the compared setup at the same position; null where it is the same or has no answer */
  readonly compared: PlacedAxle | null;
}

/** Everything of the car that is shown now. */
export interface Stage {
  readonly object: Group;
  /** Builds what is missing, takes away what is not shown, moves the rest. */
  readonly show: (state: BenchState) => { readonly newSubject: boolean };
  readonly axles: () => readonly StagedAxle[];
  readonly sides: () => readonly SideName[];
  /** what has to fit into the view; null while no car is shown */
  readonly subject: () => Subject | null;
  readonly drawGround: () => void;
  /** turns what is written on the ground to an eye. @param away - along its line of sight, in the ground's frame */
  readonly readGround: (away: Point) => void;
  /** solids, or the plain lines that another page draws */
  readonly showSolids: (shown: boolean) => void;
  readonly dispose: () => void;
}

export const sidesOf = (scope: Scope): readonly SideName[] =>
  scope === 'left' || scope === 'right' ? [scope] : ['left', 'right'];

/** Axles that are shown, the one on the bench first. */
const axlesOf = (document: CarDocument, onBench: AxleName, scope: Scope): readonly AxleName[] => {
  const other = onBench === 'front' ? 'rear' : 'front';
  return scope === 'car' && document[other] ? [onBench, other] : [onBench];
};

interface Placing {
  readonly name: AxleName;
  readonly axle: AxleDocument;
  readonly placed: PlacedAxle;
  readonly compared: PlacedAxle | null;
  readonly rack: number;
}

/** Where the axles that are shown are, of the answer that is shown. */
const placingsOf = (state: BenchState): readonly Placing[] => {
  const bench = state.history?.present;
  if (!bench || !state.shown) return [];
  const { row, compared } = state.shown;
  return axlesOf(bench.document, state.axle, scopeOf(state.preferences)).flatMap((name) => {
    const axle = bench.document[name];
    if (!axle) return [];
    if (name === state.axle) {
      const other = compared.ok && compared.value !== row ? compared.value.placed : null;
      return [{ name, axle, placed: row.placed, compared: other, rack: row.rack }];
    }
    const placed = placeSetup(bench.document, bench.setup, name, state.position);
    const held = comparedWith(state);
    const other = held && placeSetup(held.document, held.setup, name, state.position);
    return placed ? [{ name, axle, placed, compared: other, rack: axle.steering ? state.position.rack : 0 }] : [];
  });
};

const pointsOf = (staged: readonly StagedAxle[], sides: readonly SideName[]): readonly Point[] =>
  staged.flatMap(({ model, placed }) =>
    sides.flatMap((side) => {
      const corner = placed[side];
      const wheel = [-0.5, 0.5].flatMap((share) => wheelCircle(corner, model.wheelRadius, share * model.tyreWidth));
      return [...Object.values(corner.points), ...wheel].map(model.frame().toGround);
    }),
  );

export const buildStage = (materials: Materials): Stage => {
  const object = new Group();
  const solids = new Group();
  object.add(solids);
  const models = new Map<AxleName, { readonly model: AxleModel; readonly axle: AxleDocument; placed: PlacedAxle }>();
  let ground: {
    readonly model: GroundModel;
    readonly scope: Scope;
    readonly unit: RuleUnit;
    readonly axles: readonly AxleDocument[];
  } | null = null;
  let staged: readonly StagedAxle[] = [];
  let sides: readonly SideName[] = ['left'];
  let subject: Subject | null = null;
  let read: CarDocument | undefined;

  const forget = (name: AxleName): void => {
    const known = models.get(name);
    if (!known) return;
    solids.remove(known.model.object);
    known.model.dispose();
    models.delete(name);
  };
  const forgetGround = (): void => {
    if (!ground) return;
    solids.remove(ground.model.object);
    ground.model.dispose();
    ground = null;
  };

  const layGround = (scope: Scope, unit: RuleUnit): void => {
    forgetGround();
    const axles = staged.map(({ name, model, placed }) => {
      const [left, right] = [placed.left, placed.right].map(({ contactCentre }) => model.frame().toGround(contactCentre));
      return { name, x: left?.[0] ?? 0, halfTrack: Math.abs((left?.[1] ?? 0) - (right?.[1] ?? 0)) / 2 };
    });
    const radius = Math.max(...staged.map(({ model }) => model.wheelRadius));
    const model = buildGround(axles, sides, radius, materials, unit);
    model.draw();
    solids.add(model.object);
    ground = { model, scope, unit, axles: staged.map(({ axle }) => axle) };
  };

  const show = (state: BenchState): { readonly newSubject: boolean } => {
    const placings = placingsOf(state);
    const { document } = state.history?.present ?? {};
    const scope = scopeOf(state.preferences);
    for (const name of ['front', 'rear'] as const) {
      const wanted = placings.find((placing) => placing.name === name);
      if (models.get(name)?.axle !== wanted?.axle) forget(name);
    }
    sides = sidesOf(scope);
    staged = placings.map(({ name, axle, placed, compared, rack }) => {
      const known = models.get(name);
      const entry = known ?? {
        axle,
        placed,
        model: buildAxleModel(axle, placed, document ? mmPerFileUnit(document) : 1, materials),
      };
      if (!known) {
        models.set(name, entry);
        solids.add(entry.model.object);
      }
      if (!known || entry.placed !== placed) entry.model.place(placed, rack);
      entry.placed = placed;
      entry.model.show(sides);
      entry.model.hold(name === state.axle ? heldKeys(state) : []);
      return { name, axle, model: entry.model, placed, compared };
    });
    const first = staged[0];
    if (!first) {
      forgetGround();
      subject = null;
      return { newSubject: false };
    }
    const same =
      ground !== null &&
      ground.scope === scope &&
      ground.axles.length === staged.length &&
      staged.every(({ axle }, index) => axle === ground?.axles[index]);
    const unit = chosenUnits(state).length;
    if (!same || ground?.unit !== unit) layGround(scope, unit);
    const before = subject;
    subject = same ? subject : subjectOf(first, staged, sides, scope);
    // An edit of the car keeps the eye where it is; another axle, scope or car does not.
    const isOtherFile = read !== state.file?.asRead;
    read = state.file?.asRead;
    const newSubject =
      isOtherFile || !before || before.axle !== subject?.axle || before.scope !== subject.scope || isElsewhere(before, subject);
    return { newSubject };
  };

  return {
    object,
    show,
    axles: () => staged,
    sides: () => sides,
    subject: () => subject,
    drawGround: () => ground?.model.draw(),
    readGround: (away) => ground?.model.readTo(away),
    showSolids: (shown) => (solids.visible = shown),
    dispose: () => {
      forget('front');
      forget('rear');
      forgetGround();
      staged = [];
    },
  };
};

/** A point that is dragged moves by millimetres; another car is somewhere else altogether [mm]. */
const ANOTHER_CAR = 60;
const isElsewhere = (before: Subject, now: Subject): boolean =>
  before.points.length !== now.points.length ||
  before.points.filter((point, index) => {
    const other = now.points[index] ?? point;
    return point.some((value, axis) => Math.abs(value - (other[axis] ?? 0)) > ANOTHER_CAR);
  }).length > 2;

const subjectOf = (first: StagedAxle, staged: readonly StagedAxle[], sides: readonly SideName[], scope: Scope): Subject => {
  const corner = first.placed[sides[0] ?? 'left'];
  const { toGround } = first.model.frame();
  const origin = toGround([0, 0, 0]);
  const turned = (direction: Point): Point => {
    const end = toGround(direction);
    return [end[0] - origin[0], end[1] - origin[1], end[2] - origin[2]];
  };
  const axis = corner.steeringAxis?.direction;
  const up = axis && axis[2] < 0 ? ([-axis[0], -axis[1], -axis[2]] as const) : axis;
  return {
    axle: first.name,
    scope,
    points: pointsOf(staged, sides),
    joints: staged.flatMap(({ model, placed }) =>
      sides.flatMap((side) => Object.values(placed[side].points).map(model.frame().toGround)),
    ),
    spindle: turned(corner.spindle),
    steeringAxis: up ? turned(up) : null,
  };
};
