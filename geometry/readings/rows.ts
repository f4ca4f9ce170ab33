import type { AxleName } from '../car/document';
import type { ToeReset } from '../setup/setToe';

/** Readings of one corner, in mm and radians, signs as for the left-hand corner. Meanings: `catalogue.ts`. */
export interface CornerReadings {
  readonly camber: number;
  readonly camberToBody: number;
  readonly toe: number;
  readonly steerAngle: number;
  readonly caster: number | null;
  readonly casterBySwing: number | null;
  readonly kingpinInclination: number | null;
  readonly mechanicalTrail: number | null;
  readonly scrubRadius: number | null;
  readonly trailAtWheelCentre: number | null;
  readonly scrubAtWheelCentre: number | null;
  readonly camberGain: number;
  readonly bumpSteer: number;
  /** [y, z] */
  readonly frontViewInstantCentre: readonly [number, number] | null;
  /** [x, z] */
  readonly sideViewInstantCentre: readonly [number, number] | null;
  readonly swingArmLength: number | null;
  readonly sideViewSwingArmLength: number | null;
  readonly wheelCentre: readonly [number, number, number];
  readonly contactCentre: readonly [number, number, number];
  readonly halfTrack: number;
  readonly wheelbaseChange: number;
  readonly bodyHeight: number | null;
  readonly longitudinalSlopeContact: number;
  readonly longitudinalSlopeWheelCentre: number;
  readonly lateralSlopeContact: number;
  readonly jackingPerLateral: number;
  readonly jackingPerLongitudinal: number;
  readonly springRatio: number | null;
  readonly springTravel: number | null;
  readonly springForce: number | null;
  readonly wheelRate: number | null;
  readonly damperRatio: number | null;
  readonly damperTravel: number | null;
  readonly bumpLeft: number | null;
  readonly solidLeft: number | null;
  readonly droopLeft: number | null;
  readonly barRatio: number | null;
  readonly barTwist: number | null;
}

export interface AxleReadings {
  readonly rollCentreHeight: number | null;
  readonly rollCentreOffset: number | null;
  readonly track: number;
  readonly trackChange: number;
  readonly totalToe: number;
  readonly ackermann: number | null;
  readonly steeringRatio: number | null;
  readonly turningCircle: number | null;
  readonly camberCompensation: number;
  readonly rollSteer: number;
  readonly antiDive: number | null;
  readonly antiLiftBraking: number | null;
  readonly antiLiftDrive: number | null;
  readonly antiSquat: number | null;
  /** N·m/rad */
  readonly springRollStiffness: number | null;
  readonly barRollStiffness: number | null;
  readonly rollStiffness: number | null;
  /** Hz */
  readonly rideFrequency: number | null;
  /** N per g */
  readonly loadTransferGeometric: number | null;
  readonly loadTransferElastic: number | null;
  readonly loadTransferUnsprung: number | null;
}

export interface WholeCarReadings {
  readonly wheelbaseLeft: number | null;
  readonly wheelbaseRight: number | null;
  readonly rake: number | null;
  /** rad per g */
  readonly rollGradient: number | null;
  readonly rollAxisInclination: number | null;
  readonly rollAxisToCentreOfGravity: number | null;
}

export interface PerSide<Value> {
  readonly left: Value;
  readonly right: Value;
}

/** Something worth knowing about an answer that is an answer all the same. */
export interface RowWarning {
  readonly code: string;
  readonly path: string | null;
  readonly message: string;
}

/** All readings of an axle at one position. */
export interface AxleRow {
  readonly axle: AxleName;
  /** from design [mm] */
  readonly travel: PerSide<number>;
  readonly travelFromStanding: PerSide<number>;
  readonly rack: number;
  /** [rad] */
  readonly roll: number;
  readonly left: CornerReadings;
  readonly right: CornerReadings;
  readonly both: AxleReadings;
  /** "left.caster" -> why it is null */
  readonly why: Readonly<Record<string, string>>;
  readonly toeReset: ToeReset | null;
  readonly warnings: readonly RowWarning[];
}

export interface WholeCarRow {
  readonly readings: WholeCarReadings;
  /** "rollGradient" -> why it is null */
  readonly why: Readonly<Record<string, string>>;
}

/** Where the car is asked about. Travel counts from where the car stands [mm, + bump]; with roll it is heave, one number. */
export interface Position {
  readonly travel?: number | PerSide<number>;
  /** [mm] */
  readonly rack?: number;
  /** [rad] */
  readonly roll?: number;
}
