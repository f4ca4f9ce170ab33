import { useBench } from './benchContext';

/** What every number on the bench stands under. Always in sight. */
export const Cautions = () => {
  const blade = useBench((state) => state.history?.present.document[state.axle]?.trailingArm !== undefined);
  return (
    <p className="cautions">
      <b>Rigid links, no compliance.</b> A part’s effects are at the same wheel-centre height; ± counts the ride heights too.
      {blade && ' The blade’s sideways spring is not modelled.'} The maker’s service data, the series’ rules and a qualified
      engineer come first.
    </p>
  );
};
