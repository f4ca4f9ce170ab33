import type { AxleMechanism } from '../../car/mechanism';
import { dot, ZERO } from '../../core/vector';
import type { AssembledSide } from '../../setup/assembleSide';

/**
 * - `enough`; `watch`: less than is asked for as a rule; `out`: too little to hold
 *
 * In steel `watch` is below 1.5 × the diameter and `out` below 1.0, in aluminium below 2.0 and 1.5: common practice, no source.
 */
export type ThreadVerdict = 'enough' | 'watch' | 'out';
export type ThreadMaterial = 'steel' | 'aluminium';

/** How far threads reach into each other. Lengths in mm. */
export interface ThreadRow {
  /** the turnbuckle's name, or "studs" */
  readonly name: string;
  readonly kind: 'turnbuckle' | 'studs';
  readonly diameter: number;
  readonly pitch: number;
  /** of the rod: 2 of opposite hand move alike */
  readonly ends: 1 | 2;
  /** of the female thread; null where the file does not say */
  readonly material: ThreadMaterial | null;
  /** turns of the turnbuckle from its zero; null of studs */
  readonly turns: number | null;
  /** thickness under the wheel; null of a turnbuckle */
  readonly spacer: number | null;
  /** of each end, as it stands */
  readonly engaged: number;
  /** ÷ diameter */
  readonly times: number;
  /** null where the material is not given and decides it */
  readonly verdict: ThreadVerdict | null;
}

/** Engaged lengths ÷ diameter below which a thread is to be watched, and holds too little: common practice, no source. */
export const THREAD_LIMITS: Readonly<Record<ThreadMaterial, { readonly out: number; readonly watch: number }>> = {
  steel: { out: 1, watch: 1.5 },
  aluminium: { out: 1.5, watch: 2 },
};

/** A thread that is engaged by just its limit is; 1.5 × 14 in inches is not 21 mm to the last bit. */
const ROUNDING = 1e-9;

const judge = (times: number, material: ThreadMaterial): ThreadVerdict => {
  const { out, watch } = THREAD_LIMITS[material];
  if (times < out - ROUNDING) return 'out';
  return times < watch - ROUNDING ? 'watch' : 'enough';
};

/** Without a material only what both would say is said. @param times - engaged length ÷ diameter */
export function threadVerdict(times: number, material: ThreadMaterial | null): ThreadVerdict | null {
  if (material !== null) return judge(times, material);
  const [steel, aluminium] = [judge(times, 'steel'), judge(times, 'aluminium')];
  return steel === aluminium ? steel : null;
}

/**
 * The threads of one side as its setup leaves them. Each end of a turnbuckle: engaged − pitch × turns; both ends of opposite
 * hand come out alike. Studs: engaged − what a spacer takes.
 */
export function threadsOf(axle: AxleMechanism, side: AssembledSide, mm: number): ThreadRow[] {
  const rows: ThreadRow[] = [];
  for (const adjuster of axle.adjusters) {
    if (adjuster.document.kind !== 'turnbuckle' || adjuster.document.thread === undefined) continue;
    const { diameter, pitch, engaged, ends = 1, material = null } = adjuster.document.thread;
    const turns = side.settings[adjuster.name] ?? 0;
    const now = (engaged - pitch * turns) * mm;
    const times = now / (diameter * mm);
    rows.push({
      name: adjuster.name,
      kind: 'turnbuckle',
      diameter: diameter * mm,
      pitch: pitch * mm,
      ends,
      material,
      turns,
      spacer: null,
      engaged: now,
      times,
      verdict: threadVerdict(times, material),
    });
  }
  const { studs } = side.wheel.document;
  if (studs !== undefined) {
    // what moves the wheel out along the spindle lies between hub and wheel
    const spacer = dot(side.adjustment.shifts.knuckle['wheelCentre'] ?? ZERO, side.corner.spindle);
    const now = studs.engaged * mm - spacer;
    const times = now / (studs.diameter * mm);
    const { material = null } = studs;
    rows.push({
      name: 'studs',
      kind: 'studs',
      diameter: studs.diameter * mm,
      pitch: studs.pitch * mm,
      ends: 1,
      material,
      turns: null,
      spacer,
      engaged: now,
      times,
      verdict: threadVerdict(times, material),
    });
  }
  return rows;
}
