import { useCallback, useMemo, useState } from 'react';
import { toDegrees, type JointRow, type PlacedCorner } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import type { Verdict } from '../../compute/limits';
import { KeepTable } from '../../lengths/KeepTable';
import type { PlainTable } from '../../lengths/lengthTables';
import { useUnits } from '../../look/units';
import { useWindow } from '../../shell/benchContext';
import { VerdictChip } from '../../studies/answers/AnswerCells';
import { useKept } from '../../shell/keptState';
import { formatNumber } from '../../units/format';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import { lengthsIn, travelWords } from '../clearance/clearanceTable';
import { FitUpProgress } from '../FitUpProgress';
import { FitUpQuestion } from '../FitUpQuestion';
import { askedSetups, meshesOfCar, jointsOrder, sidesOf } from '../fitUpQuestion';
import { FitUpWarnings } from '../FitUpWarnings';
import { RowName } from '../RowName';
import type { TabProps } from '../tabProps';
import { VerdictCounts } from '../VerdictCounts';
import { takeToBench } from '../toBench';
import { useFitUp } from '../useFitUp';
import { FitUpView, NOTHING_SHOWN } from '../view/FitUpView';
import type { FitUpViewName } from '../view/fitUpContent';
import { boltTurnWords } from './boltTurn';
import { jointShown } from './jointItems';
import './fan.css';

const VIEWS: readonly { readonly name: FitUpViewName; readonly label: string }[] = [
  { name: 'gap', label: 'At joint' },
  { name: 'corner', label: 'Corner' },
  { name: 'front', label: 'Front' },
  { name: 'side', label: 'Side' },
  { name: 'top', label: 'Top' },
];

const keyOf = ({ axle, side, point }: JointRow): string => `${axle}|${side}|${point}`;

/** Less than this part of what is allowed left is close. */
const CLOSE_SHARE = 0.15;
const verdictOf = ({ spare, rated }: JointRow): Verdict =>
  spare === null || spare < 0 ? 'broken' : spare < CLOSE_SHARE * rated ? 'close' : 'within';

const COUNTED = { broken: 'past what is rated', close: 'close', within: 'clear' } as const;

/** How many joints tilt past what is rated, come close to it, and do not. */
const jointCounts = (rows: readonly JointRow[]): readonly { readonly verdict: Verdict; readonly words: string }[] =>
  (['broken', 'close', 'within'] as const)
    .map((verdict) => ({ verdict, count: rows.filter((row) => verdictOf(row) === verdict).length }))
    .filter(({ count }) => count > 0)
    .map(({ verdict, count }) => ({ verdict, words: `${count} ${COUNTED[verdict]}` }));

/** Angles in degrees, lengths in mm as they are read. */
export const jointsPlain = (rows: readonly JointRow[], length: ReturnType<typeof lengthsIn>): PlainTable => ({
  heads: [
    'axle', 'side', 'joint', 'tilt [deg]', 'rated [deg]', 'spare [deg]', 'setup',
    `travel from design [${length.unit}]`, `rack [${length.unit}]`, 'best bolt x', 'best bolt y', 'best bolt z', 'tilt then [deg]',
  ], // prettier-ignore
  rows: rows.map(({ axle, side, point, tilt, rated, spare, at, bestBolt, tiltThen }) => [
    axle,
    side,
    point,
    tilt === null ? null : toDegrees(tilt),
    toDegrees(rated),
    spare === null ? null : toDegrees(spare),
    at?.setup ?? null,
    at ? length.toShown(at.travel) : null,
    at ? length.toShown(at.rack) : null,
    ...(bestBolt ?? [null, null, null]),
    tiltThen === null ? null : toDegrees(tiltThen),
  ]),
});

/** How far every joint tilts over everything that the wheels can do, against what its maker allows. */
export const JointsTab = ({ document, axle, asked, onAsk, tabs, cautions, theme }: TabProps) => {
  const { store } = useWindow();
  const units = useUnits();
  const length = lengthsIn(units);
  const angle = shownQuantity({ quantity: 'angle', decimals: 1 }, units);
  const degrees = (value: number | null): string => (value === null ? '–' : withUnit(angle.format(toDegrees(value)), angle.unit));
  const order = jointsOrder(document, axle, askedSetups(document, asked.without));
  const { state, last, cancel, again } = useFitUp('joints', order);
  const [chosen, choose] = useKept<string | null>('fitup.joints.row', () => null);
  const [view, setView] = useKept<FitUpViewName>('fitup.joints.view', () => 'gap');
  const [standing, setStanding] = useState<number | null>(null);
  const answered = last && last.order.axles[0] === axle ? last : null;
  const isOld = answered !== null && answered.order !== order;
  const rows = useMemo(() => answered?.answer.rows.filter(({ side }) => sidesOf(asked).includes(side)) ?? [], [answered, asked]);
  const row = rows.find((one) => keyOf(one) === chosen) ?? rows[0] ?? null;
  const place = useMemo(() => {
    const setup = answered?.order.setups.find(([name]) => name === row?.at?.setup);
    return row?.at && setup ? { setup, side: row.side, travel: row.at.travel, from: 'design' as const, rack: row.at.rack } : null;
  }, [row, answered]);
  const words = row ? { rated: `rated ${degrees(row.rated)}`, tilt: `tilt ${degrees(row.tilt)}` } : { rated: '', tilt: '' };
  const { rated, tilt } = words;
  const shown = useCallback(
    (corner: PlacedCorner) =>
      row && answered ? jointShown(answered.order.document, row, { rated, tilt }, corner) : NOTHING_SHOWN,
    [row, answered, rated, tilt],
  );
  const joint = row ? answered?.order.document.joints?.[row.point] : undefined;
  const bestBolt = row?.bestBolt && joint ? boltTurnWords(joint.bolt, row.bestBolt, degrees) : null;
  const most = Math.max(0.01, ...rows.map((one) => Math.max(one.rated, one.tilt ?? 0)));
  return (
    <>
      <div className="fituptable">
        <div className="fituphead">
          {tabs}
          <VerdictCounts counts={jointCounts(rows)} />
        </div>
        <FitUpQuestion document={document} axle={axle} asked={asked} onChange={onAsk}>
          {rows.length > 0 && <KeepTable name="joints" table={() => jointsPlain(rows, length)} />}
        </FitUpQuestion>
        <FitUpProgress state={state} isOld={isOld} onCancel={cancel} onAgain={again} />
        <section className={`answers fitupanswers${isOld ? ' old' : ''}`} aria-label="Tilt of joints">
          {rows.length > 0 && (
            <div className="answertable" tabIndex={0} role="region" aria-label="Table of joints">
              <table>
                <thead>
                  <tr>
                    <th scope="col">Joint, {axle}</th>
                    <th scope="col" className="number">
                      Tilt
                    </th>
                    <th scope="col" className="number">
                      Rated
                    </th>
                    <th scope="col">
                      <span className="unseen">Tilt against what is rated</span>
                    </th>
                    <th scope="col" className="fitupat">
                      Most at
                      <br />
                      <span className="unit">travel from design, rack, {length.unit}</span>
                    </th>
                    <th scope="col">Verdict</th>
                    <th
                      scope="col"
                      title="The direction of the bolt, as the file gives it, with which the greatest tilt is least"
                    >
                      Best bolt
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {rows.map((one) => (
                    <tr
                      key={keyOf(one)}
                      className={row && keyOf(one) === keyOf(row) ? 'chosen' : undefined}
                      onClick={() => choose(keyOf(one))}
                    >
                      <RowName
                        group="fitup.joints"
                        label={nameOfKey(one.point)}
                        side={one.side}
                        checked={row !== null && keyOf(one) === keyOf(row)}
                        onPick={() => choose(keyOf(one))}
                      >
                        <b>{nameOfKey(one.point)}</b>
                      </RowName>
                      <td className="number">
                        <b>{degrees(one.tilt)}</b>
                      </td>
                      <td className="number quiet">{degrees(one.rated)}</td>
                      <td>
                        <span className="gapbar" aria-hidden="true">
                          <i className={verdictOf(one)} style={{ width: `${(100 * (one.tilt ?? 0)) / most}%` }} />
                          <u style={{ left: `${(100 * one.rated) / most}%` }} />
                        </span>
                      </td>
                      <td className="fitupat">
                        {one.at ? (
                          <>
                            {travelWords(one.at.travel, units)}, {length.formatChange(one.at.rack)}{' '}
                            <span className="quiet">{one.at.setup}</span>
                          </>
                        ) : (
                          one.why['tilt']
                        )}
                      </td>
                      <td>
                        <VerdictChip verdict={verdictOf(one)}>
                          {one.spare === null
                            ? 'not known'
                            : one.spare < 0
                              ? `${degrees(-one.spare)} too much`
                              : `${degrees(one.spare)} spare`}
                        </VerdictChip>
                      </td>
                      <td className="fitupat">
                        {one.bestBolt && (
                          <>
                            [{one.bestBolt.map((value) => formatNumber(value, 3)).join(', ')}]
                            <br />
                            <b>then {degrees(one.tiltThen)}</b>
                          </>
                        )}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
          {answered && <FitUpWarnings warnings={answered.answer.warnings} />}
        </section>
        {cautions}
      </div>
      <FitUpView
        document={document}
        axle={axle}
        meshes={meshesOfCar(document).meshes}
        place={place}
        shown={shown}
        subject={row ? `${keyOf(row)} ${row.at?.setup ?? ''}` : ''}
        view={view}
        views={VIEWS}
        onView={setView}
        title={row ? nameOfKey(row.point) : ''}
        subtitle={
          row?.at
            ? `${axle} ${row.side}, ${row.at.setup}: ${travelWords(row.at.travel, units)}, rack ${withUnit(length.formatChange(row.at.rack), length.unit)}`
            : ''
        }
        theme={theme}
        onStanding={setStanding}
      >
        {row?.at && (
          <div className="fitupdetail" data-over-view>
            <p className="fitupfoot">
              <span>
                {bestBolt !== null && (
                  <>
                    <b>Best bolt: {bestBolt}</b>; then {degrees(row.tiltThen)} at most.{' '}
                  </>
                )}
                Where a fan is drawn it is what the maker rates, and the arc the tilt here, where it is greatest.
              </span>
              <button
                type="button"
                data-press="to-bench"
                className="button"
                disabled={standing === null || isOld}
                onClick={() =>
                  row.at &&
                  standing !== null &&
                  takeToBench(store, {
                    axle,
                    side: row.side,
                    setup: row.at.setup,
                    travel: row.at.travel - standing,
                    rack: row.at.rack,
                  })
                }
              >
                Take position to the bench
              </button>
            </p>
          </div>
        )}
      </FitUpView>
    </>
  );
};
