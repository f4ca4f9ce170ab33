/** What stands on one wheel in a load case: N and N·m, in the ground's directions (X forward, Y to the left, Z up). 0 where left out. */
export interface WheelLoadDocument {
  readonly Fx?: number;
  readonly Fy?: number;
  readonly Fz?: number;
  /** about the ground's normal, right hand */
  readonly Mz?: number;
  /** true: Fx comes through a drive shaft and pushes at the wheel centre */
  readonly driven?: boolean;
}

/** `both` is the left wheel's, mirrored to the right (Fy and Mz negated); a side's own entry replaces it. */
export interface AxleLoadDocument {
  readonly both?: WheelLoadDocument;
  readonly left?: WheelLoadDocument;
  readonly right?: WheelLoadDocument;
}

/** A load case of the car: accelerations, or what stands on the wheels. */
export interface LoadCaseDocument {
  readonly notes?: string;
  /** [lateral, longitudinal] in g: + to the left, + forward */
  readonly g?: readonly [number, number];
  readonly front?: AxleLoadDocument;
  readonly rear?: AxleLoadDocument;
}
