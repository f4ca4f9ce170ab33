import { useEffect, useId, useMemo, useRef, useState } from 'react';
import type { AxleName, CarDocument, MapAnswer, ReadingEntry } from '../../../geometry/index';
import { PlotMenu } from '../../curves/PlotMenu';
import { plotPng, plotSvg } from '../../curves/savePlot';
import { saveFile } from '../../look/saveFile';
import { useUnits } from '../../look/units';
import { useBench } from '../../shell/benchContext';
import type { FoundAnswer } from '../../state/answeredSetup';
import { comparedWith } from '../../state/benchStore';
import { shownReading, withUnit } from '../../units/shownQuantity';
import { RowActions } from '../answers/RowActions';
import { askedToe, ownToe } from '../question/toeChoice';
import { valueAt, type MapPoint } from './contourLines';
import { FittingList } from './FittingList';
import { Legend } from './Legend';
import { mapCsv } from './mapCsv';
import type { MapFault, MapForm, MapOrder } from './mapForm';
import { mapPicture } from './mapPicture';
import { keyOf, markOf, nearestStep, nearestTo, sideOf, stepAlong, type MapSide, type Sides } from './mapPlaces';
import { MapPlot } from './MapPlot';
import { fittingSteps, mapSteps, stepSettings, type MapMarks } from './mapSteps';
import { legendWords, partWords, stepWords, written } from './mapWords';

/** Pixels of a picture for each of the screen: sharp in print. */
const PNG_SCALE = 3;

/** What is marked, as far as it can be read. */
const marksOf = (
  wanted: number | null,
  tolerance: number | null,
  threshold: number | null,
  sense: MapForm['sense'],
): MapMarks => ({
  wanted: wanted === null || tolerance === null ? null : { value: wanted, tolerance },
  threshold: threshold === null ? null : { value: threshold, sense },
});

interface ViewProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
  readonly order: MapOrder;
  readonly answer: MapAnswer;
  readonly form: MapForm;
  readonly faults: MapFault;
  /** the fields of the question hold what is none: the map is of the last one that was, and is not saved */
  readonly isBefore: boolean;
}

/** A map that was drawn, and what can be done with its steps. */
export const MapView = ({ order, answer, form, faults, isBefore, document, setup, axle }: ViewProps) => {
  const units = useUnits();
  const compared = useBench(comparedWith);
  const { entry, second, x, y } = order.question;
  const drawing = useRef<SVGSVGElement>(null);
  const hintId = useId();
  const shown = useMemo(() => shownReading(entry, units), [entry, units]);
  const shownSecond = useMemo(() => (second ? shownReading(second.entry, units) : null), [second, units]);
  const hasSecond = second !== undefined && form.second === second.entry.key;
  const { wanted, tolerance, threshold, sense } = form;
  const isTolerable = faults.tolerance === undefined;
  const marks = useMemo(
    () => marksOf(wanted.value, isTolerable ? tolerance.value : null, hasSecond ? threshold.value : null, sense),
    [wanted.value, tolerance.value, threshold.value, sense, hasSecond, isTolerable],
  );
  const picture = useMemo(
    () => mapPicture(answer, marks, shown, shownSecond, order.document, units),
    [answer, marks, shown, shownSecond, order.document, units],
  );
  const steps = useMemo(() => mapSteps(answer, marks), [answer, marks]);
  const fitting = useMemo(() => fittingSteps(steps, marks), [steps, marks]);
  const [chosenKey, choose] = useState<string | null>(null);
  const [point, setPoint] = useState<MapPoint | null>(null);
  const chosen = steps.find((step) => keyOf(step) === chosenKey) ?? fitting[0] ?? null;
  useEffect(() => choose(null), [answer]);

  const sides = { x: sideOf(x, answer.x, order.document, units), y: sideOf(y, answer.y, order.document, units) };
  const now = markOf(order, { document, setup, name: setup });
  const own = ownToe(document, setup, [axle]);
  const found: FoundAnswer | null = chosen && {
    from: setup,
    settings: stepSettings(order.question, chosen),
    toeOn: own === null ? [] : [axle],
    toe: askedToe(form.toe, own),
  };
  const pressed = (at: MapPoint) => {
    const nearest = nearestStep(steps, at, sides);
    if (nearest) choose(keyOf(nearest));
  };
  const walk = (columns: number, rows: number) => {
    const from = chosen ?? nearestTo(steps, now, sides);
    const next = from && stepAlong(steps, from, columns, rows);
    if (next) choose(keyOf(next));
  };
  const title = `${entry.name}${shown.unit === '' ? '' : `, ${shown.unit}`} over ${sides.x.shown.label.toLowerCase()} and ${sides.y.shown.label.toLowerCase()}`;
  const name = `${order.document.name} ${setup} ${title}`;
  const spoken = chosen ? stepWords(chosen, sides, entry, second?.entry ?? null, units) : 'no step chosen';
  const savePicture = async (kind: 'svg' | 'png') => {
    if (!drawing.current) return;
    const svg = plotSvg(drawing.current, title, legendWords(picture, entry, second?.entry ?? null, marks, units));
    const blob = kind === 'svg' ? new Blob([svg], { type: 'image/svg+xml' }) : await plotPng(svg, PNG_SCALE);
    if (blob) saveFile(`${name}.${kind}`, blob);
  };
  const saveCsv = () => saveFile(`${name}.csv`, new Blob([mapCsv(order, answer, sides, units)], { type: 'text/csv' }));
  return (
    <div className="mapbody">
      <section className="mapplace" aria-label="Map drawn">
        <MapPlot
          picture={picture}
          x={sides.x}
          y={sides.y}
          steps={steps}
          chosen={chosen}
          now={now}
          compared={markOf(order, compared)}
          label={title}
          describedBy={hintId}
          drawing={drawing}
          onPoint={setPoint}
          onPress={pressed}
          onWalk={walk}
          onHome={() => {
            const home = nearestTo(steps, now, sides);
            if (home) choose(keyOf(home));
          }}
          onTake={() => globalThis.document.querySelector<HTMLButtonElement>('.mapside .button.primary')?.click()}
        />
        <Readout point={point} answer={answer} sides={sides} entry={entry} second={second?.entry ?? null} />
        <p id={hintId} className="unseen">
          Arrow keys walk from step to step, Home goes to where the car stands, Enter takes the step to the bench.
        </p>
        <p className="unseen" role="status">
          {spoken}
        </p>
      </section>
      <aside className="mapside" aria-label="Steps that fit">
        <FittingList
          order={order}
          fitting={fitting}
          steps={steps}
          chosen={chosen}
          marks={marks}
          now={answer.now}
          setup={setup}
          onChoose={(step) => choose(keyOf(step))}
        >
          {!isBefore && (
            <PlotMenu
              of={title}
              items={[
                { label: 'Table as CSV', run: saveCsv },
                { label: 'Picture as PNG', run: () => void savePicture('png') },
                { label: 'Picture as SVG', run: () => void savePicture('svg') },
              ]}
            />
          )}
        </FittingList>
        <div className="mapactions">
          <RowActions
            found={found}
            words={chosen ? partWords(chosen, order, units) : ''}
            refused={chosen?.value === null ? 'The car cannot be put together so.' : null}
          />
        </div>
        <Legend picture={picture} entry={entry} second={second?.entry ?? null} marks={marks} />
        <p className="quiet mapnote">
          {answer.onSteps
            ? 'Press a step to try it; arrows walk step by step. Limits are judged where the car stands.'
            : 'The parts have too many real steps to draw each of them. Limits are judged where the car stands.'}
        </p>
      </aside>
    </div>
  );
};

interface ReadoutProps {
  readonly point: MapPoint | null;
  readonly answer: MapAnswer;
  readonly sides: Sides;
  readonly entry: ReadingEntry;
  readonly second: ReadingEntry | null;
}

const Readout = ({ point, answer, sides, entry, second }: ReadoutProps) => {
  const units = useUnits();
  if (!point) return null;
  const at = (side: MapSide, share: number): string => {
    const value = side.range[0] + share * (side.range[1] - side.range[0]);
    return withUnit(side.shown.format(value), side.shown.unit);
  };
  const value = valueAt(answer.z, point);
  const [column, row] = [Math.round(point[0] * (answer.x.length - 1)), Math.round(point[1] * (answer.y.length - 1))];
  return (
    <p className="mapreadout" aria-hidden="true">
      {at(sides.x, point[0])} · {at(sides.y, point[1])}{' '}
      <b>{value === null ? (answer.why[`${row},${column}`] ?? 'no value') : written(value, entry, units)}</b>
      {second && answer.second && value !== null && <> · {written(valueAt(answer.second, point), second, units)}</>}
    </p>
  );
};
