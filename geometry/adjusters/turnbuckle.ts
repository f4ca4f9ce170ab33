import type { AdjusterOf } from './adjustment';

/** Change of the rod's length [mm] by `turns`; with threads of opposite hand `perTurn` is twice the pitch. */
export const turnbuckleChange = (turnbuckle: AdjusterOf<'turnbuckle'>, turns: number): number => turnbuckle.perTurn * turns;
