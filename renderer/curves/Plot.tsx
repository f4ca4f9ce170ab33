import { useId, useMemo, useRef } from 'react';
import { CATALOGUE, numberNamesOf } from '../../geometry/index';
import { saveFile } from '../look/saveFile';
import { useBench } from '../shell/benchContext';
import { useUnits } from '../look/units';
import { shownQuantity, shownReading, type ShownQuantity } from '../units/shownQuantity';
import { unitBeside } from '../units/unitBeside';
import { curveCsv } from './curveCsv';
import { comparedValues, spokenValues } from './cursorWords';
import { cursorValues, readingOfNumber, type PlotContent } from './plotContent';
import { PlotCursor } from './PlotCursor';
import { PlotDrawing } from './PlotDrawing';
import { gapsOf } from './plotLines';
import { PlotMenu } from './PlotMenu';
import { clampRange, type Range } from './plotScale';
import { plotPng, plotSvg } from './savePlot';
import { usePlotFrame } from './usePlotFrame';
import { usePlotHand } from './usePlotHand';
import { useSize } from './useSize';
import { carTitle } from '../state/carTitle';

/** Pixels of a picture for each of the screen: sharp in print. */
const PNG_SCALE = 3;

export interface PlotProps {
  readonly content: PlotContent;
  readonly place: number;
  /** "bump", and its unit */
  readonly motion: { readonly name: string; readonly shown: ShownQuantity };
  /** in the units shown */
  readonly x: Range;
  readonly whole: Range;
  readonly isZoomed: boolean;
  readonly cursor: number;
  readonly isDragged: boolean;
  readonly setup: string;
  readonly compared: string | null;
  readonly hintId: string;
  readonly onChoose: (number: string) => void;
  readonly onRemove: (() => void) | null;
  readonly onMove: (input: number) => void;
  readonly onMoveBack: (input: number) => void;
  readonly onStep: (steps: number) => void;
  readonly onZoom: (x: Range | null) => void;
}

const READINGS = [...new Set(CATALOGUE.map(({ group }) => group))].map((group) => ({
  group,
  numbers: CATALOGUE.filter((entry) => entry.group === group).flatMap((entry) => numberNamesOf(entry)),
}));

const ReadingChoice = ({
  place,
  number,
  unit,
  onChoose,
}: {
  place: number;
  number: string;
  unit: string;
  onChoose: (number: string) => void;
}) => (
  <label className="plotname">
    <span className="named">
      {readingOfNumber(number)?.name} <span className="unit">{unitBeside(readingOfNumber(number)?.name ?? '', unit)}</span>
    </span>
    <select aria-label={`Reading of curve ${place + 1}`} value={number} onChange={(event) => onChoose(event.target.value)}>
      {READINGS.map(({ group, numbers }) => (
        <optgroup key={group} label={group}>
          {numbers.map((one) => (
            <option key={one} value={one}>
              {readingOfNumber(one)?.name}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  </label>
);

/** Least width of what can be zoomed to, as a part of the whole motion. */
const CLOSEST = 0.02;

/** In brackets, since inches would read as words: "toe in". */
const inBrackets = (unit: string): string => (unit === '' ? '' : ` (${unit})`);

/** One reading over the motion, with its values at the cursor. */
export const Plot = (props: PlotProps) => {
  const { content, motion, x, whole, cursor, setup, compared } = props;
  const place = useRef<HTMLDivElement>(null);
  const drawing = useRef<SVGSVGElement>(null);
  const clip = useId();
  const size = useSize(place);
  const { frame, isZoomed, zoomTo } = usePlotFrame(size, content, x, props.isDragged);
  const isWhole = !isZoomed && !props.isZoomed;
  const shown = useBench((state) => (state.answer?.ok ? state.shown : null));
  const values = useMemo(() => shown && cursorValues(shown, content.number), [shown, content.number]);
  const car = useBench(carTitle);
  const entry = readingOfNumber(content.number)?.entry;
  const chosen = useUnits();
  const units = useMemo(
    () => (entry ? shownReading(entry, chosen) : shownQuantity({ quantity: 'ratio', decimals: 0 }, chosen)),
    [entry, chosen],
  );
  const showWhole = () => {
    zoomTo(null);
    props.onZoom(null);
  };
  const { box, handlers } = usePlotHand(drawing, frame, cursor, {
    moveTo: props.onMove,
    moveBack: props.onMoveBack,
    stepBy: props.onStep,
    zoomTo: (nextX, nextY) => {
      zoomTo(nextY);
      props.onZoom(clampRange(nextX, whole, CLOSEST * (whole[1] - whole[0])));
    },
    showWhole,
  });

  const written = (value: number | null) => (value === null ? '–' : units.format(value));
  const hasSides = content.own?.right !== null && entry?.of === 'corner';
  const spoken = values ? spokenValues(values, compared, hasSides, written) : 'no position';
  const title = `${content.name}${inBrackets(content.unit)} over ${motion.name}${inBrackets(motion.shown.unit)}`;
  const legend = [
    hasSides ? 'left: solid, round' : '',
    hasSides ? 'right: dashed, square' : '',
    setup,
    compared === null ? '' : `dotted: ${compared}${hasSides ? ', its right side in wider dots where it differs' : ''}`,
  ].filter((part) => part !== '');
  const gap =
    content.own && content.why === null
      ? gapsOf(content.own.inputs, content.own.left.values, content.own.left.why)[0]
      : undefined;

  const saveCsv = () => {
    const setups = [
      { name: setup, lines: content.own },
      { name: compared ?? '', lines: content.compared },
    ].flatMap(({ name, lines }) => (lines ? [{ name, lines }] : []));
    const csv = curveCsv({
      input: `${motion.name} [${motion.shown.unit}]`,
      reading: content.unit === '' ? content.name : `${content.name} [${content.unit}]`,
      setups,
    });
    saveFile(`${content.name} over ${motion.name}, ${setup}.csv`, new Blob([csv], { type: 'text/csv' }));
  };
  const savePicture = async (kind: 'svg' | 'png') => {
    if (!drawing.current) return;
    const svg = plotSvg(drawing.current, car === null ? title : `${car}: ${title}`, legend);
    const blob = kind === 'svg' ? new Blob([svg], { type: 'image/svg+xml' }) : await plotPng(svg, PNG_SCALE);
    if (blob) saveFile(`${content.name} over ${motion.name}, ${setup}.${kind}`, blob);
  };

  return (
    <div className="plotbox" role="group" aria-label={title}>
      <div className="plothead">
        <ReadingChoice place={props.place} number={content.number} unit={content.unit} onChoose={props.onChoose} />
        <span className="cursorvalues" title={`at the cursor: ${spoken}`}>
          {values && (
            <>
              <span className="own">
                <span className={hasSides ? 'left' : undefined}>{written(values.left)}</span>
                {hasSides && <span className="right">{written(values.right)}</span>}
              </span>
              {compared !== null && (
                <span className="others">
                  {comparedValues(values, hasSides, written).map(({ side, text }) => (
                    <span key={side} className="ghost">
                      {side !== null && <b>{side}</b>} {text}
                    </span>
                  ))}
                </span>
              )}
            </>
          )}
        </span>
        <PlotMenu
          of={content.name}
          items={[
            { label: 'Table as CSV', run: saveCsv },
            { label: 'Picture as PNG', run: () => void savePicture('png') },
            { label: 'Picture as SVG', run: () => void savePicture('svg') },
            ...(isWhole ? [] : [{ label: 'Show the whole', run: showWhole }]),
            ...(props.onRemove ? [{ label: 'Take this curve away', run: props.onRemove }] : []),
          ]}
        />
      </div>
      <div
        ref={place}
        className="plot"
        role="slider"
        tabIndex={0}
        aria-label={`${content.name} over ${motion.name}: cursor`}
        aria-valuenow={cursor}
        aria-valuemin={whole[0]}
        aria-valuemax={whole[1]}
        aria-valuetext={`${motion.name} ${motion.shown.format(cursor)} ${motion.shown.unit}: ${spoken}`}
        aria-describedby={props.hintId}
        onKeyDown={handlers.onKeyDown}
      >
        <svg
          ref={drawing}
          className="plotsvg"
          width="100%"
          height="100%"
          aria-hidden="true"
          onPointerDown={handlers.onPointerDown}
          onMouseDown={handlers.onMouseDown}
          onPointerMove={handlers.onPointerMove}
          onPointerUp={handlers.onPointerUp}
          onPointerCancel={handlers.onPointerCancel}
          onDoubleClick={handlers.onDoubleClick}
        >
          {frame && (
            <>
              <PlotDrawing frame={frame} content={content} clip={clip} />
              <PlotCursor
                frame={frame}
                at={cursor}
                values={values ? [values.left, values.right].map((value) => (value === null ? null : units.toShown(value))) : []}
              />
              {box && (
                <rect className="zoombox" x={box.x[0]} y={box.y[0]} width={box.x[1] - box.x[0]} height={box.y[1] - box.y[0]} />
              )}
            </>
          )}
        </svg>
        {content.why !== null && <p className="plotwhy">{content.why}</p>}
        {gap && (
          <p className="plotgap" title={gap.why}>
            gap: {gap.why}
          </p>
        )}
      </div>
    </div>
  );
};
