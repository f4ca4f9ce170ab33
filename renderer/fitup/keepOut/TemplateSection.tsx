import { useCallback, useState } from 'react';
import { growthWords, HATCHED, ONE_PLANE, type KeepOutQuestion, type PrintedSheet, type Triple } from '../../../geometry/index';
import type { TemplateSide } from '../../compute/fitup/fitUpOrder';
import { FieldFaults, useFieldFaults } from '../../look/controls/fieldFaults';
import { saveFile } from '../../look/saveFile';
import { useUnits } from '../../look/units';
import { dayOf } from '../../sheet/sheetChoices';
import { faultyWords } from '../faultyFields';
import { FitUpProgress } from '../FitUpProgress';
import type { FitUpState } from '../useFitUp';
import './template.css';
import { TemplateForm } from './TemplateForm';
import { TemplatePrint } from './TemplatePrint';
import { templateName } from './keepOutNames';
import { planeNumbers, type TemplateAsked } from './templateAsked';
import { lengthRead } from './templateWords';
import { useTemplateFile } from './useTemplateFile';
import type { TemplateFile, TemplateFileOrder } from './writeTemplate';

interface TemplateSectionProps {
  /** the car's name */
  readonly car: string;
  /** what was worked out: parts, and wheels of one axle */
  readonly question: Pick<KeepOutQuestion, 'of' | 'axles' | 'sides'>;
  /** that the plane can go through, by name, as a left wheel has them [mm] */
  readonly places: Readonly<Record<string, Triple>>;
  readonly centre: Triple;
  readonly asked: TemplateAsked;
  readonly onAsk: (asked: TemplateAsked) => void;
  /** the sections of the plane that is asked for; null until they are there */
  readonly sides: readonly TemplateSide[] | null;
  /** radius and margin in what was worked out [mm] */
  readonly grow: number;
  readonly state: FitUpState;
  readonly onCancel: () => void;
  readonly onAgain: () => void;
  /** what was worked out is of another question */
  readonly isOld: boolean;
}

const NOTHING = () => undefined;
const NO_WAY = 'it is looked at along 0, 0, 0, which is no direction; along 0, 1, 0 it is looked at from outboard';

/** From the space that is swept to card in the hand: where it is cut, what it takes, and the ways to paper and to a cutter. */
export const TemplateSection = (props: TemplateSectionProps) => {
  const { car, question, places, centre, asked, onAsk, sides, grow, state, onCancel, onAgain, isOld } = props;
  const units = useUnits();
  const file = useTemplateFile();
  const [printed, print] = useState<PrintedSheet['pages'] | null>(null);
  const printedOff = useCallback(() => print(null), []);
  const [faulty, tellFault] = useFieldFaults();
  const drawn = (sides ?? []).flatMap((one) => ('drawing' in one ? [one] : []));
  const isReady = drawn.length > 0 && !isOld && faulty.length === 0;
  // a button that is disabled loses the keys: while a file is written it stays, and does nothing
  const isWriting = file.state.kind === 'running';
  const sheets = drawn.map(({ grid }) => grid);
  const tooMany = sheets.flatMap((grid) => ('fault' in grid ? [grid.message] : []));
  const count = sheets.reduce((sum, grid) => sum + ('fault' in grid ? 0 : grid.tiles.length), 0);
  const numbers = planeNumbers(asked, centre);
  const nameOf = (of: typeof drawn): string =>
    templateName(car, { ...question, sides: of.map(({ side }) => side) }, asked, numbers);
  const isNoWay = asked.way === 'own' && asked.normal.every((part) => part === 0);
  const ask = (kind: TemplateFileOrder['kind'], of: typeof drawn, take: (made: TemplateFile) => void) =>
    !isWriting &&
    file.ask({ kind, drawings: of.map(({ drawing }) => drawing), paper: asked.paper, date: dayOf(new Date()) }, take);
  const savePdf = () =>
    ask('pdf', drawn, (made) => {
      if (made.kind === 'pdf') saveFile(`${nameOf(drawn)}.pdf`, new Blob([made.bytes], { type: 'application/pdf' }));
    });
  const saveDxf = (one: (typeof drawn)[number]) =>
    ask('dxf', [one], (made) => {
      if (made.kind === 'dxf') saveFile(`${nameOf([one])}.dxf`, new Blob([...made.texts], { type: 'image/vnd.dxf' }));
    });
  const isPaper = isReady && tooMany.length === 0;
  return (
    <section className="templatesection" aria-label="Template">
      <h2>Template: its section at true scale, to cut out of card and hold in the arch</h2>
      <FieldFaults value={tellFault}>
        <TemplateForm places={places} centre={centre} sides={question.sides} asked={asked} onAsk={onAsk} />
      </FieldFaults>
      {faulty.length > 0 && (
        <p className="fitupnote watch" role="status">
          {faultyWords(faulty)}
        </p>
      )}
      <FitUpProgress state={state} isOld={false} onCancel={onCancel} onAgain={onAgain} />
      <FitUpProgress state={file.state} isOld={false} onCancel={file.cancel} onAgain={NOTHING} />
      {(sides ?? []).map((one) =>
        'message' in one ? (
          <p key={one.side} className="fitupnote watch" role="alert">
            <b>No section on the {one.side}:</b> {isNoWay ? NO_WAY : one.message}.
          </p>
        ) : null,
      )}
      {tooMany.slice(0, 1).map((message) => (
        <p key={message} className="fitupnote watch" role="alert">
          <b>Not on paper:</b> {message}.
        </p>
      ))}
      <p className="caserow keepoutrow">
        <button
          type="button"
          className="button primary"
          disabled={!isPaper}
          aria-disabled={isWriting || undefined}
          onClick={savePdf}
        >
          Save PDF
        </button>
        {drawn.map((one) => (
          <button
            key={one.side}
            type="button"
            className="button"
            disabled={!isReady}
            aria-disabled={isWriting || undefined}
            onClick={() => saveDxf(one)}
          >
            Save DXF{drawn.length > 1 ? `, ${one.side}` : ''}
          </button>
        ))}
        <button
          type="button"
          className="button"
          disabled={!isPaper}
          aria-disabled={isWriting || undefined}
          onClick={() => ask('pages', drawn, (made) => made.kind === 'pages' && print(made.pages))}
        >
          Print
        </button>
        <span className="quiet" role="status">
          {count > 0 && `${count} ${count === 1 ? 'sheet' : 'sheets'} of ${asked.paper} and the words before them`}
        </span>
      </p>
      <p className="quiet keepoutrow">
        {HATCHED} {growthWords(grow, lengthRead(units))} {ONE_PLANE}
      </p>
      <p className="quiet keepoutrow">
        Print at 100 %, not fitted to the page, and measure both bars of every sheet: 100 mm each. Points stand as at design.
      </p>
      {printed && <TemplatePrint pages={printed} paper={asked.paper} onDone={printedOff} />}
    </section>
  );
};
