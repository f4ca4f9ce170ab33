import { nameOfKey, type AxleName, type CarDocument } from '../../../geometry/index';
import { PartDrawing } from '../../adjusters/parts/PartDrawing';
import { Popover } from '../../look/controls/Popover';
import { useUnits } from '../../look/units';
import { settingOf, setupNamed } from '../../state/settings';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatShort } from '../../units/format';
import { shownQuantity } from '../../units/shownQuantity';
import { pivotToBoltOf } from '../answers/turnedParts';
import { PickWords } from '../question/PlacePicker';
import { PLAIN_NUMBER } from '../question/fieldValue';
import { QuestionField } from '../question/QuestionField';
import { axlesOf } from '../question/readingChoices';
import { beginPoint, DIRECTIONS, nextId, withAllOf, type Direction, type MayForm, type ReachForm } from './reachForm';
import type { ReachFaults } from './readReach';
import { stepsWords } from './reachWords';

interface MayTurnProps {
  readonly form: ReachForm;
  readonly document: CarDocument;
  /** the axle that is looked at */
  readonly axle: AxleName;
  readonly idBase: string;
  readonly faults: ReachFaults;
  readonly onChange: (form: ReachForm) => void;
}

/** What may be turned, and by which steps; where a hole may be drilled. */
export const MayTurn = ({ form, document, axle, idBase, faults, onChange }: MayTurnProps) => {
  const replace = (may: MayForm): void => onChange({ ...form, may: form.may.map((one) => (one.id === may.id ? may : one)) });
  const remove = (id: number): void => onChange({ ...form, may: form.may.filter((one) => one.id !== id) });
  const own = (id: number) => Object.entries(faults).filter(([field]) => field.startsWith(`may.${id}.`));
  return (
    <section className="mayturn" aria-label="I may turn">
      <div className="questionhead">
        <h2>I may turn</h2>
        <PartChooser form={form} document={document} onChange={onChange} />
      </div>
      {form.may.length === 0 && (
        <p className="quiet">
          Nothing yet: choose the parts that you would turn, or take{' '}
          <button type="button" className="button small" onClick={() => onChange(withAllOf(form, document, axle))}>
            all of the {axle}
          </button>
        </p>
      )}
      <ul>
        {form.may.map((may) => (
          <li key={may.id}>
            {may.kind === 'adjuster' ? (
              <AdjusterLine may={may} form={form} document={document} onChange={replace} onRemove={() => remove(may.id)} />
            ) : (
              <PointLine may={may} document={document} onChange={replace} onRemove={() => remove(may.id)} />
            )}
            {own(may.id).map(([field, fault]) => (
              <p key={field} id={`${idBase}-${field}`} className="qfault" role="alert">
                {fault}
              </p>
            ))}
          </li>
        ))}
      </ul>
      {faults['may'] !== undefined && (
        <p className="qfault" role="alert">
          {faults['may']}
        </p>
      )}
    </section>
  );
};

interface LineProps<Kind extends MayForm['kind']> {
  readonly may: Extract<MayForm, { kind: Kind }>;
  readonly document: CarDocument;
  readonly onChange: (may: MayForm) => void;
  readonly onRemove: () => void;
}

const SidesSelect = ({ may, label, onChange }: { may: MayForm; label: string; onChange: (may: MayForm) => void }) => (
  <select
    className="pick sides"
    aria-label={`${label}: sides`}
    title="Both sides by the same number, or each by its own"
    value={may.sides}
    onChange={(event) => onChange({ ...may, sides: event.target.value as MayForm['sides'] })}
  >
    <option value="together">L = R</option>
    <option value="apart">apart</option>
  </select>
);

const RemoveButton = ({ label, onRemove }: { readonly label: string; readonly onRemove: () => void }) => (
  <button type="button" className="button bare linemenu" aria-label={`Take out ${label}`} title="Take out" onClick={onRemove}>
    ×
  </button>
);

const AdjusterLine = ({ may, form, document, onChange, onRemove }: LineProps<'adjuster'> & { readonly form: ReachForm }) => {
  const units = useUnits();
  const adjuster = document[may.axle]?.adjusters?.[may.name];
  const label = adjuster?.label ?? nameOfKey(may.name);
  return (
    <div className="mayline">
      {adjuster ? (
        <PartDrawing
          adjuster={adjuster}
          value={settingOf(setupNamed(document, form.setup), may.axle, may.name, 'left')}
          mm={mmPerFileUnit(document)}
          pivotToBolt={pivotToBoltOf(document[may.axle], adjuster)}
          size={28}
          className="mini"
        />
      ) : (
        <span className="nopart" />
      )}
      <span className="mayname" title={`${label}, ${may.axle}: ${stepsWords(document, may.axle, may.name, units)}`}>
        <b>{label}</b>{' '}
        <span className="quiet">
          {may.axle === 'rear' ? 'rear · ' : ''}
          {stepsWords(document, may.axle, may.name, units)}
        </span>
      </span>
      <SidesSelect may={may} label={label} onChange={onChange} />
      <RemoveButton label={label} onRemove={onRemove} />
    </div>
  );
};

const PointLine = ({ may, document, onChange, onRemove }: LineProps<'point'>) => {
  const units = useUnits();
  const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const label = nameOfKey(may.name);
  const text = (value: number | null): string => (value === null ? '?' : formatShort(shown.toShown(value), 3));
  const direction = may.direction === 'own' ? 'along a line' : DIRECTIONS[may.direction].label;
  const words = `${direction}, ${text(may.least.value)}…${text(may.greatest.value)} by ${text(may.step.value)} ${shown.unit}`;
  return (
    <div className="mayline">
      <svg className="pointsign" width="28" height="28" viewBox="0 0 28 28" aria-hidden="true">
        <path d="M14 5v18M5 14h18" />
        <circle cx="14" cy="14" r="4.5" />
      </svg>
      <span className="mayname">
        <b>{label}</b> <span className="quiet">{may.axle}, free point</span>
        <Popover
          button={{ className: 'pick where', label: `${label}: ${words}`, title: words, content: <PickWords>{words}</PickWords> }}
          label={`How ${label} may be moved`}
          role="group"
          className="placecard"
        >
          {(close) => (
            <>
              <div className="cardline">
                <span>Point</span>
                <select
                  className="pick"
                  aria-label="Point"
                  value={may.name}
                  onChange={(event) => onChange({ ...may, name: event.target.value })}
                >
                  {Object.keys(document[may.axle]?.points ?? { [may.name]: null }).map((name) => (
                    <option key={name} value={name}>
                      {nameOfKey(name)}
                    </option>
                  ))}
                </select>
              </div>
              <div className="cardline">
                <span>Way</span>
                <select
                  className="pick"
                  aria-label="Direction"
                  value={may.direction}
                  onChange={(event) => onChange({ ...may, direction: event.target.value as Direction })}
                >
                  {Object.entries(DIRECTIONS).map(([name, one]) => (
                    <option key={name} value={name}>
                      {one.label}
                    </option>
                  ))}
                  <option value="own">a line of my own</option>
                </select>
              </div>
              {may.direction === 'own' &&
                (['X', 'Y', 'Z'] as const).map((letter, axis) => (
                  <div className="cardline" key={letter}>
                    <span>{letter}</span>
                    <QuestionField
                      label={`Direction ${letter}, left side`}
                      field={may.along[axis] ?? may.along[0]}
                      shown={PLAIN_NUMBER}
                      faultId={null}
                      onChange={(field) => {
                        const [x, y, z] = may.along.map((one, at) => (at === axis ? field : one));
                        if (x && y && z) onChange({ ...may, along: [x, y, z] });
                      }}
                    />
                  </div>
                ))}
              {(
                [
                  ['least', 'From'],
                  ['greatest', 'To'],
                  ['step', 'By'],
                ] as const
              ).map(([field, name]) => (
                <div className="cardline" key={field}>
                  <span>{name}</span>
                  <QuestionField
                    label={`${name}, ${shown.unit}`}
                    field={may[field]}
                    shown={shown}
                    faultId={null}
                    onChange={(next) => onChange({ ...may, [field]: next })}
                  />
                </div>
              ))}
              <div className="cardend">
                <button type="button" className="button primary" onClick={close}>
                  Done
                </button>
              </div>
            </>
          )}
        </Popover>
      </span>
      <SidesSelect may={may} label={label} onChange={onChange} />
      <RemoveButton label={label} onRemove={onRemove} />
    </div>
  );
};

/** Ticks for every adjuster of both axles; what is locked says its rule. A point can be let free too. */
const PartChooser = ({ form, document, onChange }: Pick<MayTurnProps, 'form' | 'document' | 'onChange'>) => {
  const units = useUnits();
  const toggle = (axle: AxleName, name: string, isOn: boolean): void => {
    const rest = form.may.filter((may) => !(may.kind === 'adjuster' && may.axle === axle && may.name === name));
    onChange({
      ...form,
      may: isOn ? [...form.may, { kind: 'adjuster', id: nextId(form.may), axle, name, sides: 'together' }] : rest,
    });
  };
  const firstAxle = axlesOf(document)[0];
  return (
    <Popover
      button={{
        className: 'pick',
        label: 'Choose parts that may be turned',
        title: 'Choose parts that may be turned',
        content: <PickWords>Choose parts</PickWords>,
      }}
      label="Parts that may be turned"
      role="group"
      className="partcard"
    >
      {(close) => (
        <>
          {axlesOf(document).map((axle) => (
            <fieldset key={axle}>
              <legend>
                {axle === 'front' ? 'Front axle' : 'Rear axle'}{' '}
                <button type="button" className="button small" onClick={() => onChange(withAllOf(form, document, axle))}>
                  all
                </button>
              </legend>
              {Object.entries(document[axle]?.adjusters ?? {}).map(([name, adjuster]) => {
                const isOn = form.may.some((may) => may.kind === 'adjuster' && may.axle === axle && may.name === name);
                const setsToe = form.toe.kind !== 'follow' && document[axle]?.toeAdjuster === name;
                const isLocked = adjuster.locked !== undefined && !form.withLocked;
                const why = setsToe ? 'toe is set by it' : adjuster.locked;
                return (
                  <label key={name} className="tick part">
                    <input
                      type="checkbox"
                      checked={isOn}
                      disabled={!isOn && (isLocked || setsToe)}
                      onChange={(event) => toggle(axle, name, event.target.checked)}
                    />
                    <span>
                      {adjuster.label ?? nameOfKey(name)}{' '}
                      <span className="quiet">{why === undefined ? stepsWords(document, axle, name, units) : why}</span>
                    </span>
                  </label>
                );
              })}
            </fieldset>
          ))}
          <label className="tick">
            <input
              type="checkbox"
              checked={form.withLocked}
              onChange={(event) => onChange({ ...form, withLocked: event.target.checked })}
            />
            allow what is locked
          </label>
          <div className="cardend">
            {firstAxle &&
              axlesOf(document).map((axle) => (
                <button
                  key={axle}
                  type="button"
                  className="button"
                  onClick={() => {
                    const name = Object.keys(document[axle]?.points ?? {})[0];
                    if (name !== undefined) onChange({ ...form, may: [...form.may, beginPoint(nextId(form.may), axle, name)] });
                  }}
                >
                  Free point, {axle}
                </button>
              ))}
            <button type="button" className="button primary" onClick={close}>
              Done
            </button>
          </div>
        </>
      )}
    </Popover>
  );
};
