import { adjustmentOf, type Adjustment, type Settings } from '../adjusters/adjustment';
import type { AxleMechanism, SideMechanism, Wheel } from '../car/mechanism';
import type { SetupAxleDocument } from '../car/document';
import { fail, succeed, type Result } from '../core/result';
import { SINGULAR } from '../core/tolerances';
import type { Corner, Linkage } from '../corner/corner';
import type { Failure } from '../corner/failure';
import { SOLVED, type Motion } from '../corner/motion';
import { assembleMultiLink } from '../corner/multiLink';
import {
  closeMultiLink,
  designMotion,
  eliminationOrder,
  multiLinkKernel,
  multiLinkZeroHeight,
  setRodLength,
  worstMiss,
} from '../corner/multiLinkKernel';
import type { CornerParts } from '../corner/parts';
import { closeNear } from '../corner/solveCorner';
import { searchStrut } from '../corner/strut';
import { setTieRod, strutKernel, strutZeroHeight } from '../corner/strutKernel';
import { sharedJointsOf } from '../readings/steeringAxis';
import { cornerParts } from './cornerParts';
import { linkageOf, NO_ADJUSTMENT, spindleAtDesign } from './linkages';

/** One side with a setup on it: its corner, put together at travel 0, and the parts that hang on it. */
export interface AssembledSide {
  readonly mechanism: SideMechanism;
  readonly wheel: Wheel;
  readonly settings: Settings;
  readonly adjustment: Adjustment;
  readonly corner: Corner;
  readonly parts: CornerParts;
}

/**
 * A side whose parts are put on when somebody asks: most searches look at the wheel alone. A class on purpose: object literals
 * with getters have each a shape of its own, which costs a search of many sides a third of its time.
 */
export class SideOfParts implements AssembledSide {
  private known: CornerParts | null = null;

  constructor(
    readonly mechanism: SideMechanism,
    readonly wheel: Wheel,
    readonly settings: Settings,
    readonly adjustment: Adjustment,
    readonly corner: Corner,
    private readonly putOn: () => CornerParts,
  ) {}

  get parts(): CornerParts {
    return (this.known ??= this.putOn());
  }
}

/**
 * Puts one side together.
 * @param wheel - with the setup's changes
 * @param settings - [mm, rad, turns]
 * @param near - pose at travel 0, rack 0 of the same side with a neighbouring setting: this one's is closed from there, or where
 * that leads nowhere, as without, from design
 * @returns the side at travel 0, rack 0; or `unreachable` where its links do not meet, `singular` where they do not hold the wheel
 */
export function assembleSide(
  axle: AxleMechanism,
  side: SideMechanism,
  wheel: Wheel,
  settings: Settings,
  setup: SetupAxleDocument | undefined,
  near: Motion | null = null,
): Result<AssembledSide, Failure> {
  const spindle = spindleAtDesign(wheel);
  const adjustment = adjustmentOf(axle, side, spindle, settings);
  const linkage = linkageOf(axle, side, adjustment);
  const steerRod = steerRodOf(axle);
  const put = putTogether(axle, side, wheel, linkage, near);
  if (!put.ok) return put;
  const corner: Corner = {
    side: side.side,
    linkage,
    spindle,
    loadedRadius: wheel.loadedRadius,
    steerRod,
    isSteered: axle.steering !== null,
    sharedJoints: axle.layout === 'strut' ? null : sharedJointsOf(linkage.rods, steerRod),
    kernel: put.value.kernel,
    home: put.value.home,
  };
  const parts = (): CornerParts => cornerParts(axle, side, adjustment, setup);
  return succeed(new SideOfParts(side, wheel, settings, adjustment, corner, parts));
}

/** A linkage at travel 0, rack 0: its constants and its pose. */
function putTogether(
  axle: AxleMechanism,
  side: SideMechanism,
  wheel: Wheel,
  linkage: Linkage,
  near: Motion | null,
): Result<Put, Failure> {
  const design = designLinkageOf(axle, side);
  return axle.layout === 'strut'
    ? putStrut(axle, side, linkage, design, near)
    : putMultiLink(axle, side, linkage, design, wheel.loadedRadius, steerRodOf(axle), near);
}

/** A copy of the pose, closed with these constants; null where that is not near it. */
function closedNear(axle: AxleMechanism, kernel: Float64Array, near: Motion | null): Motion | null {
  const home = near?.slice();
  return home !== undefined && closeNear(axle.layout, kernel, home, 0) === SOLVED ? home : null;
}

/**
 * Changes the constants and the pose of a corner to one rod of another length: what a search for that length looks at.
 * @param kernel - constants of a corner of this side, changed
 * @param home - takes the pose at travel 0, rack 0
 * @param rod - by its index; on a strut the tie rod
 * @param length - [mm]
 * @returns whether it can be put together
 */
export function turnTo(
  axle: AxleMechanism,
  { mechanism: side, wheel, corner }: AssembledSide,
  kernel: Float64Array,
  home: Motion,
  rod: number,
  length: number,
): boolean {
  if (axle.layout === 'strut') {
    setTieRod(kernel, length);
    return searchStrut(kernel, strutZeroHeight(kernel), 0, home).status === SOLVED;
  }
  const design = designOf(side, designLinkageOf(axle, side), wheel.loadedRadius, corner.steerRod);
  setRodLength(kernel, rod, length);
  return design.closes && !('reached' in assembleMultiLink(design.kernel, kernel, design.motion, home));
}

/** The same from a pose that is near already. @param home - that pose; takes the new one @returns whether it was near */
export function turnNear(axle: AxleMechanism, kernel: Float64Array, home: Motion, rod: number, length: number): boolean {
  if (axle.layout === 'strut') setTieRod(kernel, length);
  else setRodLength(kernel, rod, length);
  return closeNear(axle.layout, kernel, home, 0) === SOLVED;
}

/** By side: what a setting is held against does not change. */
const designLinkages = new WeakMap<SideMechanism, Linkage>();

function designLinkageOf(axle: AxleMechanism, side: SideMechanism): Linkage {
  const known = designLinkages.get(side);
  if (known !== undefined) return known;
  const made = linkageOf(axle, side, NO_ADJUSTMENT);
  designLinkages.set(side, made);
  return made;
}

/**
 * The rod whose length steers the wheel: the rack's; on an unsteered axle the toe adjuster's, and an adjuster that is not a
 * turnbuckle stands for the rod whose end it moves.
 */
export function steerRodOf(axle: AxleMechanism): number {
  if (axle.steering !== null) return axle.rods.findIndex((rod) => rod.name === axle.steering!.rod);
  if (axle.layout === 'strut') return 2;
  const toe = axle.toeAdjuster;
  if (toe === null) return -1;
  if (toe.kind === 'turnbuckle') return axle.rods.findIndex((rod) => rod.name === toe.rod);
  if (!('moves' in toe) || toe.kind === 'perch') return -1;
  return axle.rods.findIndex((rod) => rod.inner === toe.moves || rod.outer === toe.moves);
}

interface Put {
  readonly kernel: Float64Array;
  readonly home: Motion;
}

const named = (axle: AxleMechanism, side: SideMechanism): string => `${axle.axle} ${side.side}`;

function putStrut(
  axle: AxleMechanism,
  side: SideMechanism,
  linkage: Linkage,
  design: Linkage,
  near: Motion | null,
): Result<Put, Failure> {
  const kernel = strutKernel(linkage, design);
  if ('armsShortBy' in kernel) {
    const missingMm = kernel.armsShortBy;
    return fail({
      kind: 'unreachable',
      axle: axle.axle,
      side: side.side,
      message: `The lower arm of the ${named(axle, side)} corner cannot be put together: its two legs miss each other by ${missingMm.toFixed(2)} mm.`,
      missingMm,
      limitedBy: 'armFront',
    });
  }
  const closed = closedNear(axle, kernel, near);
  if (closed !== null) return succeed({ kernel, home: closed });
  const home = new Float64Array(28);
  const found = searchStrut(kernel, strutZeroHeight(kernel), 0, home);
  if (found.status === SOLVED) return succeed({ kernel, home });
  return fail({
    kind: 'unreachable',
    axle: axle.axle,
    side: side.side,
    message: `The ${named(axle, side)} corner cannot be put together at design height with these settings: ${found.missingMm.toFixed(2)} mm are missing.`,
    missingMm: found.missingMm,
    limitedBy: found.status === 1 ? 'strut' : 'tieRod',
  });
}

function putMultiLink(
  axle: AxleMechanism,
  side: SideMechanism,
  linkage: Linkage,
  design: Linkage,
  scale: number,
  steerRod: number,
  near: Motion | null,
): Result<Put, Failure> {
  const { order, kernel: designKernel, motion, closes } = designOf(side, design, scale, steerRod);
  if (!(order.spread > SINGULAR)) {
    return fail({
      kind: 'singular',
      axle: axle.axle,
      side: side.side,
      message: `The links of the ${named(axle, side)} corner do not hold the wheel at design: they leave it more than one motion.`,
      condition: 1 / order.spread,
    });
  }
  const kernel = multiLinkKernel(linkage, order, scale, steerRod);
  const closed = closedNear(axle, kernel, near);
  if (closed !== null) return succeed({ kernel, home: closed });
  const home = closes ? assembleMultiLink(designKernel, kernel, motion) : { reached: 0, missingMm: worstMiss(kernel, motion) };
  if (!('reached' in home)) return succeed({ kernel, home });
  return fail({
    kind: 'unreachable',
    axle: axle.axle,
    side: side.side,
    message: `The ${named(axle, side)} corner cannot be put together at design height: the links close for ${Math.floor(100 * home.reached)} % of these settings and no further; ${home.missingMm.toFixed(2)} mm are missing.`,
    missingMm: home.missingMm,
  });
}

/** What all settings of a side start from. */
interface Design {
  readonly scale: number;
  readonly steerRod: number;
  readonly order: ReturnType<typeof eliminationOrder>;
  readonly kernel: Float64Array;
  /** closed, where it closes */
  readonly motion: Motion;
  readonly closes: boolean;
}

/** By side: it costs as much as putting the side together, and a toe reset puts the same one together again and again. */
const designs = new WeakMap<SideMechanism, Design>();

function designOf(side: SideMechanism, design: Linkage, scale: number, steerRod: number): Design {
  const known = designs.get(side);
  if (known?.scale === scale && known.steerRod === steerRod) return known;
  const order = eliminationOrder(design, scale);
  const kernel = multiLinkKernel(design, order, scale, steerRod);
  const motion = designMotion(design);
  const closes = closeMultiLink(kernel, motion, multiLinkZeroHeight(kernel), 0) >= 0;
  const made = { scale, steerRod, order, kernel, motion, closes };
  designs.set(side, made);
  return made;
}
