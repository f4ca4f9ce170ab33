import { wheelOf } from '../car/toMechanism';
import type { AxleName, SetupAxleDocument, SetupDocument, SideName } from '../car/document';
import type { AxleMechanism, CarMechanism, SideMechanism, Wheel } from '../car/mechanism';
import type { Settings } from '../adjusters/adjustment';
import { fail, succeed, type Result } from '../core/result';
import type { Vector } from '../core/vector';
import { groundFrame, type GroundFrame } from '../axle/ground';
import type { Failure } from '../corner/failure';
import type { Motion } from '../corner/motion';
import { startTrack } from '../corner/solveCorner';
import { assembleSide, type AssembledSide } from './assembleSide';
import { frameFor, groundPointOf, solveHeight } from './axleGround';
import { resetToe, type ToeFound, type ToeReset } from './setToe';
import { refusedSetting } from './refusedSetting';
import { settingsOf } from './settings';

/** A car with one setup on it, put together and standing. */
export interface AssembledCar {
  readonly mechanism: CarMechanism;
  readonly setup: SetupDocument;
  readonly front: AssembledAxle | null;
  readonly rear: AssembledAxle | null;
  /** β [rad], + nose down */
  readonly pitch: number;
}

export interface AssembledAxle {
  readonly axle: AxleName;
  readonly mechanism: AxleMechanism;
  readonly setup: SetupAxleDocument | undefined;
  readonly left: AssembledSide;
  readonly right: AssembledSide;
  /** left and right are mirror images of each other, settings included */
  readonly areTwins: boolean;
  /** Axle's ground point at travel 0 [mm]. */
  readonly groundPoint: Vector;
  /** [mm], + body up; null where neither axle of the setup has one: then the car stands at travel 0 */
  readonly rideHeight: number | null;
  /** Travel from design where each wheel stands [mm]. */
  readonly standing: { readonly left: number; readonly right: number };
  readonly toeReset: ToeReset | null;
  /** where the search of the toe reset ended: that of a neighbouring setup may start from there */
  readonly toeFound: ToeFound | null;
  /** Poses where the wheels stand, of twins that of the left for both, as far as they were found from a neighbour: tracks start there. */
  readonly stood: Readonly<Record<SideName, Motion>> | null;
}

const BOTH_AXLES: readonly AxleName[] = ['front', 'rear'];

/**
 * Puts a car together with a setup: adjusters, ride heights and pitch, toe reset.
 * @param mechanism - from `toMechanism`
 * @param setup - in the file's unit and degrees; what it names has to be the car's, and its numbers finite, else the failure is
 * of kind `setup`. Ranges are judged by `parseCar`, not here.
 * @param only - the axles to put together; the others are null, as if the car had none
 * @param near - the car in a neighbouring setup: toe resets start from what was found there. The answer is the same to within
 * the tolerance of the reset, and not to the last bit
 */
export function assembleCar(
  mechanism: CarMechanism,
  setup: SetupDocument,
  only: readonly AxleName[] = BOTH_AXLES,
  near: AssembledCar | null = null,
): Result<AssembledCar, Failure> {
  const refused = refusedSetting(mechanism, setup);
  if (refused !== null) return fail(refused);
  const mm = mechanism.mmPerUnit;
  const stands = setup.front?.rideHeight !== undefined || setup.rear?.rideHeight !== undefined;
  const heightOf = (axle: AxleName): number | null => (stands ? (setup[axle]?.rideHeight ?? 0) * mm : null);
  const pitch = pitchOf(mechanism, heightOf('front'), heightOf('rear'));
  const frame = groundFrame(pitch, 0);
  const assembled: Record<AxleName, AssembledAxle | null> = { front: null, rear: null };
  for (const name of BOTH_AXLES) {
    const axle = mechanism[name];
    if (axle === null || !only.includes(name)) continue;
    const put = assembleAxle(axle, setup[name], mm, heightOf(name), frame, near?.[name]?.toeFound ?? null);
    if (!put.ok) return fail({ ...put.failure, axle: name });
    assembled[name] = put.value;
  }
  return succeed({ mechanism, setup, front: assembled.front, rear: assembled.rear, pitch });
}

/** tan β = (Δr − Δf) / (xf − xr); level with one axle. */
function pitchOf(mechanism: CarMechanism, front: number | null, rear: number | null): number {
  if (mechanism.wheelbase === null || front === null || rear === null) return 0;
  return Math.atan2(rear - front, mechanism.wheelbase);
}

/** The wheel of a side with what the setup lays over it. */
function wheelFor(side: SideMechanism, setup: SetupAxleDocument | undefined, mm: number): Wheel {
  return setup?.wheel === undefined ? side.wheel : wheelOf({ ...side.wheel.document, ...setup.wheel }, mm);
}

/** Two sides on the ground; of twins the left is both. */
export interface BothSides {
  readonly left: AssembledSide;
  readonly right: AssembledSide;
  readonly groundPoint: Vector;
  readonly standing: { readonly left: number; readonly right: number };
  /** poses where they stand */
  readonly poses: Readonly<Record<SideName, Motion>>;
}

function assembleAxle(
  axle: AxleMechanism,
  setup: SetupAxleDocument | undefined,
  mm: number,
  rideHeight: number | null,
  frame: GroundFrame,
  toeFrom: ToeFound | null,
): Result<AssembledAxle, Failure> {
  const wheels = { left: wheelFor(axle.left, setup, mm), right: wheelFor(axle.right, setup, mm) };
  const put = (side: SideName, settings: Settings, near: Motion | null = null): Result<AssembledSide, Failure> =>
    assembleSide(axle, axle[side], wheels[side], settings, setup, near);
  const settings = { left: settingsOf(axle, setup, 'left', mm), right: settingsOf(axle, setup, 'right', mm) };
  const twins = areTwins(axle, wheels, settings);
  let both: Result<BothSides, Failure>;
  let toeReset: ToeReset | null = null;
  let toeFound: ToeFound | null = null;
  let isFollowed = false;
  if (setup?.setToe === undefined) {
    const left = put('left', settings.left);
    if (!left.ok) return left;
    const right = twins ? left : put('right', settings.right);
    if (!right.ok) return right;
    both = standOn(left.value, right.value, rideHeight, frame);
  } else {
    const reset = resetToe({
      axle,
      wantedDeg: setup.setToe,
      settings,
      put,
      stand: (left, right) => standOn(left, right, rideHeight, frame),
      frame,
      rideHeight,
      mm,
      areTwins: twins,
      from: toeFrom,
    });
    if (!reset.ok) return reset;
    both = succeed(reset.value.both);
    ({ toeReset, toeFound, isFollowed } = reset.value);
  }
  if (!both.ok) return both;
  const { left, groundPoint, standing, poses } = both.value;
  const right = twins ? () => twinOf(left, (near) => put('right', left.settings, near), isFollowed) : both.value.right;
  const stood = isFollowed ? poses : null;
  return succeed(
    new StandingAxle(axle.axle, axle, setup, left, right, twins, groundPoint, rideHeight, standing, toeReset, toeFound, stood),
  );
}

/** What is asked of twins is mostly asked of one: the right-hand one is put together when somebody asks for it. */
class StandingAxle implements AssembledAxle {
  constructor(
    readonly axle: AxleName,
    readonly mechanism: AxleMechanism,
    readonly setup: SetupAxleDocument | undefined,
    readonly left: AssembledSide,
    private known: AssembledSide | (() => AssembledSide),
    readonly areTwins: boolean,
    readonly groundPoint: Vector,
    readonly rideHeight: number | null,
    readonly standing: AssembledAxle['standing'],
    readonly toeReset: ToeReset | null,
    readonly toeFound: ToeFound | null,
    readonly stood: AssembledAxle['stood'],
  ) {}

  get right(): AssembledSide {
    if (typeof this.known === 'function') this.known = this.known();
    return this.known;
  }
}

/** The right-hand side of twins: what holds on the left holds there. */
function twinOf(
  left: AssembledSide,
  put: (near: Motion | null) => Result<AssembledSide, Failure>,
  isFollowed: boolean,
): AssembledSide {
  const right = put(isFollowed ? left.corner.home : null);
  if (!right.ok) throw new Error(`The twin of a side that stands cannot be put together: ${right.failure.message}`);
  return right.value;
}

/** Whether left and right are mirror images of each other, settings included. */
function areTwins(
  axle: AxleMechanism,
  wheels: Readonly<Record<SideName, Wheel>>,
  settings: Readonly<Record<SideName, Settings>>,
): boolean {
  return (
    wheels.left.camber === wheels.right.camber &&
    wheels.left.toe === wheels.right.toe &&
    wheels.left.loadedRadius === wheels.right.loadedRadius &&
    axle.adjusters.every(({ name }) => settings.left[name] === settings.right[name]) &&
    isMirrored(axle)
  );
}

/** By axle: its points do not change. */
const mirrored = new WeakMap<AxleMechanism, boolean>();

function isMirrored(axle: AxleMechanism): boolean {
  const known = mirrored.get(axle);
  if (known !== undefined) return known;
  const { left, right } = axle;
  const made = Object.entries(left.points).every(([name, point]) =>
    point.every((value, index) => value === right.points[name][index]),
  );
  mirrored.set(axle, made);
  return made;
}

/** Both wheels on the axle's ground; without a ride height at travel 0. @param right - the left itself of twins */
function standOn(
  left: AssembledSide,
  right: AssembledSide,
  rideHeight: number | null,
  frame: GroundFrame,
): Result<BothSides, Failure> {
  const groundPoint = groundPointOf(left, right);
  if (rideHeight === null) {
    const poses = { left: left.corner.home, right: right.corner.home };
    return succeed({ left, right, groundPoint, standing: { left: 0, right: 0 }, poses });
  }
  const point: Vector = [groundPoint[0], 0, groundPoint[2] - rideHeight];
  const tracks = { left: startTrack(left.corner), right: startTrack(right.corner) };
  const leftTravel = solveHeight(left, tracks.left, frameFor(left, frame), point, 0);
  if (!leftTravel.ok) return leftTravel;
  const rightTravel = right === left ? leftTravel : solveHeight(right, tracks.right, frameFor(right, frame), point, 0);
  if (!rightTravel.ok) return rightTravel;
  const poses = { left: tracks.left.motion, right: right === left ? tracks.left.motion : tracks.right.motion };
  return succeed({ left, right, groundPoint, standing: { left: leftTravel.value, right: rightTravel.value }, poses });
}
