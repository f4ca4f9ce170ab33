import { findReading, type AxleName, type SideName } from '../../geometry/index';
import { wheelFigures, type WheelFigure } from '../compute/wheelFigures';
import { useUnits } from '../look/units';
import { useBench, useWindow } from '../shell/benchContext';
import { chooseAxle } from '../state/actions/lookAt';
import { chooseScope } from '../state/actions/viewing';
import { scopeOf } from '../state/viewing';
import type { BenchState } from '../state/benchStore';
import { shownReading, type ShownQuantity } from '../units/shownQuantity';
import { unitBeside } from '../units/unitBeside';
import { useShort, useStrip } from './useShort';
import { PLAN, wheelPlace, wheelTurn } from './wheelPlaces';
import './picker.css';

const NONE: readonly WheelFigure[] = [];
const NAMES: Readonly<Record<AxleName, string>> = { front: 'Front', rear: 'Rear' };

/** Of what is shown: where a position cannot be reached that is the last one that could. */
const figuresShown = ({ shown }: BenchState): readonly WheelFigure[] =>
  shown ? wheelFigures(shown.row.car, shown.position) : NONE;

/** What the figures are of: the position that is asked for, one of many while a ride is played, or the last that could be reached. */
type FiguresState = 'there' | 'moving' | 'last reached';

interface Shown {
  readonly camber: ShownQuantity;
  readonly toe: ShownQuantity;
}

const useShown = (): Shown | null => {
  const units = useUnits();
  const [camber, toe] = [findReading('camber'), findReading('toe')];
  return camber && toe ? { camber: shownReading(camber, units), toe: shownReading(toe, units) } : null;
};

const withUnit = (text: string, unit: string): string => `${text}${unit === '°' || unit === '' ? unit : ` ${unit}`}`;
const camberText = ({ camber }: WheelFigure, shown: Shown): string =>
  camber === null ? '–' : withUnit(shown.camber.format(camber), shown.camber.unit);
const toeText = ({ toe }: WheelFigure, shown: Shown): string =>
  toe === null ? '–' : withUnit(shown.toe.formatChange(toe), shown.toe.unit);

/** Across the rim the unit stands once, in the head of the plan: beside the wheels there is no room for it. */
const hasLengthToe = ({ toe }: Shown): boolean => toe.unit !== '°' && toe.unit !== '';

const Wheel = ({ figure, isChosen }: { readonly figure: WheelFigure; readonly isChosen: boolean }) => {
  const { x, y } = wheelPlace(figure.axle, figure.side);
  return (
    <g transform={`translate(${x} ${y}) rotate(${wheelTurn(figure.toe, figure.side)})`}>
      <rect className={isChosen ? 'wheel chosen' : 'wheel'} x="-6" y="-14" width="12" height="28" rx="2.5" />
    </g>
  );
};

/** The car seen from above: each wheel with its camber over its toe, and its own button. */
const Plan = ({
  figures,
  axle,
  side,
  shown,
  state,
  isStrip,
  onChoose,
}: {
  readonly figures: readonly WheelFigure[];
  readonly axle: AxleName;
  readonly side: SideName;
  readonly shown: Shown;
  readonly state: FiguresState;
  /** under the view, not over it */
  readonly isStrip: boolean;
  readonly onChoose: (axle: AxleName, side: SideName) => void;
}) => (
  <div className="picker" role="group" aria-label="Corner of the car" data-over-view={isStrip ? undefined : true}>
    <p className="caption">
      <b>
        {NAMES[axle]} {side}
      </b>
      <span title="The wheels are drawn with ten times their toe">
        {state === 'there' ? `camber, toe${hasLengthToe(shown) ? ` ${unitBeside('toe', shown.toe.unit)}` : ''}` : state}
      </span>
    </p>
    <div className="plan">
      <svg width={PLAN.width} height={PLAN.height} viewBox={`0 0 ${PLAN.width} ${PLAN.height}`} aria-hidden="true">
        <path className="body" d="M60,14C64,7 94,7 98,14L101,40V118C101,130 96,136 79,136C62,136 57,130 57,118V40Z" />
        <path className="body" d="M63,50c8,-5 24,-5 32,0l-3,12h-26zM65,112h28l2,10h-32z" />
        <path className="middleline" d="M79,2v136" />
        {figures.map((figure) => (
          <Wheel key={`${figure.axle} ${figure.side}`} figure={figure} isChosen={figure.axle === axle && figure.side === side} />
        ))}
      </svg>
      {figures.map((figure) => {
        const isChosen = figure.axle === axle && figure.side === side;
        const [camber, toe] = [camberText(figure, shown), toeText(figure, shown)];
        const words = `${NAMES[figure.axle]} ${figure.side}: camber ${camber}, toe ${toe}`;
        return (
          <button
            key={`${figure.axle} ${figure.side}`}
            type="button"
            className={`corner ${figure.axle} ${figure.side}${figure.axle === axle ? '' : ' otheraxle'}`}
            aria-pressed={isChosen}
            aria-label={words}
            title={words}
            onClick={() => onChoose(figure.axle, figure.side)}
          >
            <b className="which" aria-hidden="true">
              {NAMES[figure.axle].charAt(0)}
              {figure.side === 'left' ? 'L' : 'R'}
            </b>
            <span>{camber}</span>
            <span className="toe">
              {!isStrip && figure.toe !== null && hasLengthToe(shown) ? shown.toe.formatChange(figure.toe) : toe}
            </span>
          </button>
        );
      })}
    </div>
  </div>
);

/** One line where the view shows both corners, and each wheel carries its own figures, or has no height for the plan. */
const Folded = ({
  figures,
  axle,
  shown,
  state,
  isStrip,
}: {
  readonly figures: readonly WheelFigure[];
  readonly axle: AxleName;
  readonly shown: Shown;
  readonly state: FiguresState;
  readonly isStrip: boolean;
}) => (
  <p className="picker folded" data-over-view={isStrip ? undefined : true}>
    <b>{NAMES[axle]}</b>
    {figures
      .filter((figure) => figure.axle === axle)
      .map((figure) => (
        <span key={figure.side} className={figure.side}>
          {figure.side === 'left' ? 'L' : 'R'} {camberText(figure, shown)} {toeText(figure, shown)}
        </span>
      ))}
    <span className="quiet">{state === 'there' ? 'camber, toe' : state}</span>
  </p>
);

/** Which corner is looked at: the plan of the car with camber and toe of every wheel. */
export const CornerPicker = () => {
  const { store } = useWindow();
  const figures = useBench(figuresShown);
  const axle = useBench((state) => state.axle);
  const scope = useBench((state) => scopeOf(state.preferences));
  const state = useBench(({ answer, isPlaying }): FiguresState =>
    answer?.ok === false ? 'last reached' : isPlaying ? 'moving' : 'there',
  );
  const isLaid = useBench((state) => state.viewing.layout.length > 0);
  const isShort = useShort();
  const isStrip = useStrip();
  const shown = useShown();
  if (figures.length === 0 || !shown || isLaid) return null;
  if (isShort || scope === 'axle' || scope === 'car')
    return <Folded figures={figures} axle={axle} shown={shown} state={state} isStrip={isStrip} />;
  return (
    <Plan
      figures={figures}
      axle={axle}
      side={scope}
      shown={shown}
      state={state}
      isStrip={isStrip}
      onChoose={(nextAxle, side) => {
        chooseAxle(store, nextAxle);
        chooseScope(store, side);
      }}
    />
  );
};
