import { useId, useMemo, useRef, type KeyboardEvent, type PointerEvent, type Ref } from 'react';
import { decimalsOfStep, motionStep, ticksOf } from '../../curves/plotScale';
import { useSize } from '../../curves/useSize';
import { formatSigned } from '../../units/format';
import { figuresOn, type FigurePlace, type MapPoint } from './contourLines';
import { axisTitle } from './mapAxis';
import type { MapPicture } from './mapPicture';
import { shareIn, type MapMark, type MapSide } from './mapPlaces';
import type { MapStep } from './mapSteps';

/** Room beside the frame for numerals and titles [px]. */
const MARGIN = { left: 66, right: 14, top: 14, bottom: 46 } as const;

interface MapPlotProps {
  readonly picture: MapPicture;
  readonly x: MapSide;
  readonly y: MapSide;
  readonly steps: readonly MapStep[];
  readonly chosen: MapStep | null;
  readonly now: MapMark | null;
  readonly compared: MapMark | null;
  /** spoken name of the whole */
  readonly label: string;
  readonly describedBy: string;
  readonly drawing: Ref<SVGSVGElement>;
  /** the place under the pointer, in parts of the map; null: it left */
  readonly onPoint: (at: MapPoint | null) => void;
  /** a place that was pressed */
  readonly onPress: (at: MapPoint) => void;
  /** steps along either side, asked for by keys */
  readonly onWalk: (columns: number, rows: number) => void;
  readonly onHome: () => void;
  readonly onTake: () => void;
}

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const pathOf = (points: readonly MapPoint[], { left, top, width, height }: Frame): string =>
  points
    .map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${(left + x * width).toFixed(1)},${(top + (1 - y) * height).toFixed(1)}`)
    .join('');
const ringsPath = (rings: readonly (readonly MapPoint[])[], frame: Frame): string =>
  rings.map((ring) => `${pathOf(ring, frame)}Z`).join('');
const linesPath = (lines: readonly (readonly MapPoint[])[], frame: Frame): string =>
  lines.map((line) => pathOf(line, frame)).join('');

const WALKS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  PageUp: [0, 5],
  PageDown: [0, -5],
};

/** The map: tones and lines of the reading, what is wanted and forbidden, the real steps and where the car stands. */
export const MapPlot = (props: MapPlotProps) => {
  const place = useRef<HTMLDivElement>(null);
  const size = useSize(place);
  const id = useId();
  const { picture, x, y } = props;
  const frame = useMemo<Frame | null>(() => {
    const [width, height] = [size.width - MARGIN.left - MARGIN.right, size.height - MARGIN.top - MARGIN.bottom];
    return width < 60 || height < 60 ? null : { left: MARGIN.left, top: MARGIN.top, width, height };
  }, [size]);
  const pointOf = (event: PointerEvent<SVGSVGElement>): MapPoint | null => {
    if (!frame) return null;
    const bounds = event.currentTarget.getBoundingClientRect();
    const at: MapPoint = [
      (event.clientX - bounds.left - frame.left) / frame.width,
      1 - (event.clientY - bounds.top - frame.top) / frame.height,
    ];
    return at.some((share) => share < 0 || share > 1) ? null : at;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const walk = WALKS[event.key];
    if (!walk && event.key !== 'Home' && event.key !== 'Enter') return;
    event.preventDefault();
    event.stopPropagation();
    if (walk) props.onWalk(walk[0] * (event.shiftKey ? 5 : 1), walk[1] * (event.shiftKey ? 5 : 1));
    else if (event.key === 'Home') props.onHome();
    else props.onTake();
  };
  return (
    <div
      ref={place}
      className="mapplot"
      role="application"
      aria-roledescription="map"
      aria-label={props.label}
      aria-describedby={props.describedBy}
      tabIndex={0}
      onKeyDown={onKeyDown}
    >
      <svg
        ref={props.drawing}
        className="mapsvg"
        width="100%"
        height="100%"
        aria-hidden="true"
        onPointerMove={(event) => props.onPoint(pointOf(event))}
        onPointerLeave={() => props.onPoint(null)}
        onPointerDown={(event) => {
          const at = pointOf(event);
          if (at) props.onPress(at);
        }}
      >
        {frame && (
          <>
            <Ground picture={picture} frame={frame} id={id} />
            <Axes x={x} y={y} frame={frame} />
            <Steps {...props} frame={frame} />
            <Marks {...props} frame={frame} />
          </>
        )}
      </svg>
    </div>
  );
};

/** Tone that all layers together reach. */
const DEEPEST = 0.5;

const Ground = ({ picture, frame, id }: { readonly picture: MapPicture; readonly frame: Frame; readonly id: string }) => {
  const { left, top, width, height } = frame;
  const hatch = `${id}-hatch`;
  const clip = `${id}-clip`;
  const taken: FigurePlace[] = [];
  const shade = picture.tones.length === 0 ? 0 : 1 - Math.exp(Math.log(1 - DEEPEST) / picture.tones.length);
  const figures = figuresOn(
    [
      ...(picture.wanted?.lines ?? []).map((line) => ({ line, text: picture.wanted?.text ?? '' })),
      ...(picture.second?.threshold?.lines ?? []).map((line) => ({ line, text: picture.second?.threshold?.text ?? '' })),
    ],
    frame,
    taken,
  );
  const ownFigures = figuresOn(
    picture.lines.flatMap(({ lines, text }) => lines.map((line) => ({ line, text }))),
    frame,
    taken,
  );
  const secondFigures = figuresOn(
    (picture.second?.lines ?? []).flatMap(({ lines, text }) => lines.map((line) => ({ line, text }))),
    frame,
    taken,
  );
  const rules = rulePlaces(picture, frame);
  return (
    <>
      <defs>
        <clipPath id={clip}>
          <rect x={left} y={top} width={width} height={height} />
        </clipPath>
        <pattern id={hatch} width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="hatchline" d="M0,0V8" />
        </pattern>
      </defs>
      <rect className="mapground" x={left} y={top} width={width} height={height} />
      <g clipPath={`url(#${clip})`}>
        {picture.tones.map(({ level, rings }) => (
          <path key={level} className="tone" fillOpacity={shade.toFixed(4)} fillRule="evenodd" d={ringsPath(rings, frame)} />
        ))}
        {picture.wanted && <path className="wantedband" fillRule="evenodd" d={ringsPath(picture.wanted.band, frame)} />}
        {picture.blank.length > 0 && <path className="blank" fillRule="evenodd" d={ringsPath(picture.blank, frame)} />}
        {picture.lines.map(({ level, lines }) => (
          <path key={level} className="isoline" d={linesPath(lines, frame)} />
        ))}
        {picture.second?.lines.map(({ text, lines }) => (
          <path key={text} className="secondline" d={linesPath(lines, frame)} />
        ))}
        {picture.limits.map(({ words, area }) => (
          <g key={words}>
            <path className="forbidden" fill={`url(#${hatch})`} fillRule="evenodd" d={ringsPath(area.rings, frame)} />
            <path className="limitedge" d={linesPath(area.lines, frame)} />
          </g>
        ))}
        {picture.second?.threshold && <path className="thresholdline" d={linesPath(picture.second.threshold.lines, frame)} />}
        {picture.wanted && <path className="wantedline" d={linesPath(picture.wanted.lines, frame)} />}
      </g>
      <rect className="mapframe" x={left} y={top} width={width} height={height} />
      <Figures of={secondFigures} frame={frame} className="figure light" />
      <Figures of={ownFigures} frame={frame} className="figure" />
      <Figures of={figures} frame={frame} className="figure strong" />
      {rules.map(({ words, x, y, width: wide }) => (
        <g key={words}>
          <rect className="ruleplate" x={x} y={y} width={wide} height={20} />
          <text className="rulewords" x={x + 7} y={y + 14}>
            {words}
          </text>
        </g>
      ))}
    </>
  );
};

const Figures = ({
  of,
  frame,
  className,
}: {
  readonly of: readonly FigurePlace[];
  readonly frame: Frame;
  readonly className: string;
}) =>
  of.map(({ x, y, text }) => (
    <text
      key={`${text},${x.toFixed(0)},${y.toFixed(0)}`}
      className={className}
      x={frame.left + x}
      y={frame.top + y + 4}
      textAnchor="middle"
    >
      {text}
    </text>
  ));

/** Width of a letter of the rules, on the wide side [px]. */
const LETTER = 5.7;

/** Where the rules stand: inside their forbidden area near its edge, one under the other where they meet. */
const rulePlaces = (
  { limits }: MapPicture,
  { left, top, width, height }: Frame,
): readonly { readonly words: string; readonly x: number; readonly y: number; readonly width: number }[] => {
  const placed: { words: string; x: number; y: number; width: number }[] = [];
  for (const { words, area } of limits) {
    const wide = words.length * LETTER + 14;
    const ring = [...area.rings].sort((a, b) => spread(b) - spread(a))[0] ?? [];
    const middle: MapPoint = [mean(ring.map(([x]) => x)), mean(ring.map(([, y]) => y))];
    const x = Math.min(left + width - wide - 6, Math.max(left + 6, left + middle[0] * width - wide / 2));
    let y = Math.min(top + height - 26, Math.max(top + 6, top + (1 - middle[1]) * height - 10));
    const hits = () => placed.some((other) => Math.abs(other.y - y) < 24 && x < other.x + other.width && other.x < x + wide);
    for (let tries = 0; tries < 12 && hits(); tries += 1) y = y + 24 > top + height - 26 ? top + 6 : y + 24;
    placed.push({ words, x, y, width: wide });
  }
  return placed;
};
const mean = (values: readonly number[]): number => (values.length === 0 ? 0.5 : (Math.min(...values) + Math.max(...values)) / 2);
const spread = (ring: readonly MapPoint[]): number => {
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
  return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
};

/** Room for a numeral along either side [px]. */
const ACROSS = 56;
const DOWN = 40;

const Axes = ({ x, y, frame }: { readonly x: MapSide; readonly y: MapSide; readonly frame: Frame }) => {
  const { left, top, width, height } = frame;
  const ends = ({ shown, range }: MapSide): readonly [number, number] => [shown.toShown(range[0]), shown.toShown(range[1])];
  const [xEnds, yEnds] = [ends(x), ends(y)];
  const stepOf = (side: MapSide, span: number, parts: number): number =>
    side.shown.unit === '°' && span > 60
      ? ([15, 30, 45, 90].find((step) => span / step <= parts) ?? 90)
      : motionStep(span, parts);
  const xStep = stepOf(x, xEnds[1] - xEnds[0], Math.max(1, Math.floor(width / ACROSS)));
  const yStep = stepOf(y, yEnds[1] - yEnds[0], Math.max(1, Math.floor(height / DOWN)));
  const bottom = top + height;
  const middle = top + height / 2;
  return (
    <>
      {ticksOf(xEnds, xStep).map((tick) => {
        const at = left + shareIn(tick, xEnds) * width;
        return (
          <g key={tick}>
            <path className="tick" d={`M${at},${bottom}v6`} />
            <text className="numeral" x={at} y={bottom + 18} textAnchor="middle">
              {formatSigned(tick, decimalsOfStep(xStep))}
            </text>
          </g>
        );
      })}
      {ticksOf(yEnds, yStep).map((tick) => {
        const at = top + (1 - shareIn(tick, yEnds)) * height;
        return (
          <g key={tick}>
            <path className="tick" d={`M${left},${at}h-6`} />
            <text className="numeral" x={left - 10} y={at + 4} textAnchor="end">
              {formatSigned(tick, decimalsOfStep(yStep))}
            </text>
          </g>
        );
      })}
      <text className="axistitle" x={left + width / 2} y={bottom + 38} textAnchor="middle">
        {axisTitle(x.shown)}
      </text>
      <text className="axistitle" x={14} y={middle} textAnchor="middle" transform={`rotate(-90 14 ${middle})`}>
        {axisTitle(y.shown)}
      </text>
    </>
  );
};

/** Dots nearer than this to each other say nothing [px]. */
const LEAST_SPACING = 4;

const Steps = ({ steps, x, y, chosen, frame }: MapPlotProps & { readonly frame: Frame }) => {
  const { left, top, width, height } = frame;
  const columns = new Set(steps.map(({ column }) => column)).size;
  const rows = new Set(steps.map(({ row }) => row)).size;
  const isDense = width / Math.max(1, columns - 1) < LEAST_SPACING || (rows > 1 && height / (rows - 1) < LEAST_SPACING);
  const at = (step: Pick<MapStep, 'x' | 'y'>): readonly [number, number] => [
    left + shareIn(step.x, x.range) * width,
    top + (1 - shareIn(step.y, y.range)) * height,
  ];
  return (
    <>
      {steps.map((step) => {
        const [cx, cy] = at(step);
        const key = `${step.column},${step.row}`;
        if (step.fits) return <circle key={key} className="stepfits" cx={cx} cy={cy} r="5.5" />;
        if (isDense) return null;
        return <circle key={key} className={step.isAllowed ? 'step' : 'step forbiddenstep'} cx={cx} cy={cy} r="1.7" />;
      })}
      {chosen && <circle className="stepchosen" cx={at(chosen)[0]} cy={at(chosen)[1]} r="8.5" />}
    </>
  );
};

const Marks = ({ now, compared, x, y, frame }: MapPlotProps & { readonly frame: Frame }) => {
  const { left, top, width, height } = frame;
  const at = (mark: MapMark): readonly [number, number] => [
    left + shareIn(mark.x, x.range) * width,
    top + (1 - shareIn(mark.y, y.range)) * height,
  ];
  const nameplate = (mark: MapMark, [cx, cy]: readonly [number, number], className: string) => {
    const wide = mark.name.length * 6.4 + 13;
    const isRight = cx + 18 + wide < left + width;
    const px = isRight ? cx + 16 : cx - 16 - wide;
    const py = Math.min(top + height - 24, cy + 8);
    return (
      <>
        <rect className="markplate" x={px} y={py} width={wide} height={20} />
        <text className={className} x={px + 6} y={py + 14}>
          {mark.name}
        </text>
      </>
    );
  };
  const isOn = (mark: MapMark | null): mark is MapMark =>
    mark !== null && [shareIn(mark.x, x.range), shareIn(mark.y, y.range)].every((share) => share > -0.001 && share < 1.001);
  return (
    <>
      {isOn(compared) && (
        <g>
          <path className="comparedmark" d={`M${at(compared)[0]},${at(compared)[1] - 7}l7,7l-7,7l-7,-7z`} />
          {nameplate(compared, at(compared), 'markname')}
        </g>
      )}
      {isOn(now) && (
        <g>
          <circle className="nowring" cx={at(now)[0]} cy={at(now)[1]} r="7" />
          <path className="nowcross" d={`M${at(now)[0] - 13},${at(now)[1]}h26M${at(now)[0]},${at(now)[1] - 13}v26`} />
          {nameplate(now, at(now), 'markname now')}
        </g>
      )}
    </>
  );
};
