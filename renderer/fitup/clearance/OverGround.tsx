import { useMemo } from 'react';
import type { ClearanceAnswer } from '../../../geometry/index';
import { KeepTable } from '../../lengths/KeepTable';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useUnits } from '../../look/units';
import { withUnit } from '../../units/shownQuantity';
import { lengthsIn } from './clearanceTable';
import { attitudesOf, groundLines, groundPlain, verdictOf } from './groundLines';

const ID = 'over-ground';

/** The least height over the ground, and the way to its table, which stands under that of the pairs. */
export const ToGround = ({ ground }: { readonly ground: NonNullable<ClearanceAnswer['ground']> }) => {
  const { unit, format } = lengthsIn(useUnits());
  const [lowest] = ground.rows;
  if (lowest === undefined) return null;
  const verdict = verdictOf(lowest);
  const toTable = () => {
    const table = document.getElementById(ID);
    const list = table?.parentElement;
    if (!table || !list) return;
    // the list alone: the page around it never scrolls
    list.scrollTop += table.getBoundingClientRect().top - list.getBoundingClientRect().top;
    table.focus({ preventScroll: true });
  };
  return (
    <button type="button" className="button bare" onClick={toTable}>
      {verdict !== 'within' && <VerdictShape verdict={verdict} />}
      Over the ground: {withUnit(format(lowest.height), unit)}
    </button>
  );
};

/** The lowest points over the ground, part by part, where the car stands, on flat tyres and with every damper solid. */
export const OverGround = ({ ground }: { readonly ground: NonNullable<ClearanceAnswer['ground']> }) => {
  const units = useUnits();
  const { unit, format } = lengthsIn(units);
  const lines = useMemo(() => groundLines(ground, units), [ground, units]);
  const attitudes = attitudesOf(ground);
  const [first] = ground.rows;
  if (first === undefined) return null;
  return (
    <section className="overground" id={ID} tabIndex={-1} aria-label="Over the ground">
      <div className="overgroundhead">
        <h2>Over the ground</h2>
        <span className="quiet">
          lowest point of each part, least of the setups, rack centred;{' '}
          {first.needs > 0 ? `needs ${withUnit(format(first.needs), unit)}` : 'no margin asked for'}
        </span>
        <KeepTable name="over the ground" table={() => groundPlain(ground, units)} />
      </div>
      <div className="answertable">
        <table>
          <thead>
            <tr>
              <th scope="col">Part</th>
              {attitudes.map(({ name, head, meaning }) => (
                <th key={name} scope="col" className="number" title={meaning}>
                  {head}
                  <br />
                  <span className="unit">{unit}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lines.map(({ key, name, side, cells }) => (
              <tr key={key}>
                <th scope="row">
                  <span className="fituppair">
                    <span className={`sidemark ${side}`} title={side}>
                      {side === 'left' ? 'L' : 'R'}
                    </span>
                    <span className="pairwords">
                      <b>{name}</b>
                      <span className="unseen">, {side}</span>
                    </span>
                  </span>
                </th>
                {attitudes.map(({ name: attitude }, index) => {
                  const cell = cells[index];
                  return (
                    <td key={attitude} className="number" title={cell && `lowest in ${cell.row.setup}`}>
                      {cell ? (
                        <span className={`overheight ${cell.verdict}`}>
                          {cell.verdict !== 'within' && <VerdictShape verdict={cell.verdict} />}
                          {cell.height}
                          {cell.verdict !== 'within' && (
                            <span className="unseen"> {cell.row.verdict === 'cuts' ? 'under the ground' : cell.row.verdict}</span>
                          )}
                        </span>
                      ) : (
                        '–'
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="fitupnote">
        The ground is the plane nearest to all wheels. No wheel moves against the body when its tyre loses its air; tyres, rims
        and what touches the ground are left out. Whether the series asks for it, and how it is checked, is in its rules.
      </p>
    </section>
  );
};
