import { stepScaleOf } from '../adjusters/stepScale';
import type { CarMechanism } from '../car/mechanism';
import { settingOf } from '../setup/setupEdits';
import { combinationAt, type Question, type Variable } from './question';

/** How far a combination is from the setup that a question starts from. */
export interface Nearness {
  /** parts that leave their settings */
  readonly moved: number;
  /** by how many of their own steps in all; the two sides of a part that moves apart count each */
  readonly far: number;
  /** the combination's number with the parts left out that change nothing of what is wanted: the same for the same answer */
  readonly core: number;
}

/** A part nearer to its own setting than this part of a step has not moved. */
const STILL = 1e-9;

/** Finds how far combinations of a question are from its setup. */
export class NearnessOf {
  /** steps from the setup's own setting, by variable and index */
  private readonly steps: readonly (readonly number[])[];
  /** how much one index of a variable counts in the number of a combination; 0 where it can be anywhere */
  private readonly weights: readonly number[];
  /** the value of every variable that is nearest to the setup's own, by index */
  readonly home: readonly number[];

  /** @param idle - by variable, whether it changes nothing of what is wanted */
  constructor(
    mechanism: CarMechanism,
    private readonly question: Question,
    idle: readonly boolean[],
  ) {
    const { variables } = question;
    this.steps = variables.map((variable) => stepsFromSetup(mechanism, question, variable));
    this.home = this.steps.map((steps) => steps.indexOf(Math.min(...steps)));
    let weight = 1;
    const weights = new Array<number>(variables.length);
    for (let i = variables.length - 1; i >= 0; i -= 1) {
      weights[i] = idle[i] === true ? 0 : weight;
      weight *= variables[i].values.length;
    }
    this.weights = weights;
  }

  of(number: number): Nearness {
    let [moved, far, core] = [0, 0, 0];
    combinationAt(this.question, number).forEach((index, i) => {
      const steps = this.steps[i][index];
      if (steps > STILL) moved += 1;
      far += steps;
      core += index * this.weights[i];
    });
    return { moved, far, core };
  }
}

/** The fewer parts are moved the nearer, then the fewer steps in all. */
export const nearerFirst = (a: Nearness, b: Nearness): number =>
  a.moved - b.moved || (Math.abs(a.far - b.far) <= STILL ? 0 : a.far - b.far);

function stepsFromSetup({ document }: CarMechanism, { setup }: Question, variable: Variable): readonly number[] {
  const { axle, name, side, values } = variable;
  if (variable.kind === 'point') {
    const step = variable.values.length > 1 ? variable.values[1] - variable.values[0] : 1;
    return variable.values.map((value) => Math.abs(value / step));
  }
  const adjuster = document[axle]?.adjusters?.[name];
  if (adjuster === undefined) return values.map(() => 0);
  const { step, isRound, max } = stepScaleOf(adjuster);
  const own = (side === 'both' ? (['left', 'right'] as const) : [side]).map((one) => settingOf(setup, axle, name, one));
  const between = (value: number | null, from: number | null): number => {
    // a bushing that is fitted, or taken out
    if (isRound && (value === null || from === null)) return value === from ? 0 : 1;
    const apart = Math.abs((value ?? 0) - (from ?? 0));
    return (isRound ? Math.min(apart, max - apart) : apart) / step;
  };
  return values.map((value) => Math.max(...own.map((from) => between(value, from))));
}
