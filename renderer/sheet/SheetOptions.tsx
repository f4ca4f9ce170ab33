import { setupNames, type CarDocument } from '../../geometry/index';
import { Segments } from '../look/controls/Segments';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useWindow } from '../shell/benchContext';
import { prefer } from '../state/actions/prefer';
import type { MadeSheet } from './madeSheet';
import { PART_CHOICES, SHEET_PARTS, SHEET_PREFERENCES, withPart, type SheetChoices, type SheetPicks } from './sheetChoices';

interface SheetOptionsProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly onCar: string | null;
  readonly choices: SheetChoices;
  readonly made: MadeSheet;
  readonly onPick: (picks: Partial<SheetPicks>) => void;
}

const SetupSelect = (props: {
  readonly label: string;
  readonly value: string;
  readonly names: readonly string[];
  readonly none?: string;
  readonly onChoose: (name: string) => void;
}) => (
  <label className="sheetoption">
    <b>{props.label}</b>
    <span className="choice">
      <select value={props.value} onChange={(event) => props.onChoose(event.target.value)}>
        {props.none !== undefined && <option value="">{props.none}</option>}
        {props.names.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </span>
  </label>
);

/** What of the sheet is said before it is printed: broken rules, letters that it cannot print. */
const Notices = ({ made }: { readonly made: MadeSheet }) => {
  if (!made.ok || (made.faults.length + made.missing.length === 0 && made.sheet.leftOut === undefined)) return null;
  return (
    <div className="sheetnotices">
      {made.faults.length > 0 && (
        <span className="chip close">
          <VerdictShape verdict="close" />
          {made.faults.length === 1
            ? '1 caution of this setup is printed'
            : `${made.faults.length} cautions of this setup are printed`}
        </span>
      )}
      {made.faults.map((fault) => (
        <p key={fault}>{fault}</p>
      ))}
      {made.sheet.leftOut !== undefined && (
        <p>There is no room for the curves on two pages: they are left out, and the foot of the sheet says so.</p>
      )}
      {made.missing.length > 0 && <p>Letters that the sheet prints as question marks: {made.missing.join(' ')}</p>}
    </div>
  );
};

/** What stands on the sheet, of which setup and on which paper. */
export const SheetOptions = ({ document, setup, onCar, choices, made, onPick }: SheetOptionsProps) => {
  const { store } = useWindow();
  const names = setupNames(document);
  const { axles, clock, paper } = SHEET_PREFERENCES;
  const hasBoth = document.front !== undefined && document.rear !== undefined;
  return (
    <div className="sheetoptions scroll">
      <SetupSelect label="Setup" value={setup} names={names} onChoose={(name) => onPick({ setup: name })} />
      <SetupSelect
        label="On the car now"
        value={onCar ?? ''}
        names={names}
        none="nobody says"
        onChoose={(name) => onPick({ onCar: name })}
      />
      <div className="sheetoption">
        <b>Axles</b>
        <Segments
          label="Axles on the sheet"
          chosen={hasBoth ? choices.axles : document.front ? 'front' : 'rear'}
          options={[
            { name: 'both', label: 'Both', disabled: !hasBoth },
            { name: 'front', label: 'Front', disabled: !document.front },
            { name: 'rear', label: 'Rear', disabled: !document.rear },
          ]}
          onChoose={(name) => prefer(store, axles.name, name)}
        />
      </div>
      <div className="sheetoption">
        <b>Clock face seen from</b>
        <Segments
          label="Clock face seen from"
          chosen={choices.clock}
          options={[
            { name: 'fitter', label: 'the fitter' },
            { name: 'file', label: 'the file' },
          ]}
          onChoose={(name) => prefer(store, clock.name, name)}
        />
      </div>
      <div className="sheetoption">
        <b>Paper</b>
        <Segments
          label="Paper"
          chosen={choices.paper}
          options={paper.words.map((name) => ({ name, label: name }))}
          onChoose={(name) => prefer(store, paper.name, name)}
        />
      </div>
      <fieldset className="sheetoption">
        <legend>Put on the sheet</legend>
        {PART_CHOICES.map(({ part, label }) => (
          <label key={part} className="sheetpart">
            <input
              type="checkbox"
              checked={choices.parts[part]}
              onChange={(event) => prefer(store, SHEET_PARTS, withPart(choices.parts, part, event.target.checked))}
              disabled={part === 'changes' && onCar === null}
            />
            {part === 'changes' && onCar !== null ? `Change from ${onCar}` : label}
          </label>
        ))}
      </fieldset>
      <Notices made={made} />
    </div>
  );
};
