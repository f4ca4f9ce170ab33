import type { SideName, StrokeRow } from '../../../geometry/index';
import { useUnits } from '../../look/units';
import { withUnit } from '../../units/shownQuantity';
import { lengthsIn } from '../clearance/clearanceTable';

interface DamperStripProps {
  readonly side: SideName;
  readonly row: StrokeRow;
}

/** A damper as it stands: how far its piston is from fully open, from the first touch of its rubber and from solid, to scale. */
export const DamperStrip = ({ side, row: { droopLeft, bumpLeft, solidLeft, setup, standing, why } }: DamperStripProps) => {
  const units = useUnits();
  const { format, formatChange, unit } = lengthsIn(units);
  const length = (value: number): string => withUnit(format(value), unit);
  const head = (
    <p className="striphead">
      <b className={`sidemark ${side}`}>{side === 'left' ? 'Left' : 'Right'}</b>
      <span className="quiet">
        {setup}, standing at {withUnit(formatChange(standing), unit)} of travel from design, damper
      </span>
    </p>
  );
  if (droopLeft === null || solidLeft === null)
    return (
      <div className="damperstrip">
        {head}
        <p className="quiet">
          {[why['droopLeft'], why['solidLeft']]
            .filter((words, index, all) => words !== undefined && all.indexOf(words) === index)
            .join('; ')}
        </p>
      </div>
    );
  const whole = droopLeft + solidLeft;
  const part = (from: number): number => Math.min(100, Math.max(0, (100 * from) / whole));
  const stands = part(droopLeft);
  const touch = bumpLeft === null ? null : part(droopLeft + bumpLeft);
  const words = [
    `${length(droopLeft)} to fully open`,
    ...(bumpLeft === null ? [] : [bumpLeft < 0 ? `${length(-bumpLeft)} into its rubber` : `${length(bumpLeft)} to first touch`]),
    `${length(solidLeft)} to solid`,
  ];
  return (
    <div className="damperstrip">
      {head}
      <div className="strip" role="img" aria-label={`${side} damper, ${setup}: ${words.join(', ')}`}>
        <span className="stroked" style={{ width: `${stands}%` }}>
          <span>{format(droopLeft)} to open</span>
        </span>
        <span className="free" style={{ left: `${stands}%`, width: `${Math.max(0, (touch ?? 100) - stands)}%` }}>
          {touch !== null && bumpLeft !== null && bumpLeft >= 0 && <span>{format(bumpLeft)} to touch</span>}
        </span>
        {touch !== null && <span className="rubber" style={{ left: `${touch}%` }} />}
        <i className={`piston ${side}`} style={{ left: `${stands}%` }} />
      </div>
      <p className="stripfoot">
        <span>fully open</span>
        <span>
          {touch === null ? 'solid' : 'hatched: its bump rubber, to solid'}, {length(solidLeft)} from here
        </span>
      </p>
    </div>
  );
};
