import type { AxleSetting } from '../axle/axleSetting';
import type { AxleSolver } from '../axle/axleSolver';
import type { NoAxis } from './steeringAxis';

/** Why a reading has no value, in words. Those that depend on the file alone are the same in every row of a sweep. */
export const NO_AXIS_REASONS: Readonly<Record<NoAxis, string>> = {
  'no-steering-rod': 'no steering axis: the axle has neither a rack nor a toe adjuster that moves a rod',
  'no-pure-turn': 'no steering axis: at this position no pure turn of the knuckle exists',
  'parallel-to-ground': 'the steering axis is parallel to the ground',
};

export const AXIS_READINGS = [
  'caster',
  'kingpinInclination',
  'mechanicalTrail',
  'scrubRadius',
  'trailAtWheelCentre',
  'scrubAtWheelCentre',
] as const;

export const FAR_FRONT = 'the wheel does not lean with travel here: the instant centre is more than 10 km away';
export const FAR_SIDE = 'the wheel does not turn about its axle with travel here: the instant centre is more than 10 km away';
export const PARALLEL = 'the two lines through the contact centres are parallel';
export const SWING_OUT_OF_REACH = 'the rack does not turn this wheel 20° both ways at this travel';
export const BAR_OUT_OF_REACH = 'the bar’s link does not reach its arm at this position';
export const SPRINGS_LOOSE = 'the springs of this axle carry nothing here';
export const RACK_CENTRED = 'rack is centred';
export const NOT_TURNED = 'the wheels are not turned, or the steering axes do not meet the ground';

export const LOAD_TRANSFERS = ['loadTransferGeometric', 'loadTransferElastic', 'loadTransferUnsprung'] as const;

/** What the file lacks for load transfer, at every position; null when nothing. */
export function transferLacks({ masses }: AxleSetting): string | null {
  if (masses === null) return 'the masses are not known: give body.mass, frontShare and the unsprung masses of both axles';
  return masses.centreOfGravityHeight === null ? 'the file does not give body.centreOfGravityHeight' : null;
}

/** Reasons of one axle that hold at every position, by reading: of a corner, and of the axle. */
export interface StandingReasons {
  readonly corner: Readonly<Record<string, string>>;
  readonly both: Readonly<Record<string, string>>;
}

export function standingReasons(solver: AxleSolver, setting: AxleSetting): StandingReasons {
  const corner: Record<string, string> = {};
  const both: Record<string, string> = {};
  const { axle, car } = solver;
  const { mechanism } = axle;
  const { spring, damper, bar, steering } = mechanism;
  if (steering === null) {
    corner['casterBySwing'] = 'the axle is not steered';
    for (const key of ['ackermann', 'steeringRatio', 'turningCircle']) both[key] = 'the axle is not steered';
  } else {
    if (steering.perTurn === null) both['steeringRatio'] = 'the file does not give steering.perTurn';
    if (axle.axle === 'rear') both['turningCircle'] = 'counted at the front axle';
    else if (axle.left.wheel.tyreWidth === null) both['turningCircle'] = 'the file does not give wheel.tyreWidth';
  }
  if (axle.left.mechanism.heightAt === null) corner['bodyHeight'] = 'the file gives no heightAt for this axle';
  springReasons(corner, both, solver, setting);
  if (damper === null)
    for (const key of ['damperRatio', 'damperTravel', 'bumpLeft', 'solidLeft', 'droopLeft'])
      corner[key] = 'the file gives no damper';
  else {
    if (damper.bumpStopAt === null) corner['bumpLeft'] = 'the file does not give damper.bumpStopAt';
    if (damper.open === null && damper.droopStopAt === null)
      corner['droopLeft'] = 'the file gives neither damper.droopStopAt nor damper.open';
    if (damper.closed === null && (damper.stroke === null || damper.droopStopAt === null))
      corner['solidLeft'] = 'the file gives neither damper.stroke with droopStopAt nor damper.closed';
  }
  if (bar === null) {
    corner['barRatio'] = corner['barTwist'] = 'the file gives no anti-roll bar';
    both['barRollStiffness'] = 'the file gives no anti-roll bar';
  } else if (setting.barRate.left === null || setting.barRate.right === null) {
    both['barRollStiffness'] = both['rollStiffness'] = 'the file does not give antiRollBar.rate';
  }
  antiReasons(both, solver, setting);
  const lacking = transferLacks(setting);
  if (lacking !== null) for (const key of LOAD_TRANSFERS) both[key] = lacking;
  if (spring === null) both['rollStiffness'] ??= both['springRollStiffness'];
  if (car.mechanism.wheelbase === null) both['ackermann'] ??= 'the wheelbase is not known: the car has one axle';
  if (car.mechanism.wheelbase === null) both['turningCircle'] ??= 'the wheelbase is not known: the car has one axle';
  return { corner, both };
}

function springReasons(
  corner: Record<string, string>,
  both: Record<string, string>,
  { axle }: AxleSolver,
  setting: AxleSetting,
): void {
  const { spring } = axle.mechanism;
  const stiffness = ['springRollStiffness', 'rollStiffness', 'rideFrequency'];
  if (spring === null) {
    for (const key of ['springRatio', 'springTravel', 'springForce', 'wheelRate']) corner[key] = 'the file gives no spring';
    for (const key of stiffness) both[key] = 'the file gives no spring';
    return;
  }
  const lacking =
    setting.springRate === null
      ? 'the file does not give spring.rate'
      : setting.springDatum.left.by === 'nothing' || setting.springDatum.right.by === 'nothing'
        ? 'the spring’s force is not known: give spring.freeLength and spring.installed, or body.mass, frontShare and the unsprung masses of both axles'
        : null;
  if (lacking !== null) {
    corner['springForce'] = corner['wheelRate'] = lacking;
    for (const key of stiffness) both[key] = lacking;
  } else if (setting.own === null)
    both['rideFrequency'] = 'the sprung mass is not known: give body.mass, frontShare and the unsprung masses of both axles';
}

function antiReasons(both: Record<string, string>, { axle, car }: AxleSolver, setting: AxleSetting): void {
  const { body } = car.mechanism;
  const keys = ['antiDive', 'antiLiftBraking', 'antiLiftDrive', 'antiSquat'] as const;
  const isFront = axle.axle === 'front';
  both[isFront ? 'antiLiftBraking' : 'antiDive'] = isFront ? 'a reading of the rear axle' : 'a reading of the front axle';
  both[isFront ? 'antiSquat' : 'antiLiftDrive'] = isFront ? 'a reading of the rear axle' : 'a reading of the front axle';
  const share = body.driveFrontShare;
  if (share === null) both[isFront ? 'antiLiftDrive' : 'antiSquat'] = 'the file does not give body.drivenAxle';
  else if ((isFront ? share : 1 - share) === 0) both[isFront ? 'antiLiftDrive' : 'antiSquat'] = 'no drive at this axle';
  if (body.brakeFrontShare === null)
    both[isFront ? 'antiDive' : 'antiLiftBraking'] = 'the file does not give body.brakeFrontShare';
  const general =
    setting.wheelbase === null
      ? 'the wheelbase is not known: the car has one axle'
      : body.centreOfGravityHeight === null
        ? 'the file does not give body.centreOfGravityHeight'
        : null;
  if (general !== null) for (const key of keys) both[key] ??= general;
}
