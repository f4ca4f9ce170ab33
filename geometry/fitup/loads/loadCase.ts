import type { AxleName, SideName } from '../../car/document';
import type { AxleLoadDocument, LoadCaseDocument, WheelLoadDocument } from '../../car/loadDocument';
import type { PerSide } from '../../readings/rows';
import type { AssembledCar } from '../../setup/assembleCar';
import { caseOfG, carAtRest, type CarAtRest } from './loadTransferRule';

/** What stands on one wheel, in the ground's directions: X forward, Y to the left, Z up [N, N·mm]. */
export interface WheelForces {
  readonly Fx: number;
  readonly Fy: number;
  readonly Fz: number;
  /** about the ground's normal, right hand */
  readonly Mz: number;
  /** Fx comes through a shaft and pushes at the wheel centre */
  readonly driven: boolean;
}

export interface LoadCase {
  readonly name: string;
  /** made up by the program: no figure of this car */
  readonly invented: boolean;
  /** [lateral, longitudinal], + to the left, + forward; null where the forces were given */
  readonly g: readonly [number, number] | null;
  /** how accelerations became wheel loads; null where the forces were given */
  readonly rule: string | null;
  readonly front: PerSide<WheelForces> | null;
  readonly rear: PerSide<WheelForces> | null;
  /** what had to be assumed */
  readonly remarks: readonly string[];
}

const NO_FORCES: WheelForces = { Fx: 0, Fy: 0, Fz: 0, Mz: 0, driven: false };

/** The cases of the car file in its order; where it has none, the program's own. */
export function loadCases(car: AssembledCar): readonly LoadCase[] {
  const kept = Object.entries(car.mechanism.document.loads ?? {});
  const rest = carAtRest(car);
  return kept.length === 0 ? defaultCases(car, rest) : kept.map(([name, document]) => caseOf(car, rest, name, document));
}

/** A case by accelerations alone. @param g - [lateral, longitudinal], + to the left, + forward */
export const loadCaseOfG = (car: AssembledCar, name: string, g: readonly [number, number]): LoadCase =>
  caseOfG(car, carAtRest(car), name, g, false);

function caseOf(car: AssembledCar, rest: CarAtRest, name: string, document: LoadCaseDocument): LoadCase {
  if (document.g !== undefined) return caseOfG(car, rest, name, document.g, false);
  const axle = (which: AxleName): PerSide<WheelForces> | null =>
    car[which] === null ? null : { left: forcesOf(document[which], 'left'), right: forcesOf(document[which], 'right') };
  return { name, invented: false, g: null, rule: null, front: axle('front'), rear: axle('rear'), remarks: [] };
}

function forcesOf(axle: AxleLoadDocument | undefined, side: SideName): WheelForces {
  const own = axle?.[side];
  if (own !== undefined) return inEngineUnits(own, 1);
  return axle?.both === undefined ? NO_FORCES : inEngineUnits(axle.both, side === 'left' ? 1 : -1);
}

const inEngineUnits = ({ Fx = 0, Fy = 0, Fz = 0, Mz = 0, driven = false }: WheelLoadDocument, sense: 1 | -1): WheelForces => ({
  Fx,
  Fy: sense * Fy,
  Fz,
  Mz: sense * Mz * 1000,
  driven,
});

/** A kerb strike in parts of the wheel's load at rest: up, rearward and inward. Invented. */
const KERB = { up: 3, back: 1.5, inward: 1 } as const;
/** Accelerations of the program's own cases [g]. Invented. */
const CORNERING_G = 1.2;
const BRAKING_G = 1;
const DRIVING_G = 0.5;

function defaultCases(car: AssembledCar, rest: CarAtRest): LoadCase[] {
  const byG = (name: string, g: readonly [number, number]): LoadCase => caseOfG(car, rest, name, g, true);
  const kerb = (axle: AxleName): PerSide<WheelForces> | null => {
    const loads = rest.wheels[axle];
    if (loads === null) return null;
    const on = (load: number, inward: 1 | -1): WheelForces => ({
      ...NO_FORCES,
      Fx: -KERB.back * load,
      Fy: inward * KERB.inward * load,
      Fz: KERB.up * load,
    });
    return { left: on(loads.left, -1), right: on(loads.right, 1) };
  };
  return [
    { ...byG('Standing', [0, 0]), invented: rest.isAssumed },
    byG('Cornering', [-CORNERING_G, 0]),
    byG('Braking', [0, -BRAKING_G]),
    ...(car.mechanism.body.driveFrontShare === null ? [] : [byG('Driving', [0, DRIVING_G])]),
    {
      name: 'Kerb strike',
      invented: true,
      g: null,
      rule: `${KERB.up} times the wheel’s load at rest up, ${KERB.back} rearward, ${KERB.inward} inward`,
      front: kerb('front'),
      rear: kerb('rear'),
      remarks: rest.remarks,
    },
  ];
}
