import { useId, useMemo, useRef } from 'react';
import { CATALOGUE, numberNamesOf } from '../../../geometry/index';
import type { SweptSetup } from '../../compute/curves';
import { curveCsv } from '../../curves/curveCsv';
import { PlotCursor } from '../../curves/PlotCursor';
import { PlotDrawing } from '../../curves/PlotDrawing';
import { PlotMenu } from '../../curves/PlotMenu';
import { plotContent, readingOfNumber, type PlotContent, type PlotQuestion, type SweptLines } from '../../curves/plotContent';
import { lastInside, linePath, type PlotFrame } from '../../curves/plotLines';
import type { Range } from '../../curves/plotScale';
import { plotPng, plotSvg } from '../../curves/savePlot';
import { usePlotFrame } from '../../curves/usePlotFrame';
import { useSize } from '../../curves/useSize';
import { saveFile } from '../../look/saveFile';
import { useUnits } from '../../look/units';
import { shownQuantity, shownReading, type ShownQuantity } from '../../units/shownQuantity';

const PNG_SCALE = 3;

/** One more setup behind the curves, beside the one that is drawn with diamonds. */
export interface MoreLines {
  readonly name: string;
  readonly swept: SweptSetup;
}

interface CompareCurveProps {
  /** the same object while nothing changes */
  readonly question: Omit<PlotQuestion, 'number' | 'shown'>;
  readonly number: string;
  readonly place: number;
  readonly motion: {
    readonly name: string;
    readonly shown: ShownQuantity;
    /** rows of a list, by their number */
    readonly isCounted?: boolean;
  };
  /** in the units shown */
  readonly x: Range;
  readonly at: number | null;
  readonly setup: string;
  readonly comparedName: string | null;
  readonly more: readonly MoreLines[];
  /** null: the reading is chosen elsewhere */
  readonly onChoose: ((number: string) => void) | null;
}

const GROUPS = [...new Set(CATALOGUE.map(({ group }) => group))].map((group) => ({
  group,
  numbers: CATALOGUE.filter((entry) => entry.group === group).flatMap((entry) => numberNamesOf(entry)),
}));

/** One reading of every setup over a motion, with the menu that saves it. */
export const CompareCurve = ({
  question,
  number,
  place,
  motion,
  x,
  at,
  setup,
  comparedName,
  more,
  onChoose,
}: CompareCurveProps) => {
  const drawing = useRef<SVGSVGElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const clip = useId();
  const size = useSize(box);
  const units = useUnits();
  const shown = useMemo(() => {
    const entry = readingOfNumber(number)?.entry;
    return entry ? shownReading(entry, units) : shownQuantity({ quantity: 'ratio', decimals: 3 }, units);
  }, [number, units]);
  const { isCounted = false } = motion;
  const content = useMemo(
    () => ({ ...(plotContent({ ...question, number, shown }) ?? EMPTY), isCounted }),
    [question, number, shown, isCounted],
  );
  const extra = useMemo(
    () =>
      more.flatMap(({ name, swept }) => {
        const lines = plotContent({ ...question, number, shown, own: swept, compared: null })?.own;
        return lines ? [{ name, lines }] : [];
      }),
    [more, question, number, shown],
  );
  const ranged = useMemo<PlotContent>(() => withRange(content, extra), [content, extra]);
  const { frame } = usePlotFrame(size, ranged, x, false);
  const title = `${content.name}${content.unit === '' ? '' : ` ${content.unit}`} over ${motion.name}${isCounted ? '' : `, ${motion.shown.unit}`}`;
  const savePicture = async (kind: 'svg' | 'png') => {
    if (!drawing.current) return;
    const legend = [
      setup,
      ...(comparedName === null ? [] : [`dotted: ${comparedName}`]),
      ...more.map(({ name }, index) => `${LETTERS[index] ?? ''}: ${name}`),
    ];
    const svg = plotSvg(drawing.current, title, legend);
    const blob = kind === 'svg' ? new Blob([svg], { type: 'image/svg+xml' }) : await plotPng(svg, PNG_SCALE);
    if (blob) saveFile(`${content.name} over ${motion.name}.${kind}`, blob);
  };
  const saveCsv = () => {
    const setups = [{ name: setup, lines: content.own }, { name: comparedName ?? '', lines: content.compared }, ...extra].flatMap(
      ({ name, lines }) => (lines ? [{ name, lines }] : []),
    );
    const csv = curveCsv({
      input: isCounted ? motion.name : `${motion.name} [${motion.shown.unit}]`,
      reading: content.unit === '' ? content.name : `${content.name} [${content.unit}]`,
      setups,
    });
    saveFile(`${content.name} over ${motion.name}.csv`, new Blob([csv], { type: 'text/csv' }));
  };
  return (
    <figure className="comparecurve" aria-label={title}>
      <figcaption>
        {onChoose === null ? (
          <b>{content.name}</b>
        ) : (
          <select
            className="pick reading"
            aria-label={`Reading of curve ${place + 1}`}
            value={number}
            onChange={(event) => onChoose(event.target.value)}
          >
            {GROUPS.map(({ group, numbers }) => (
              <optgroup key={group} label={group}>
                {numbers.map((one) => (
                  <option key={one} value={one}>
                    {readingOfNumber(one)?.name}
                  </option>
                ))}
              </optgroup>
            ))}
          </select>
        )}
        <span className="unit">{content.unit}</span>
        <span className="spread" />
        <PlotMenu
          of={title}
          items={[
            { label: 'Table as CSV', run: saveCsv },
            { label: 'Picture as PNG', run: () => void savePicture('png') },
            { label: 'Picture as SVG', run: () => void savePicture('svg') },
          ]}
        />
      </figcaption>
      <div ref={box} className="plot">
        <svg ref={drawing} className="plotsvg" width="100%" height="100%" role="img" aria-label={title}>
          {frame && (
            <>
              <PlotDrawing frame={frame} content={content} clip={clip} />
              <g clipPath={`url(#${clip})`}>
                {extra.map(({ name, lines }, index) => (
                  <MoreCurve key={name} frame={frame} lines={lines} index={index} />
                ))}
              </g>
              {extra.map(({ name, lines }, index) => (
                <MoreLetter key={name} frame={frame} lines={lines} index={index} />
              ))}
              {at !== null && <PlotCursor frame={frame} at={at} values={[]} />}
            </>
          )}
        </svg>
        {content.why !== null && <p className="plotwhy">{content.why}</p>}
      </div>
    </figure>
  );
};

const EMPTY: PlotContent = {
  number: '',
  name: '',
  unit: '',
  plus: '',
  least: 1,
  isInMinutes: false,
  own: null,
  compared: null,
  measured: [],
  why: 'no such reading',
};

/** The letters at the ends of the further setups. */
export const LETTERS = ['b', 'c', 'd'];

/** The scale has to hold the further setups as well: they count as measured points of its range. */
const withRange = (content: PlotContent, extra: readonly { readonly lines: SweptLines }[]): PlotContent => {
  const values = extra
    .flatMap(({ lines }) => [...lines.left.values, ...(lines.right?.values ?? [])])
    .filter((value) => !Number.isNaN(value));
  if (values.length === 0) return content;
  const point = (value: number) => ({ input: 0, value, sigma: null, side: 'both' as const });
  const points = [point(Math.min(...values)), point(Math.max(...values))];
  return { ...content, measured: [...content.measured, { name: '', points }] };
};

const MoreCurve = ({
  frame,
  lines,
  index,
}: {
  readonly frame: PlotFrame;
  readonly lines: SweptLines;
  readonly index: number;
}) => (
  <>
    <path className={`curve more m${index}`} d={linePath(frame, lines.inputs, lines.left.values)} />
    {lines.right && <path className={`curve more m${index}`} d={linePath(frame, lines.inputs, lines.right.values)} />}
  </>
);

const MoreLetter = ({
  frame,
  lines,
  index,
}: {
  readonly frame: PlotFrame;
  readonly lines: SweptLines;
  readonly index: number;
}) => {
  const end = lastInside(frame, lines.inputs, lines.left.values);
  return end ? (
    <text className="letter" x={frame.right - 12} y={end.y - 5}>
      {LETTERS[index]}
    </text>
  ) : null;
};
