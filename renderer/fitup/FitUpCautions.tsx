import { CLEARANCE_CAUTIONS, JOINT_CAUTIONS, KEEP_OUT_CAUTIONS, LOAD_CAUTIONS, STROKE_CAUTIONS } from '../../geometry/index';
import type { FitUpTab } from './fitUpQuestion';

const CAUTIONS: Readonly<Record<FitUpTab, readonly string[]>> = {
  clearance: CLEARANCE_CAUTIONS,
  joints: JOINT_CAUTIONS,
  stroke: STROKE_CAUTIONS,
  loads: LOAD_CAUTIONS,
  keepOut: KEEP_OUT_CAUTIONS,
};

/** What every number of the tab stands under, in the words of the command line. Always in sight. */
export const FitUpCautions = ({ tab }: { readonly tab: FitUpTab }) => (
  <div className="cautions fitupcautions" role="note" aria-label="Cautions" tabIndex={0}>
    {CAUTIONS[tab].map((words) => (
      <p key={words}>{words}</p>
    ))}
  </div>
);
