import { useMemo, useState } from 'react';
import type { CarDocument, Triple } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import { KeepTable } from '../../lengths/KeepTable';
import { useUnits } from '../../look/units';
import { useWindow } from '../../shell/benchContext';
import { editCar } from '../../state/actions/editCar';
import { VerdictChip } from '../../studies/answers/AnswerCells';
import { useKept } from '../../shell/keptState';
import { withUnit } from '../../units/shownQuantity';
import { mmPerFileUnit } from '../../units/fileLength';
import { FitUpProgress } from '../FitUpProgress';
import { FitUpQuestion } from '../FitUpQuestion';
import { askedSetups, clearanceOrder, meshesOfCar } from '../fitUpQuestion';
import { remedyWords } from '../remedyWords';
import { FitUpWarnings } from '../FitUpWarnings';
import { RowName } from '../RowName';
import type { TabProps } from '../tabProps';
import { VerdictCounts } from '../VerdictCounts';
import { takeToBench } from '../toBench';
import { useFitUp } from '../useFitUp';
import { FitUpView, NOTHING_SHOWN } from '../view/FitUpView';
import type { FitUpViewName } from '../view/fitUpContent';
import { isMovable, withMovedPart } from '../view/partMove';
import { ClearanceDetail } from './ClearanceDetail';
import {
  clearancePlain,
  gapFigure,
  isPlainCut,
  lengthsIn,
  noRowsWords,
  shownClearance,
  travelWords,
  verdictCounts,
  VERDICT_OF,
} from './clearanceTable';
import { NotLookedAt } from './NotLookedAt';
import { OverGround, ToGround } from './OverGround';

const VIEWS: readonly { readonly name: FitUpViewName; readonly label: string }[] = [
  { name: 'gap', label: 'At gap' },
  { name: 'corner', label: 'Corner' },
  { name: 'front', label: 'Front' },
  { name: 'side', label: 'Side' },
  { name: 'top', label: 'Top' },
];

/** The part under the hand first: what stands beside a wheel, and not the wheel. */
const heldFirst = (document: CarDocument, [a, b]: readonly [string, string]): readonly [string, string] => {
  const kind = document.parts?.[a]?.shape.kind;
  return kind === 'tyre' || kind === 'rim' ? [b, a] : [a, b];
};

/** The least distance of every pair of parts over everything that the wheels can do. */
export const ClearanceTab = ({ document, axle, asked, onAsk, tabs, cautions, theme }: TabProps) => {
  const { store } = useWindow();
  const units = useUnits();
  const shown = lengthsIn(units);
  const { meshes, faults } = meshesOfCar(document);
  const order = clearanceOrder(document, axle, asked.sides, askedSetups(document, asked.without), meshes);
  const { state, last, cancel, again } = useFitUp('clearance', order);
  const [chosen, choose] = useKept<string | null>('fitup.clearance.row', () => null);
  const [view, setView] = useKept<FitUpViewName>('fitup.clearance.view', () => 'gap');
  const [standing, setStanding] = useState<number | null>(null);
  // an answer of the other axle is none of this one
  const answered = last && last.order.question.axles[0] === axle ? last : null;
  const isOld = answered !== null && answered.order !== order;
  const rows = useMemo(() => (answered ? shownClearance(answered.answer, units) : []), [answered, units]);
  const row = rows.find(({ key }) => key === chosen) ?? rows[0] ?? null;
  const place = useMemo(() => {
    if (!row || !answered) return null;
    const { at, side } = row.row;
    const setup = answered.order.question.setups.find(([name]) => name === at.setup);
    return setup ? { setup, side, travel: at.travel, from: 'design' as const, rack: at.rack } : null;
  }, [row, answered]);
  const figures = useMemo(() => {
    if (!row) return NOTHING_SHOWN;
    const { row: found } = row;
    const [a, b] = found.points;
    const way = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
    const size = Math.sqrt(way[0] * way[0] + way[1] * way[1] + way[2] * way[2]);
    return {
      about: heldFirst(document, found.pair),
      gap: {
        points: found.points,
        figure: gapFigure(found, units),
        needs: `needs ${withUnit(row.needs, shown.unit)}`,
        cuts: found.cuts,
        verdict: VERDICT_OF[found.verdict],
      },
      forces: [],
      items: [],
      focus: {
        at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2] as const,
        reach: size,
        square: size > 1e-6 ? way : null,
      },
    };
  }, [row, document, units, shown.unit]);
  const moving = row ? heldFirst(document, row.row.pair).find((name) => isMovable(document, name)) : undefined;
  const moved = useMemo(
    () =>
      moving === undefined
        ? null
        : {
            name: moving,
            label: nameOfKey(moving),
            onMoved: (by: Triple) =>
              editCar(store, `Move ${nameOfKey(moving).toLowerCase()}`, (car) =>
                withMovedPart(car, moving, by, mmPerFileUnit(car)),
              ),
          },
    [moving, store],
  );
  const hasParts = Object.keys(document.parts ?? {}).length > 0;
  return (
    <>
      <div className="fituptable">
        <div className="fituphead">
          {tabs}
          <VerdictCounts counts={answered ? verdictCounts(answered.answer.rows) : []} />
          {answered?.answer.ground && <ToGround ground={answered.answer.ground} />}
        </div>
        <FitUpQuestion document={document} axle={axle} asked={asked} onChange={onAsk}>
          {answered && rows.length > 0 && <KeepTable name="clearance" table={() => clearancePlain(answered.answer, units)} />}
        </FitUpQuestion>
        <FitUpProgress state={state} isOld={isOld} onCancel={cancel} onAgain={again} />
        {!hasParts && (
          <p className="fitupnote">
            This car file has no <code>parts</code>: only rods with a <code>section</code>, the strut’s tube, the disc and the
            drive shaft are looked at, as far as the file gives them. Add the tyre, caliper, arch and brackets on the page Points,
            under Parts.
          </p>
        )}
        <section className={`answers fitupanswers${isOld ? ' old' : ''}`} aria-label="Clearance of pairs">
          {answered && rows.length === 0 && <p className="empty">{noRowsWords(answered.answer, axle)}</p>}
          {rows.length > 0 && (
            <div className="answertable" tabIndex={0} role="region" aria-label="Table of clearance">
              <table>
                <thead>
                  <tr>
                    <th scope="col">Pair, {axle}</th>
                    <th scope="col" className="number">
                      Gap
                      <br />
                      <span className="unit">{shown.unit}</span>
                    </th>
                    <th scope="col" className="number">
                      Needs
                      <br />
                      <span className="unit">{shown.unit}</span>
                    </th>
                    <th scope="col">
                      <span className="unseen">Gap against what is needed</span>
                    </th>
                    <th
                      scope="col"
                      className="number"
                      title="By how much it could be less between the positions that were looked at"
                    >
                      Could be
                      <br />
                      less by
                    </th>
                    <th scope="col" className="fitupat">
                      Least at
                      <br />
                      <span className="unit">travel from design, rack, {shown.unit}</span>
                    </th>
                    <th scope="col">Verdict</th>
                  </tr>
                </thead>
                <tbody>
                  {rows.map((one) => (
                    <tr key={one.key} className={one.key === row?.key ? 'chosen' : undefined} onClick={() => choose(one.key)}>
                      <RowName
                        group="fitup.clearance"
                        label={one.names.join(' to ')}
                        side={one.row.side}
                        checked={one.key === row?.key}
                        onPick={() => choose(one.key)}
                      >
                        <b>{one.names[0]}</b> to {one.names[1]}
                      </RowName>
                      <td className="number">
                        <b>{one.gap}</b>
                      </td>
                      <td className="number quiet">{one.needs}</td>
                      <td>
                        <span className="gapbar" aria-hidden="true">
                          <i className={one.verdict} style={{ width: `${100 * one.share}%` }} />
                          <u style={{ left: `${100 * one.needsShare}%` }} />
                        </span>
                      </td>
                      <td className="number quiet">{one.bound}</td>
                      <td className="fitupat">
                        <span>
                          {one.at}, {one.rack}
                        </span>{' '}
                        <span className="quiet">{one.row.at.setup}</span>
                      </td>
                      <td>
                        <VerdictChip verdict={one.verdict}>{one.verdictWords}</VerdictChip>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
          {answered?.answer.ground && <OverGround ground={answered.answer.ground} />}
          {answered && <NotLookedAt answer={answered.answer} faults={faults} units={units} />}
        </section>
        {answered && <FitUpWarnings warnings={answered.answer.warnings.filter(({ code }) => code === 'no-shape')} />}
        {cautions}
      </div>
      <FitUpView
        document={document}
        axle={axle}
        meshes={meshes}
        place={place}
        shown={figures}
        subject={row?.key ?? ''}
        view={view}
        views={VIEWS}
        onView={setView}
        title={row ? `${row.names[0]} to ${row.names[1].charAt(0).toLowerCase()}${row.names[1].slice(1)}` : ''}
        subtitle={
          row
            ? `${axle} ${row.row.side}, ${row.row.at.setup}: ${travelWords(row.row.at.travel, units)}, rack ${withUnit(row.rack, shown.unit)}`
            : ''
        }
        theme={theme}
        onStanding={setStanding}
        moved={isOld ? null : moved}
      >
        {row && answered && (
          <ClearanceDetail
            row={row.row}
            remedies={row.row.wouldClear.map((remedy) => remedyWords(answered.order.document, row.row, remedy, units))}
            bound={withUnit(row.bound, shown.unit)}
            isPlainCut={isPlainCut(row.row)}
            onBench={
              standing === null || isOld
                ? null
                : () =>
                    takeToBench(store, {
                      axle,
                      side: row.row.side,
                      setup: row.row.at.setup,
                      travel: row.row.at.travel - standing,
                      rack: row.row.at.rack,
                    })
            }
          />
        )}
      </FitUpView>
    </>
  );
};
