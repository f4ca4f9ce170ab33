import { useCallback, useMemo, useState } from 'react';
import type { CarDocument, PlacedCorner } from '../../../geometry/index';
import { KeepTable } from '../../lengths/KeepTable';
import { useUnits } from '../../look/units';
import { useWindow } from '../../shell/benchContext';
import { VerdictChip } from '../../studies/answers/AnswerCells';
import { useKept } from '../../shell/keptState';
import { withUnit } from '../../units/shownQuantity';
import { lengthsIn, travelWords } from '../clearance/clearanceTable';
import { FitUpProgress } from '../FitUpProgress';
import { FitUpQuestion } from '../FitUpQuestion';
import { askedSetups, meshesOfCar, sidesOf, strokeOrder } from '../fitUpQuestion';
import { FitUpWarnings } from '../FitUpWarnings';
import { RowName } from '../RowName';
import type { TabProps } from '../tabProps';
import { VerdictCounts } from '../VerdictCounts';
import { takeToBench } from '../toBench';
import { Unreached } from '../Unreached';
import { useFitUp } from '../useFitUp';
import { FitUpView, NOTHING_SHOWN, type SpanEnds } from '../view/FitUpView';
import type { FitUpViewName } from '../view/fitUpContent';
import { DamperStrip } from './DamperStrip';
import { StrokeDetail } from './StrokeDetail';
import { strokeShown } from './strokeItems';
import { strokeCounts, strokeLines, type StrokeLine } from './strokeLines';
import { shownStroke, strokePlain } from './strokeTable';

const VIEWS: readonly { readonly name: FitUpViewName; readonly label: string }[] = [
  { name: 'corner', label: 'Corner' },
  { name: 'gap', label: 'Close by' },
  { name: 'front', label: 'Front' },
  { name: 'side', label: 'Side' },
  { name: 'top', label: 'Top' },
];

/** The rod whose thread a line is of. */
const rodOf = (document: CarDocument, axle: TabProps['axle'], { kind, of }: StrokeLine): string | null => {
  const adjuster = kind === 'thread' ? document[axle]?.adjusters?.[of] : undefined;
  return adjuster?.kind === 'turnbuckle' ? adjuster.rod : null;
};

/** What is left of dampers, springs, bar, shafts, hoses and threads over everything that the wheels can do. */
export const StrokeTab = ({ document, setup, axle, asked, onAsk, tabs, cautions, theme }: TabProps) => {
  const { store } = useWindow();
  const units = useUnits();
  const length = lengthsIn(units);
  const order = strokeOrder(document, axle, askedSetups(document, asked.without));
  const { state, last, cancel, again } = useFitUp('stroke', order);
  const [chosen, choose] = useKept<string | null>('fitup.stroke.row', () => null);
  const [view, setView] = useKept<FitUpViewName>('fitup.stroke.view', () => 'corner');
  const [standing, setStanding] = useState<number | null>(null);
  const answered = last && last.order.axles[0] === axle ? last : null;
  const isOld = answered !== null && answered.order !== order;
  const lines = useMemo(
    () =>
      answered
        ? strokeLines(answered.answer.rows, answered.answer.envelope).filter(({ side }) => sidesOf(asked).includes(side))
        : [],
    [answered, asked],
  );
  const line = lines.find(({ key }) => key === chosen) ?? lines[0] ?? null;
  const place = useMemo(() => {
    const own = answered?.order.setups.find(([name]) => name === line?.worst.setup);
    return line?.worst.at && own
      ? { setup: own, side: line.side, travel: line.worst.at.travel, from: 'design' as const, rack: line.worst.at.rack }
      : null;
  }, [line, answered]);
  const shownLine = line && shownStroke(line, line.worst, units);
  const words = shownLine ? `${line.name}: ${withUnit(shownLine.value, shownLine.unit)}` : '';
  const shown = useCallback(
    (corner: PlacedCorner, spans: SpanEnds) =>
      line && answered ? strokeShown(line, words, rodOf(answered.order.document, axle, line), corner, spans) : NOTHING_SHOWN,
    [line, answered, words, axle],
  );
  // the dampers stand as they do on the bench, where that setup is asked about
  const strips = useMemo(() => {
    const rows = answered?.answer.rows ?? [];
    const own = rows.some((row) => row.setup === setup) ? setup : rows[0]?.setup;
    return rows.filter((row) => row.setup === own && sidesOf(asked).includes(row.side));
  }, [answered, setup, asked]);
  return (
    <>
      <div className="fituptable">
        <div className="fituphead">
          {tabs}
          <VerdictCounts counts={strokeCounts(lines)} />
        </div>
        <FitUpQuestion document={document} axle={axle} asked={asked} onChange={onAsk}>
          {lines.length > 0 && <KeepTable name="stroke" table={() => strokePlain(axle, lines, units)} />}
        </FitUpQuestion>
        <FitUpProgress state={state} isOld={isOld} onCancel={cancel} onAgain={again} />
        <section className={`answers fitupanswers${isOld ? ' old' : ''}`} aria-label="Stroke, shafts, hoses and threads">
          {strips.map((row) => (
            <DamperStrip key={row.side} side={row.side} row={row} />
          ))}
          {lines.length > 0 && (
            <div className="answertable" tabIndex={0} role="region" aria-label="Table of stroke and threads">
              <table className="stroketable">
                <thead>
                  <tr>
                    <th scope="col">What has an end, {axle}</th>
                    <th scope="col" className="number">
                      Is
                    </th>
                    <th scope="col" className="number" title="As the file gives it; for a thread the engagement to be watched">
                      Of
                    </th>
                    <th scope="col">
                      <span className="unseen">Used of what there is</span>
                    </th>
                    <th scope="col" className="fitupat">
                      Least left at
                      <br />
                      <span className="unit" title="Travel from design, and rack">
                        travel, rack, {length.unit}
                      </span>
                    </th>
                    <th scope="col">Verdict</th>
                  </tr>
                </thead>
                <tbody>
                  {lines.map((one) => {
                    const { worst } = one;
                    const said = shownStroke(one, worst, units);
                    const isChosen = one.key === line?.key;
                    return (
                      <tr key={one.key} className={isChosen ? 'chosen' : undefined} onClick={() => choose(one.key)}>
                        <RowName
                          group="fitup.stroke"
                          label={one.name}
                          side={one.side}
                          checked={isChosen}
                          onPick={() => choose(one.key)}
                        >
                          <b>{one.name}</b>
                          <br />
                          <span className="quiet strokenote">{one.note}</span>
                        </RowName>
                        <td className="number">
                          <b>{said.value}</b>
                          {worst.value !== null && said.unit !== '°' && said.unit !== '' && (
                            <span className="unit"> {said.unit}</span>
                          )}
                          {worst.value !== null && said.unit === '°' && said.unit}
                          {said.beside !== '' && (
                            <>
                              <br />
                              <span className="quiet strokenote">{said.beside}</span>
                            </>
                          )}
                        </td>
                        <td className="number quiet">{said.allowed}</td>
                        <td>
                          {said.bar && (
                            <span className="gapbar" aria-hidden="true">
                              <i className={worst.verdict ?? undefined} style={{ width: `${100 * said.bar.share}%` }} />
                              {said.bar.mark !== null && <u style={{ left: `${100 * said.bar.mark}%` }} />}
                            </span>
                          )}
                        </td>
                        <td className="fitupat">
                          {worst.at ? (
                            <>
                              {said.at} <span className="quiet">{worst.setup}</span>
                            </>
                          ) : (
                            worst.why
                          )}
                        </td>
                        <td>
                          {worst.verdict ? (
                            <VerdictChip verdict={worst.verdict}>{said.verdictWords}</VerdictChip>
                          ) : (
                            <span className="quiet strokenote" title={worst.why ?? undefined}>
                              {said.verdictWords}
                            </span>
                          )}
                        </td>
                      </tr>
                    );
                  })}
                </tbody>
              </table>
            </div>
          )}
          {answered && <FitUpWarnings warnings={answered.answer.warnings.filter(({ code }) => SAID_BESIDE.has(code))} />}
          {answered && <Unreached envelope={answered.answer.envelope} units={units} />}
        </section>
        {cautions}
      </div>
      <FitUpView
        document={document}
        axle={axle}
        meshes={meshesOfCar(document).meshes}
        place={place}
        shown={shown}
        subject={line ? `${line.key} ${line.worst.setup}` : ''}
        view={view}
        views={VIEWS}
        onView={setView}
        title={line?.name ?? ''}
        subtitle={
          line && shownLine
            ? `${axle} ${line.side}, ${line.worst.setup}${place ? `: ${travelWords(place.travel, units)}, rack ${withUnit(length.formatChange(place.rack), length.unit)}` : ''}`
            : ''
        }
        theme={theme}
        onStanding={setStanding}
      >
        {line && (
          <StrokeDetail
            line={line}
            onBench={
              standing === null || isOld || line.worst.at === null
                ? null
                : () =>
                    line.worst.at &&
                    takeToBench(store, {
                      axle,
                      side: line.side,
                      setup: line.worst.setup,
                      travel: line.worst.at.travel - standing,
                      rack: line.worst.at.rack,
                    })
            }
          />
        )}
      </FitUpView>
    </>
  );
};

/** Warnings that no row of the table says. */
const SAID_BESIDE: ReadonlySet<string> = new Set(['no-envelope', 'setup-unreachable', 'spring-by-weight', 'thread-material']);
