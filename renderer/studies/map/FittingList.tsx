import type { ReactNode } from 'react';
import { fitterWords, type ReadingEntry } from '../../../geometry/index';
import { useUnits } from '../../look/units';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatNumber } from '../../units/format';
import type { ShownUnits } from '../../units/unitChoice';
import { shownReading } from '../../units/shownQuantity';
import { PartShapes, PickRow, VerdictChip } from '../answers/AnswerCells';
import { shortName } from '../answers/sideEffects';
import { labelOf, turnedParts } from '../answers/turnedParts';
import type { MapOrder } from './mapForm';
import { keyOf } from './mapPlaces';
import { hasMarks, stepSettings, type MapMarks, type MapStep } from './mapSteps';
import { partWords } from './mapWords';

/** Fitting steps that are listed. */
const MOST_LISTED = 60;

interface ListProps {
  readonly order: MapOrder;
  readonly fitting: readonly MapStep[];
  readonly steps: readonly MapStep[];
  readonly chosen: MapStep | null;
  readonly marks: MapMarks;
  /** the readings where the setup stands */
  readonly now: { readonly z: number | null; readonly second?: number | null };
  readonly setup: string;
  readonly onChoose: (step: MapStep) => void;
  /** what stands at the end of the head */
  readonly children: ReactNode;
}

/** The steps that fit, the chosen one among them or before them, and where the car stands. */
export const FittingList = ({ order, fitting, steps, chosen, marks, now, setup, onChoose, children }: ListProps) => {
  const units = useUnits();
  const { document, question } = order;
  const { entry, second, x, y } = question;
  const heads = [x, y].flatMap((axis) => (axis.kind === 'adjuster' ? [labelOf(document, axis.axle, axis.name)] : []));
  const unitOf = (one: ReadingEntry): string => shownReading(one, units).unit;
  const written = writtenIn(units);
  const isListed = chosen !== null && fitting.slice(0, MOST_LISTED).includes(chosen);
  const listed = [...(chosen && !isListed ? [chosen] : []), ...fitting.slice(0, MOST_LISTED)];
  return (
    <section className="answers maplist">
      <div className="answershead">
        <h2>Steps that fit</h2>
        <span className="quiet">
          {hasMarks(marks)
            ? `${formatNumber(fitting.length, 0)} of ${formatNumber(steps.length, 0)}`
            : `of ${formatNumber(steps.length, 0)}`}
        </span>
        <span className="spread" />
        {children}
      </div>
      {!hasMarks(marks) && (
        <p className="quiet mapnote">Mark a value or give a threshold, and the steps that fit are listed here.</p>
      )}
      {hasMarks(marks) && fitting.length === 0 && steps.length > 0 && (
        <p className="mapnote">
          No real step fits: widen ±, move the threshold, or look where the line comes nearest to the dots.
        </p>
      )}
      <div className="answertable" tabIndex={0} role="region" aria-label="List of steps">
        <table>
          <thead>
            <tr>
              <th scope="col">{heads.join(' · ')}</th>
              <th scope="col" className="number">
                {shortName(entry)}
                <br />
                <span className="unit">{unitOf(entry) || ' '}</span>
              </th>
              {second && (
                <th scope="col" className="number">
                  {shortName(second.entry)}
                  <br />
                  <span className="unit">{unitOf(second.entry) || ' '}</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {listed.map((step) => (
              <StepLine key={keyOf(step)} step={step} order={order} isChosen={step === chosen} onChoose={() => onChoose(step)} />
            ))}
            <tr className="nowline">
              <th scope="row">
                <b>{setup}, now</b>
              </th>
              <td className="number">{written(now.z, entry)}</td>
              {second && <td className="number">{written(now.second ?? null, second.entry)}</td>}
            </tr>
          </tbody>
        </table>
      </div>
    </section>
  );
};

interface LineProps {
  readonly step: MapStep;
  readonly order: MapOrder;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

const writtenIn =
  (units: ShownUnits) =>
  (value: number | null, entry: ReadingEntry): string =>
    value === null ? '–' : shownReading(entry, units).format(value);

const StepLine = ({ step, order, isChosen, onChoose }: LineProps) => {
  const units = useUnits();
  const { document, question } = order;
  const written = writtenIn(units);
  const parts = turnedParts(document, stepSettings(question, step), units);
  const mm = mmPerFileUnit(document);
  const short = parts.map(({ adjuster, left, right }) => fitterWords(adjuster, left ?? right, mm, units).short);
  return (
    <tr className={isChosen ? 'chosen' : undefined} onClick={onChoose}>
      <th scope="row">
        <span className="wayparts">
          <PickRow group="map step" label={partWords(step, order, units)} checked={isChosen} onPick={onChoose} />
          <PartShapes parts={parts} size={24} />
          <span className="waywords">
            {short.map((words, index) => (
              <span key={parts[index]?.name}>
                {index > 0 && ' · '}
                {words}
              </span>
            ))}
            {!step.fits && (
              <VerdictChip verdict={step.isAllowed ? 'close' : 'broken'}>
                {step.value === null ? 'cannot be reached' : step.isAllowed ? 'off the mark' : 'not allowed'}
              </VerdictChip>
            )}
          </span>
        </span>
      </th>
      <td className="number">{written(step.value, question.entry)}</td>
      {question.second && <td className="number">{written(step.second, question.second.entry)}</td>}
    </tr>
  );
};
